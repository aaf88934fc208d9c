using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>Makes sentences of the steps of a figure's working.</summary>
public static class WorkingWords
{
    /// <summary>What a step does.</summary>
    public static string What(WorkingStep step) => step?.Kind switch
    {
        WorkingKind.Stitches => $"{Whole(step.Count)} stitches of {Millimetres(step.Constant)}",
        WorkingKind.Rib => $"{Whole(step.Count)} stitches of rib, 0.95 of a plain one each: {Millimetres(step.Constant)}",
        WorkingKind.TubularRounds => $"{Whole(step.Count)} stitches of the tubular edge's four rounds at half weight: {Millimetres(step.Constant)}",
        WorkingKind.PickUp => $"{Whole(step.Count)} stitches picked up, a plain one each: {Millimetres(step.Constant)}",
        WorkingKind.CastOn => $"cast-on, {Number(step.Constant)} × an edge of {Metres(step.Count)}",
        WorkingKind.Edge => $"edge, {Number(step.Constant)} × {Metres(step.Count)}",
        WorkingKind.Strand => $"{Number(step.Constant)} × a plain row of {Metres(step.Count)}",
        WorkingKind.Seam => $"seam, {Number(step.Constant)} × {Metres(step.Count)}",
        WorkingKind.Gather => $"gathering thread, {Number(step.Constant)} × {Metres(step.Count)} round",
        WorkingKind.Told => "as the hat says",
        WorkingKind.Factor => $"× {Number(step.Constant)}, what knitting really takes",
        WorkingKind.Ends => $"+ {Metres(step.Constant)}, two tails",
        WorkingKind.Weighed => $"weighed instead: {Number(step.Constant)} of the estimate",
        WorkingKind.Allowance => $"× {Number(step.Constant)}, with the reserve",
        _ => "",
    };

    /// <summary>How well a step's constant is founded.</summary>
    public static string Mark(SourceMark mark) => mark switch
    {
        SourceMark.Source => "read in a source",
        SourceMark.Memory => "from the literature, not re-read",
        SourceMark.Practice => "common practice",
        SourceMark.Ours => "our own judgement",
        SourceMark.Weighed => "weighed",
        _ => "the hat says so",
    };

    /// <summary>The same of a step; the allowance is what the table was asked for.</summary>
    public static string Mark(WorkingStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Kind == WorkingKind.Allowance ? "as you asked" : Mark(step.Mark);
    }

    /// <summary>Where the rows and stitches come from.</summary>
    public static IEnumerable<(string Says, SourceMark Mark)> Measures(HatDesign design, RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(plan);
        var size = design.Sizes.First(s => s.Size == plan.Size);
        if (size.Head is { } head && size == HatSize.ForHead(size.Size, head) with { Stitches = size.Stitches })
        {
            yield return ($"round: 0.90 × a head of {Centimetres(head.Value)} = {Centimetres(size.Circumference.Value)}; high: 0.40 × {Centimetres(head.Value)} = {Centimetres(size.Height.Value)}, brim included", SourceMark.Source);
        }
        else
        {
            yield return ($"{Centimetres(size.Circumference.Value)} round, {Centimetres(size.Height.Value)} high, brim included", SourceMark.Told);
        }

        var (w, c) = (design.Gauge.StitchesPerCm, design.Gauge.RowsPerCm);
        yield return ($"gauge {design.Gauge.StitchesPer10Cm:0.##} stitches and {design.Gauge.RowsPer10Cm:0.##} rows to 10 cm", SourceMark.Told);
        yield return ($"one stitch: √(21.6 / ({w:0.##} × {c:0.##})) = {Millimetres(Working.LoopOf(design).Metres)}", SourceMark.Memory);
        var sideways = plan.Construction == Construction.SideToSide;
        yield return ($"{plan.BodyStitches} stitches in a {(sideways ? "row of the panel" : "round of the body")}, {plan.BodyRows} {(sideways ? "rows round the head" : "rounds above the brim, crown included")}", SourceMark.Ours);
        if (plan.BrimStitches > 0)
        {
            yield return ($"brim: {plan.BrimStitches} stitches, {plan.BrimRounds} rounds{(plan.BrimFolded ? ", both layers of the fold" : "")}", SourceMark.Ours);
        }

        var rows = plan.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows);
        yield return ($"rows of the stripes: {string.Join(", ", rows)}{(plan.Braids > 0 ? $"; {plan.Braids} {(plan.Braids == 1 ? "braid" : "braids")} of 3 rows" : "")}", SourceMark.Ours);
    }

    /// <summary>Parts worked alike, told once: their names and the working of the first.</summary>
    public static IReadOnlyList<(string Names, PartWorking Working)> Alike(IReadOnlyList<PartWorking> parts) =>
        [.. parts.GroupBy(p => (p.Part.Part.Kind, Math.Round(p.Part.Figure.Metres, 6), p.Part.PaysEnds, p.Part.Figure.Source))
            .Select(g => (PartRanges.Of([.. g.Select(p => p.Part.Part)]), g.First()))];

    public static string Metres(double metres) => metres.ToString("0.000", CultureInfo.InvariantCulture) + " m";

    private static string Whole(double count) => count.ToString("0", CultureInfo.InvariantCulture);

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);

    private static string Millimetres(double metres) => (metres * 1000).ToString("0.000", CultureInfo.InvariantCulture) + " mm";

    private static string Centimetres(decimal cm) => cm.ToString("0.##", CultureInfo.InvariantCulture) + " cm";
}
