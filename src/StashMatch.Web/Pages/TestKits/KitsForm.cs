using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.TestKits;

/// <summary>What kits are tested for, as typed.</summary>
public sealed class KitsForm
{
    /// <summary>The most kits side by side.</summary>
    public const int MostKits = 3;

    public string From { get; set; } = "";

    public string To { get; set; } = "";

    public string Allowance { get; set; } = "10";

    /// <summary>Empty for the lawful limit.</summary>
    public string Lightest { get; set; } = "";

    public string Buyable { get; set; } = "10 g / 40 m; 100% superwash merino\n20 g / 80 m; 100% superwash merino\n50 g / 210 m; 80% wool, 20% nylon";

    /// <summary>How the smallest kit's skeins are spread.</summary>
    public Arrangement SmallestArrangement { get; set; } = Arrangement.OwnColours;

    public ISet<string> Sizes { get; } = new HashSet<string>(StringComparer.Ordinal);

    public ISet<Arrangement> Arrangements { get; } = new HashSet<Arrangement>(KitQuestion.UsualArrangements);

    public IList<KitForm> Kits { get; } = (List<KitForm>)[KitForm.Example()];

    /// <summary>Sets sizes and counts to all the hat has.</summary>
    public void Choose(Hat hat)
    {
        ArgumentNullException.ThrowIfNull(hat);
        Sizes.Clear();
        Sizes.UnionWith(hat.SizeNames);
        var counts = hat.CountsFor(hat.SizeNames[0]);
        (From, To) = (counts[0].ToString(CultureInfo.InvariantCulture), counts[^1].ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>The question, or null with messages.</summary>
    public KitQuestion? Read(Hat hat, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(errors);
        var sizes = hat.SizeNames.Where(Sizes.Contains).ToList();
        if (sizes.Count == 0)
        {
            errors.Add("sizes", "must be ticked: at least one");
        }

        if (Arrangements.Count == 0)
        {
            errors.Add("arrangements", "must be ticked: at least one");
        }

        IReadOnlyList<int>? counts = null;
        if (hat is HatDesign { Stripes: null } && errors.Typed("stripes from", From, 1, 24) is { } from && errors.Typed("stripes to", To, 1, 24) is { } to)
        {
            if (from > to)
            {
                errors.Add("stripes to", "must not be less than “from”");
            }

            counts = [.. Enumerable.Range((int)from, Math.Max(0, (int)to - (int)from) + 1)];
        }

        var allowance = errors.Typed("reserve", Allowance, 0, 100);
        var lightest = string.IsNullOrWhiteSpace(Lightest) ? null : errors.Typed("lightest", Lightest, 0, 90);
        var open = hat is HatDesign { Stripes: null } design ? design with { StripeCounts = null } : hat;
        return errors.Any ? null : new KitQuestion(open, sizes, counts, [.. Enum.GetValues<Arrangement>().Where(Arrangements.Contains)])
        {
            AllowancePercent = allowance!.Value,
            LightestPercent = lightest,
        };
    }

    /// <summary>The kits, or null with messages under "kit 1, skein 2".</summary>
    public IReadOnlyList<Kit>? ReadKits(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var kits = new List<Kit>();
        for (var k = 0; k < Kits.Count; k++)
        {
            var own = new FieldErrors();
            if (KitDescriptionReader.Read(Kits[k].Read(own), own, "") is { } kit && !own.Any)
            {
                kits.Add(kit);
            }

            foreach (var (field, messages) in own.ByField)
            {
                errors.Add($"kit {k + 1}, {RowOf(field)}", messages[0]);
            }
        }

        return errors.Any ? null : kits;
    }

    /// <summary>The skeins that can be bought whole, one a line as on its label, or null with messages.</summary>
    public IReadOnlyList<SkeinSize>? ReadBuyable(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var sizes = new List<SkeinSize>();
        foreach (var line in (Buyable.Length > 2_000 ? Buyable[..2_000] : Buyable).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            // The label, then after a semicolon what it is spun of.
            var at = line.IndexOf(';', StringComparison.Ordinal);
            var wrong = LabelText.TryParse(at < 0 ? line : line[..at], RatioSource.Printed, out var label, out var message) ? null : message;
            wrong ??= label!.MassInGrams > Weighing.MostGrams ? "too heavy for a skein" : null;
            var known = FibreBlend.TryParse(at < 0 ? "" : line[(at + 1)..], out var fibre, out message);
            wrong ??= known ? null : message;
            if (wrong is null)
            {
                sizes.Add(new SkeinSize(Grams.From(label!.MassInGrams), label) { Fibre = fibre! });
            }
            else
            {
                errors.Add("skeins to buy", $"“{(line.Length > 40 ? line[..40] + "…" : line)}” cannot be read: {wrong}");
            }
        }

        if (sizes.Count is 0 or > 8)
        {
            errors.Add("skeins to buy", "must be 1 to 8 lines, each a whole skein such as 20 g / 80 m");
        }

        return errors.Any ? null : sizes;
    }

    // "skeins[0].grams" is "row 1, grams".
    private static string RowOf(string field)
    {
        var end = field.IndexOf("].", StringComparison.Ordinal);
        return field.StartsWith("skeins[", StringComparison.Ordinal) && end > 0 && int.TryParse(field[7..end], CultureInfo.InvariantCulture, out var row)
            ? $"row {row + 1}, {field[(end + 2)..]}"
            : field;
    }
}
