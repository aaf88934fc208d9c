using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>A pattern's own stitch and row counts knitted at another gauge: the size that comes out, and the yarn it takes.</summary>
public static class OwnGauge
{
    /// <summary>The same counts at <paramref name="mine"/>. The plan's measures are what comes out; its parts what it takes.</summary>
    /// <param name="design">The pattern.</param>
    /// <param name="plan">The pattern's row plan at its own gauge.</param>
    /// <param name="mine">The knitter's gauge.</param>
    public static RowPlan At(HatDesign design, RowPlan plan, Gauge mine)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(plan);
        var flat = plan.Construction == Construction.BrimUpFlat ? 2 : 0;
        var sideways = plan.Construction == Construction.SideToSide;
        var brimShown = design.Brim is { } b ? plan.BrimRounds / (b.Folded ? 2m : 1m) / LoopLength.RibRowsPerCm(mine) : 0;
        var around = sideways ? plan.BodyRows / mine.RowsPerCm : (plan.BodyStitches - flat) / mine.StitchesPerCm;
        var above = sideways ? plan.BodyStitches / mine.StitchesPerCm : plan.BodyRows / mine.RowsPerCm;
        var size = new HatSize(plan.Size, Centimetres.From(around), Centimetres.From(above + brimShown), null, plan.BodyStitches);
        var same = design with
        {
            Gauge = mine,
            Sizes = [size],
            StripeCounts = null,
            Brim = design.Brim is { } brim ? brim with { Depth = Centimetres.From(brimShown) } : null,
            Stripes = new StripeDepths(
                [.. plan.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows / mine.RowsPerCm)], InCentimetres: true),
        };
        return RowPlanner.TryCompile(same, plan.Size, plan.Stripes, out var mineToo, out var why)
            ? mineToo
            : throw new InvalidOperationException($"Counts that could be knitted at one gauge could not at another: {why.Reason}");
    }
}
