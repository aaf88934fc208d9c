using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.OpenInterface;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What the address changes about a hat described by measurements: its brim, its edge, its braids, its stripes' rows.</summary>
internal static class HatChanges
{
    private static readonly Dictionary<string, EdgeKind> Edges = Enum.GetValues<EdgeKind>().ToDictionary(e => Names.Of(e), e => e, StringComparer.Ordinal);

    /// <summary>The hat as asked for; messages for what cannot be read or does not fit.</summary>
    public static Hat Applied(CanIMakeForm form, Hat hat, int? stripes, FieldErrors errors)
    {
        if (!string.IsNullOrEmpty(form.Brim) && form.Brim is not ("single" or "folded"))
        {
            errors.Add("brim", "must be single or folded");
        }

        if (hat is not HatDesign design)
        {
            if (!string.IsNullOrEmpty(form.Depths) || !string.IsNullOrEmpty(form.BrimDepth) || form.Without.Count > 0)
            {
                errors.Add(string.IsNullOrEmpty(form.Depths) ? "hat" : "depths", "belong to a hat described by measurements");
            }

            return hat;
        }

        if (form.Without.Count > 0)
        {
            design = design with { Braids = design.Braids with { Without = BraidsLeftOut(form, errors) } };
        }

        return Deepened(form, Edged(form, design, errors), stripes, errors);
    }

    private static List<int> BraidsLeftOut(CanIMakeForm form, FieldErrors errors)
    {
        var numbers = new List<int>();
        foreach (var text in form.Without.Distinct(StringComparer.Ordinal).Take(25))
        {
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 24)
            {
                numbers.Add(number);
            }
            else
            {
                errors.Add("without", "must be the number of a braid, 1 to 24");
            }
        }

        return numbers;
    }

    private static HatDesign Edged(CanIMakeForm form, HatDesign design, FieldErrors errors)
    {
        if (design.Brim is not { } brim)
        {
            return design;
        }

        if (form.Brim == "single")
        {
            brim = brim with { Folded = false };
        }

        if (!string.IsNullOrEmpty(form.BrimDepth))
        {
            if (!TypedNumber.TryRead(form.BrimDepth, out var depth, out var wrong))
            {
                errors.Add("brimDepth", wrong);
            }
            else if (depth is < 1 or > 20)
            {
                errors.Add("brimDepth", "must be 1 to 20 cm");
            }
            else
            {
                brim = brim with { Depth = Centimetres.From(depth) };
            }
        }

        if (!string.IsNullOrEmpty(form.BindOff) && errors.OneOf("bindOff", form.BindOff, Edges) is { } edge)
        {
            brim = brim with { BindOff = edge };
        }

        return design with { Brim = brim };
    }

    private static HatDesign Deepened(CanIMakeForm form, HatDesign design, int? stripes, FieldErrors errors)
    {
        if (string.IsNullOrEmpty(form.Depths) || errors.Any)
        {
            return design;
        }

        var rows = form.Depths.Split(',').Take(25)
            .Select(d => int.TryParse(d, NumberStyles.None, CultureInfo.InvariantCulture, out var r) && r <= DepthsTable.MostRows ? r : 0).ToList();
        if (rows.Contains(0) || (stripes ?? rows.Count) != rows.Count)
        {
            errors.Add("depths", "must be whole rows for each stripe, such as 28,30,29");
        }
        else if (OwnRows.TryPut(design, form.Size!, rows, out var own, out var why))
        {
            return own;
        }
        else
        {
            errors.Add("depths", $"do not fit. {why.Reason.TrimEnd('.')}");
        }

        return design;
    }
}
