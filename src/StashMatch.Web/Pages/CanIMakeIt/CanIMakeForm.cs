using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.OpenInterface;
using StashMatch.Web.Pieces;

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

    /// <summary>Rows of each stripe, "28,30,29"; empty for equal stripes.</summary>
    public string? Depths { get; init; }

    /// <summary>The brim's depth in centimetres, where it is not the hat's own.</summary>
    public string? BrimDepth { get; init; }

    /// <summary>How the edge is worked, where it is not as the hat says.</summary>
    public string? BindOff { get; init; }

    /// <summary>Numbers of braids left out.</summary>
    public IReadOnlyList<string> Without { get; init; } = [];

    /// <summary>Parts cut out of what they would be one with.</summary>
    public IReadOnlyList<string> Apart { get; init; } = [];

    /// <summary>Leftovers knitted one after the other: two ids joined by a tilde.</summary>
    public IReadOnlyList<string> Join { get; init; } = [];

    /// <summary>How many leftovers take turns.</summary>
    public string? InTurn { get; init; }

    /// <summary>How the stripes are ordered by colour.</summary>
    public string? Colours { get; init; }

    /// <summary>One lot of leftovers; empty for all.</summary>
    public string? Bag { get; init; }

    /// <summary>Which fibres may go in; empty for any.</summary>
    public string? Fibres { get; init; }

    /// <summary>The value of <see cref="Kept"/> that counts it.</summary>
    public const string CountKept = "count";

    /// <summary>"count" where yarn kept for other plans counts too; empty otherwise.</summary>
    public string? Kept { get; init; }

    /// <summary>"Keep it back": leftovers that do not go into this hat.</summary>
    public IReadOnlyList<string> Back { get; init; } = [];

    public IReadOnlyList<string> Leftovers { get; init; } = [];

    /// <summary>The leftover to be held with another; empty for none.</summary>
    public string? Hold { get; init; }

    /// <summary>What it is held with; empty for itself.</summary>
    public string? HoldWith { get; init; }

    /// <summary>The plan whose question is asked again: its own yarn counts as free.</summary>
    public string? Plan { get; init; }

    /// <summary>The part another leftover is being chosen for; no link carries it on.</summary>
    public string? Choose { get; init; }

    /// <summary>"Keep it here": part and leftover id, joined by a tilde.</summary>
    public IReadOnlyList<string> Keep { get; init; } = [];

    /// <summary>"Not this one": part and leftover id, joined by a tilde.</summary>
    public IReadOnlyList<string> Never { get; init; } = [];

    /// <summary>What the page opens with when nothing is asked yet.</summary>
    public static CanIMakeForm First { get; } = new() { Hat = "side-to-side-sample", Size = "F", Stripes = "6" };

    /// <summary>What is asked, with the opening's hat, size and count where the address names none of the three.</summary>
    public CanIMakeForm OrFirst() => Hat is null && Size is null && Stripes is null
        ? this with { Hat = First.Hat, Size = First.Size, Stripes = First.Stripes }
        : this with { Hat = Hat ?? First.Hat, Size = Size ?? First.Size };

    /// <summary>What an address asks.</summary>
    public static CanIMakeForm Of(IQueryCollection query)
    {
        ArgumentNullException.ThrowIfNull(query);
        string? One(string name) => query.TryGetValue(name, out var values) && values.Count > 0 ? values[0] : null;
        IReadOnlyList<string> All(string name) => [.. query[name].OfType<string>()];
        return new CanIMakeForm
        {
            Hat = One("hat"),
            Size = One("size"),
            Stripes = One("stripes"),
            Arrangement = One("arrangement"),
            Allowance = One("allowance"),
            NextDoor = One("nextDoor"),
            Brim = One("brim"),
            Depths = One("depths"),
            Bag = One("bag"),
            Fibres = One("fibres"),
            Kept = One("kept"),
            Back = All("back"),
            Choose = One("choose"),
            Plan = One("plan"),
            Hold = One("hold"),
            HoldWith = One("holdWith"),
            BrimDepth = One("brimDepth"),
            BindOff = One("bindOff"),
            InTurn = One("inTurn"),
            Colours = One("colours"),
            Without = All("without"),
            Apart = All("apart"),
            Join = All("join"),
            Leftovers = All("leftover"),
            Keep = All("keep"),
            Never = All("never"),
        }.OrFirst();
    }

    /// <summary>The address of the answer as one picture.</summary>
    public string Picture() => "/can-i-make.png" + Address(f => f)["/can-i-make".Length..];

    /// <summary>The address that asks a changed question.</summary>
    public string Address(Func<CanIMakeForm, CanIMakeForm> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return "/can-i-make?" + string.Join('&', change(this).Pairs().Select(p => $"{p.Name}={Uri.EscapeDataString(p.Value)}"));
    }

    /// <summary>What is asked, name by name.</summary>
    public IEnumerable<(string Name, string Value)> Pairs()
    {
        IEnumerable<(string Name, string? Value)> pairs =
        [
            ("hat", Hat), ("size", Size), ("stripes", Stripes), ("arrangement", Arrangement),
            ("allowance", Allowance), ("nextDoor", NextDoor), ("brim", Brim), ("depths", Depths), ("bag", Bag), ("fibres", Fibres), ("kept", Kept),
            ("hold", Hold), ("holdWith", HoldWith), ("brimDepth", BrimDepth), ("bindOff", BindOff), ("inTurn", InTurn), ("colours", Colours), ("plan", Plan),
            .. Without.Select(w => ("without", (string?)w)),
            .. Apart.Select(a => ("apart", (string?)a)),
            .. Join.Select(j => ("join", (string?)j)),
            .. Back.Select(b => ("back", (string?)b)),
            .. Leftovers.Select(l => ("leftover", (string?)l)),
            .. Keep.Select(k => ("keep", (string?)k)),
            .. Never.Select(n => ("never", (string?)n)),
        ];
        return pairs.Where(p => !string.IsNullOrEmpty(p.Value)).Select(p => (p.Name, p.Value!));
    }

    /// <summary>Leftovers asked about as one, joined or held together: what they are known by, and which they are.</summary>
    public IEnumerable<(string Id, IReadOnlyList<string> Of)> Several() =>
    [
        .. Join.Select(j => (j, (IReadOnlyList<string>)j.Split('~'))),
        .. string.IsNullOrEmpty(Hold) ? [] : new[] { (Together!, (IReadOnlyList<string>)[Hold, HeldWith!]) },
    ];

    private string? HeldWith => string.IsNullOrEmpty(HoldWith) ? Hold : HoldWith;

    private string? Together => string.IsNullOrEmpty(Hold) ? null : $"{Hold}+{HeldWith}";

    /// <summary>"Keep it here": the address that leaves a leftover where it goes in and works the rest out again.</summary>
    public string KeepHere(string part, string leftover) =>
        Address(f => f with { Keep = [.. f.Keep.Where(k => PartOf(k) != part), $"{part}~{leftover}"] });

    /// <summary>"Not this one": the address that gives the part another leftover.</summary>
    public string NotThisOne(string part, string leftover) =>
        Address(f => f with { Keep = [.. f.Keep.Where(k => PartOf(k) != part)], Never = [.. f.Never, $"{part}~{leftover}"] });

    /// <summary>"Keep it back": the address that leaves a leftover out of this hat.</summary>
    public string KeepBack(string leftover) =>
        Address(f => f with { Back = [.. f.Back, leftover], Keep = [.. f.Keep.Where(k => k.Split('~', 2)[^1] != leftover)] });

    /// <summary>"Choose another": the address of the same question with the leftovers for a part to choose from.</summary>
    public string ChooseFor(string part) => $"{Address(f => f)}&choose={Uri.EscapeDataString(part)}";

    /// <summary>"Put it back": the address without what the knitter decided about a part.</summary>
    public string PutBack(string part) =>
        Address(f => f with { Keep = [.. f.Keep.Where(k => PartOf(k) != part)], Never = [.. f.Never.Where(n => PartOf(n) != part)] });

    /// <summary>Whether the knitter has decided something about a part.</summary>
    public bool IsDecided(string part) => Keep.Concat(Never).Any(d => PartOf(d) == part);

    /// <summary>The address that tries a repair of an answer with so many stripes; null for one done away from the page. A repair of one part holds at that count.</summary>
    public string? Try(Repair repair, int stripes)
    {
        ArgumentNullException.ThrowIfNull(repair);
        if (repair.Code is RepairCode.MoveOne or RepairCode.LeaveOut or RepairCode.WiderBrimSet or RepairCode.DropBraid or RepairCode.RePairBraid or RepairCode.JoinNearMatch && string.IsNullOrEmpty(Stripes))
        {
            return (this with { Stripes = stripes.ToString(CultureInfo.InvariantCulture) }).Try(repair, stripes);
        }

        return repair.Code switch
        {
            RepairCode.FewerStripes => Address(f => f with { Stripes = $"{repair.Stripes}", Depths = null }),
            RepairCode.AnotherArrangement => Address(f => f with { Arrangement = Names.Of(repair.Arrangement!.Value), InTurn = repair.InTurn?.ToString(CultureInfo.InvariantCulture) }),
            RepairCode.LeaveOut => KeepBack(repair.Leftover!),
            RepairCode.Blend => Address(f => f with { NextDoor = "blend" }),
            RepairCode.SmallerSize => Address(f => f with { Size = repair.Size, Depths = null }),
            RepairCode.UnfoldBrim => Address(f => f with { Brim = "single" }),
            RepairCode.ShallowerBrim => Address(f => f with { BrimDepth = repair.BrimDepth!.Value.Value.ToString("0.##", CultureInfo.InvariantCulture) }),
            RepairCode.ThriftierBindOff => Address(f => f with { BindOff = Names.Of(repair.BindOff!.Value) }),
            RepairCode.FewerRows => Address(f => f with { Depths = string.Join(',', repair.Rows!), Stripes = $"{repair.Rows!.Count}" }),
            RepairCode.DropBraid => Address(f => f with { Without = [.. f.Without, repair.Part!.Split(' ')[^1]], Depths = null }),
            RepairCode.RePairBraid => Address(f => f with { Apart = [.. f.Apart, $"{repair.Part} strand a", $"{repair.Part} strand b"] }),
            RepairCode.JoinNearMatch => Address(f => f with { Join = [.. f.Join, $"{repair.Leftover}~{repair.OtherLeftover}"] }),
            RepairCode.MoveOne or RepairCode.WiderBrimSet => KeepHere(repair.Part!, repair.Leftover!),
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
        var allowance = errors.Allowance(Allowance);

        if (!string.IsNullOrEmpty(NextDoor))
        {
            errors.OneOf("nextDoor", NextDoor, Names.NextDoor);
        }

        var order = string.IsNullOrEmpty(Colours) ? ColourOrder.Any : errors.OneOf("colours", Colours, Names.ColourOrders);
        var turns = Math.Clamp((stripes ?? 4) - 1, 2, 3);
        if (!string.IsNullOrEmpty(InTurn) && (!int.TryParse(InTurn, NumberStyles.None, CultureInfo.InvariantCulture, out turns) || turns is < 2 or > 23))
        {
            errors.Add("inTurn", "must be a whole number from 2 to the stripes less one");
        }

        hat = HatChanges.Applied(this, hat, stripes, errors);
        foreach (var unknown in Leftovers.Where(id => bag.All(l => l.Id != id)).Take(1))
        {
            errors.Add("leftover", $"{Short(unknown)} is not among the leftovers that may go into a hat");
        }

        // Held together, two leftovers are asked with as one, ticked or not.
        if (Together is { } together)
        {
            bag = CanIMake.Hold([new HeldBody(together, [Hold!, HeldWith!])], [.. bag], errors);
        }

        bag = CanIMake.Join([.. Join.Select(j => new HeldBody(j, j.Split('~')))], [.. bag], errors);
        foreach (var unknown in Apart.Where(a => !IsPart(a, hat)).Take(1))
        {
            errors.Add("apart", $"{Short(unknown)} is not a part of this hat");
        }

        var keep = Decided("keep", Keep, hat, bag, errors);
        var never = Decided("never", Never, hat, bag, errors);

        // What is kept in a part is asked with, ticked or not, whatever it is spun of.
        var fibres = string.IsNullOrEmpty(Fibres) ? FibreChoice.Any : errors.OneOf("fibres", Fibres, Names.FibreChoices);
        bool IsMeant(Leftover l) => Leftovers.Count == 0 || Leftovers.Contains(l.Id, StringComparer.Ordinal) || l.Id == Together || Join.Contains(l.Id, StringComparer.Ordinal);
        List<Leftover> chosen = [.. bag.Where(l => keep.Any(k => k.Leftover == l.Id) || (IsMeant(l) && !Back.Contains(l.Id, StringComparer.Ordinal) && (fibres ?? FibreChoice.Any).Allows(l)))];
        if (errors.Any)
        {
            return null;
        }

        return new Question(hat, Size!, chosen)
        {
            Stripes = hat is PrintedHat ? null : stripes,
            Arrangement = arrangement!.Value,
            InTurn = turns,
            AllowancePercent = allowance,
            Blend = NextDoor == "blend",
            ColourOrder = order!.Value,
            Apart = Apart,
            Locks = keep,
            Never = never,
        };
    }

    private static bool IsPart(string name, Hat hat) =>
        PartNames.Read(name) is not null || (hat is PrintedHat printed && printed.Sizes.Any(s => s.Lines.Any(l => l.Yarn == name)));

    private static string PartOf(string decided) => decided.Split('~', 2)[0];

    private static List<Pairing> Decided(string field, IReadOnlyList<string> decided, Hat hat, IReadOnlyList<Leftover> bag, FieldErrors errors)
    {
        var pairings = new List<Pairing>();
        foreach (var each in decided.Distinct(StringComparer.Ordinal))
        {
            var halves = each.Split('~', 2);
            if (halves.Length == 2 && IsPart(halves[0], hat) && bag.Any(l => l.Id == halves[1]))
            {
                pairings.Add(new Pairing(halves[0], halves[1]));
            }
            else
            {
                errors.Add(field, halves.Length == 2 && IsPart(halves[0], hat)
                    ? $"in {Words.The(halves[0])} names “{Short(halves[1])}”, which is not among the leftovers here any more: untick it below"
                    : $"{Short(each)} is not a part and one of the leftovers that may go into a hat");
            }
        }

        return pairings;
    }

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
