using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;
using KitQuestion = StashMatch.Questions.KitQuestion;

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

    public ISet<Arrangement> Arrangements { get; } = new HashSet<Arrangement>(Knitting.Designing.KitQuestion.UsualArrangements);

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
    public Knitting.Designing.KitQuestion? Read(Hat hat, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(errors);
        var own = new FieldErrors();
        var counts = Said.Nothing;
        var open = hat is HatDesign { Stripes: null } design ? design with { StripeCounts = null } : hat;
        if (open != hat && errors.Typed("stripes from", From, 1, 24) is { } from && errors.Typed("stripes to", To, 1, 24) is { } to)
        {
            if (from > to)
            {
                errors.Add("stripes to", "must not be less than “from”");
            }

            counts = Said.Several(Enumerable.Range((int)from, Math.Max(0, (int)to - (int)from) + 1).Select(c => c.ToString(CultureInfo.InvariantCulture)));
        }

        var asked = Said.Of(
            (HatGrid.SizesAsked, Said.Several(hat.SizeNames.Where(Sizes.Contains))),
            (HatGrid.CountsAsked, counts),
            (HatGrid.ArrangementsAsked, Said.Several(Enum.GetValues<Arrangement>().Where(Arrangements.Contains).Select(a => Names.Of(a)))),
            (MatchQuestion.AllowancePercent, Said.Typed(Allowance.Length == 0 ? "none" : Allowance)),
            (KitQuestion.LightestPercent, Said.Typed(string.IsNullOrWhiteSpace(Lightest) ? null : Lightest)));
        var question = KitQuestion.Read(new Reading(asked, own), open);
        foreach (var (field, messages) in own.ByField)
        {
            errors.Add(field switch { "allowancePercent" => "reserve", "lightestPercent" => "lightest", _ => field }, messages[0]);
        }

        return errors.Any ? null : question;
    }

    /// <summary>The kits, or null with messages under "kit 1, skein 2".</summary>
    public IReadOnlyList<Kit>? ReadKits(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var kits = new List<Kit>();
        for (var k = 0; k < Kits.Count; k++)
        {
            var own = new FieldErrors();
            if (KitText.Read(new Reading(Kits[k].Read(), own)) is { } kit)
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

    /// <summary>The skeins that can be bought whole, one a line as on its label, then after a semicolon what it is spun of; or null with messages.</summary>
    public IReadOnlyList<SkeinSize>? ReadBuyable(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var lines = (Buyable.Length > 2_000 ? Buyable[..2_000] : Buyable).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var own = new FieldErrors();
        var asked = Said.Of((KitQuestion.SmallestFrom, Said.Several(lines.Select(line =>
        {
            var halves = line.Split(';', 2);
            return Said.Of((KitText.Label, Said.Typed(halves[0])), (KitText.Fibre, Said.Typed(halves.ElementAtOrDefault(1))));
        }))));
        var sizes = KitQuestion.ReadSizes(new Reading(asked, own));
        for (var i = 0; i < lines.Length; i++)
        {
            if (own.Of(string.Create(CultureInfo.InvariantCulture, $"{KitQuestion.SmallestFrom.Name}[{i}]")) is { } wrong)
            {
                errors.Add("skeins to buy", $"“{(lines[i].Length > 40 ? lines[i][..40] + "…" : lines[i])}” {wrong}");
            }
        }

        if (lines.Length is 0 || lines.Length > KitQuestion.SmallestFrom.MostOfThem)
        {
            errors.Add("skeins to buy", $"must be 1 to {KitQuestion.SmallestFrom.MostOfThem} lines, each a whole skein such as 20 g / 80 m");
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
