using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Pictures;

/// <summary>A drawing in words: one sentence for each section, in knitting order.</summary>
public static class HatText
{
    /// <summary>The sentences of a hat with a row plan.</summary>
    public static IReadOnlyList<string> InOrder(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint)
    {
        var palette = new Palette(paint);
        var sentences = new List<string>();
        foreach (var part in plan.Parts)
        {
            if (part.Kind == PartKind.Strand)
            {
                if (part.Strand == 'a')
                {
                    sentences.Add(Braid(part, palette, Row(plan)));
                }

                continue;
            }

            var what = part.Kind switch
            {
                PartKind.Seam => "sews the panel together and draws in the top",
                PartKind.Brim when plan.BrimFolded =>
                    $"{Counted(plan.BrimRounds, "round")} of rib, {Both(plan.BrimKnitted)} as knitted, folded to {Both(plan.BrimDepth)}",
                PartKind.Brim => $"{Counted(plan.BrimRounds, "round")} of rib, {Both(plan.BrimDepth)} deep",
                PartKind.Crown => $"{Counted(part.Rows, "round")}, {Both(part.Depth)} deep, drawn in to the top",
                _ => $"{Counted(part.Rows, Row(plan))}, {Both(part.Depth)} deep{DrawnIn(plan, part)}",
            };
            sentences.Add(Sentence(part.Name, what, palette));
        }

        if (palette.Has(PartNames.PomPom))
        {
            sentences.Add(Sentence(PartNames.PomPom, "made last and sewn to the top", palette));
        }

        return sentences;
    }

    /// <summary>The sentences of a hat known by printed lengths.</summary>
    public static IReadOnlyList<string> InOrder(IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint)
    {
        var palette = new Palette(paint);
        return [.. parts.Select(p => Sentence(p.Name, $"{p.BareMetres.ToString("0.0", CultureInfo.InvariantCulture)} m ({Yards(p)} yd) as printed", palette))];
    }

    private static string Row(RowPlan plan) => plan.Construction == Construction.BrimUpRound ? "round" : "row";

    private static string Yards(HatPart part) => (part.BareMetres / (double)Metres.PerYard).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Braid(HatPart part, Palette palette, string row)
    {
        var other = PartNames.Strand(part.Number, 'b');
        return $"{Named(part.Name, palette)}; {palette.Title(other)}: {Counted(part.Rows, row)}, {Both(part.Depth)} deep, "
            + $"the two colours cross over in row 2 and under in row 3{Trouble(part.Name, other, palette)}.";
    }

    private static string DrawnIn(RowPlan plan, HatPart part) =>
        plan.Sections.FirstOrDefault(s => s.Kind == SectionKind.Stripe && s.Number == part.Number)?.Runs is { } runs && runs.Any(r => r.Pattern == StitchPattern.Decrease)
            ? $", drawn in to {Counted(runs[^1].Stitches, "stitch", "stitches")}"
            : "";

    private static string Sentence(string part, string what, Palette palette) =>
        $"{Named(part, palette)}: {what}{(palette.IsShort(part) ? "; short of yarn" : "")}.";

    private static string Trouble(string a, string b, Palette palette) => (palette.IsShort(a), palette.IsShort(b)) switch
    {
        (true, true) => "; both colours are short of yarn",
        (true, false) => "; the first colour is short of yarn",
        (false, true) => "; the second colour is short of yarn",
        _ => "",
    };

    private static string Named(string part, Palette palette)
    {
        var title = palette.Title(part);
        return char.ToUpperInvariant(title[0]) + title[1..];
    }

    private static string Counted(int number, string one, string? many = null) => number == 1 ? $"1 {one}" : $"{number} {many ?? one + "s"}";

    private static string Both(Centimetres depth) => $"{depth.Value.ToString("0.0", CultureInfo.InvariantCulture)} cm ({Inches(depth)} in)";

    // Inches to the nearest eighth, as a tape shows them.
    private static string Inches(Centimetres depth)
    {
        var eighths = (int)Math.Round(depth.Inches * 8, MidpointRounding.AwayFromZero);
        var (whole, rest) = (eighths / 8, eighths % 8);
        var fraction = rest switch { 0 => "", 2 => "1/4", 4 => "1/2", 6 => "3/4", _ => $"{rest}/8" };
        return (whole, rest) switch { (_, 0) => $"{whole}", (0, _) => fraction, _ => $"{whole} {fraction}" };
    }
}
