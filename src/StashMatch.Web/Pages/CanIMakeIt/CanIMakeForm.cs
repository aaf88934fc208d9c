using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.OpenInterface;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What the address asks; values as typed, so that nothing is lost where one cannot be read.</summary>
public sealed record CanIMakeForm
{
    public string? Hat { get; init; }

    public string? Size { get; init; }

    public string? Stripes { get; init; }

    public string? Arrangement { get; init; }

    public string? Allowance { get; init; }

    public string? NextDoor { get; init; }

    public string? Brim { get; init; }

    public IReadOnlyList<string> Leftovers { get; init; } = [];

    /// <summary>The leftover to be held with another; empty for none.</summary>
    public string? Hold { get; init; }

    /// <summary>What it is held with; empty for itself.</summary>
    public string? HoldWith { get; init; }

    /// <summary>"Keep it here": part and leftover id, joined by a tilde.</summary>
    public IReadOnlyList<string> Keep { get; init; } = [];

    /// <summary>What the page opens with when nothing is asked yet.</summary>
    public static CanIMakeForm First { get; } = new() { Hat = "side-to-side-sample", Size = "F", Stripes = "6" };

    public string Address(Func<CanIMakeForm, CanIMakeForm> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        var form = change(this);
        var pairs = new List<(string, string?)>
        {
            ("hat", form.Hat), ("size", form.Size), ("stripes", form.Stripes), ("arrangement", form.Arrangement),
            ("allowance", form.Allowance), ("nextDoor", form.NextDoor), ("brim", form.Brim),
            ("hold", form.Hold), ("holdWith", form.HoldWith),
        };
        pairs.AddRange(form.Leftovers.Select(l => ("leftover", (string?)l)));
        pairs.AddRange(form.Keep.Select(k => ("keep", (string?)k)));
        return "/can-i-make?" + string.Join('&', pairs.Where(p => !string.IsNullOrEmpty(p.Item2)).Select(p => $"{p.Item1}={Uri.EscapeDataString(p.Item2!)}"));
    }

    /// <summary>The address that tries a repair; null for one done away from the page.</summary>
    public string? Try(Repair repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        return repair.Code switch
        {
            RepairCode.FewerStripes => Address(f => f with { Stripes = $"{repair.Stripes}" }),
            RepairCode.AnotherArrangement => Address(f => f with { Arrangement = Names.Of(repair.Arrangement!.Value) }),
            RepairCode.Blend => Address(f => f with { NextDoor = "blend" }),
            RepairCode.SmallerSize => Address(f => f with { Size = repair.Size }),
            RepairCode.UnfoldBrim => Address(f => f with { Brim = "single" }),
            RepairCode.MoveOne or RepairCode.WiderBrimSet => Address(f => f with { Keep = [.. f.Keep, $"{repair.Part}~{repair.Leftover}"] }),
            _ => null,
        };
    }

    /// <summary>The question, or null with a message for each field that cannot be read.</summary>
    public Question? Read(Hat? hat, IReadOnlyList<Leftover> bag, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(bag);
        ArgumentNullException.ThrowIfNull(errors);
        if (hat is null)
        {
            errors.Add("hat", "is not one of the hats here");
            return null;
        }

        if (Size is null || !hat.SizeNames.Contains(Size, StringComparer.Ordinal))
        {
            errors.Add("size", $"must be one of {string.Join(", ", hat.SizeNames)}");
        }

        int? stripes = null;
        if (!string.IsNullOrWhiteSpace(Stripes))
        {
            if (int.TryParse(Stripes, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= 24)
            {
                stripes = count;
            }
            else
            {
                errors.Add("stripes", "must be a whole number from 1 to 24, or any that works");
            }
        }

        var arrangement = string.IsNullOrEmpty(Arrangement)
            ? Knitting.Matching.Arrangement.OwnColours
            : errors.OneOf("arrangement", Arrangement, Names.Arrangements);
        var allowance = 10m;
        if (!string.IsNullOrWhiteSpace(Allowance) && !TypedNumber.TryRead(Allowance, out allowance, out var wrong))
        {
            errors.Add("allowance", wrong);
        }
        else if (allowance > 100)
        {
            errors.Add("allowance", "must be at most 100 %");
        }

        var chosen = Leftovers.Count == 0 ? bag : [.. bag.Where(l => Leftovers.Contains(l.Id, StringComparer.Ordinal))];
        if (!string.IsNullOrEmpty(Hold))
        {
            var with = string.IsNullOrEmpty(HoldWith) ? Hold : HoldWith;
            chosen = CanIMake.Hold([new HeldBody($"{Hold}+{with}", [Hold, with])], [.. chosen], errors);
        }

        var keep = Keep.Select(k => k.Split('~', 2)).Where(k => k.Length == 2).Select(k => new Pairing(k[0], k[1]))
            .Where(p => chosen.Any(l => l.Id == p.Leftover)).ToList();
        if (errors.Any)
        {
            return null;
        }

        var asked = Brim == "single" && hat is HatDesign { Brim: { Folded: true } brim } design ? design with { Brim = brim with { Folded = false } } : hat;
        return new Question(asked, Size!, chosen)
        {
            Stripes = hat is PrintedHat ? null : stripes,
            Arrangement = arrangement!.Value,
            InTurn = Math.Clamp((stripes ?? 4) - 1, 2, 3),
            AllowancePercent = allowance,
            Blend = NextDoor == "blend",
            Locks = keep,
        };
    }
}
