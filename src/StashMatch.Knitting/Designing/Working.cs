using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Designing;

/// <summary>Follows the working of a table's row: from the row plan to each figure, every constant with its mark.</summary>
public static class Working
{
    /// <summary>The working of each part of a row, in knitting order; empty where the row cannot be knitted.</summary>
    /// <param name="hat">The hat the row is of.</param>
    /// <param name="row">A row of its table.</param>
    /// <param name="allowancePercent">The table's allowance, 0 to 100.</param>
    public static IReadOnlyList<PartWorking> Of(Hat hat, YardageRow row, decimal allowancePercent)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(row);
        if (row.Cannot is not null || !hat.TryNeeds(row.Size, row.Stripes, out var needs, out _))
        {
            return [];
        }

        return [.. row.Parts.Select(p => new PartWorking(
            p,
            hat is HatDesign design ? BareOf(design, needs.Plan!, p.Part) : [new(WorkingKind.Told, SourceMark.Told, p.Part.BareMetres, 1, p.Part.BareMetres)],
            [.. Then(needs.Usage, p, allowancePercent)]))];
    }

    /// <summary>The metres of one stitch of a hat's body.</summary>
    public static WorkingStep LoopOf(HatDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var loop = LoopLength.MetresPerStitch(design.Gauge);
        return new(WorkingKind.Loop, SourceMark.Memory, LoopLength.WetRelaxed, loop, loop);
    }

    private static IEnumerable<WorkingStep> Then(Usage usage, PartFigure part, decimal allowancePercent)
    {
        var reckoned = part.Part.Kind == PartKind.PomPom ? part.Part.EndsMetres : usage.Factor * part.Part.BareMetres;
        if (part.Part.Kind != PartKind.PomPom)
        {
            yield return new(WorkingKind.Factor, usage.Calibrated ? SourceMark.Weighed : SourceMark.Ours, part.Part.BareMetres, usage.Factor, reckoned);
            if (part.PaysEnds && part.Part.EndsMetres > 0)
            {
                reckoned += part.Part.EndsMetres;
                yield return new(WorkingKind.Ends, SourceMark.Ours, 1, part.Part.EndsMetres, reckoned);
            }
        }

        var spare = (double)(100 + allowancePercent) / 100;
        if (part.Figure.Source != FigureSource.Estimated)
        {
            var weighed = part.Figure.Metres / spare;
            yield return new(WorkingKind.Weighed, SourceMark.Weighed, reckoned, weighed / reckoned, weighed);
            reckoned = weighed;
        }

        yield return new(WorkingKind.Allowance, SourceMark.Told, reckoned, spare, part.Figure.Metres);
    }

    private static List<WorkingStep> BareOf(HatDesign design, RowPlan plan, HatPart part)
    {
        var loop = LoopLength.MetresPerStitch(plan.Gauge);
        var steps = new List<WorkingStep>();
        void Add(WorkingKind kind, SourceMark mark, double count, double constant) => steps.Add(new(kind, mark, count, constant, count * constant));
        var wanted = part.Kind switch { PartKind.Brim => SectionKind.Brim, PartKind.Crown => SectionKind.Crown, PartKind.Strand => SectionKind.Braid, _ => SectionKind.Stripe };
        var runs = plan.Sections.Where(s => s.Kind == wanted && s.Number == part.Number).SelectMany(s => s.Runs).ToList();
        var edge = (double)((part.Kind == PartKind.Brim ? plan.BrimStitches : plan.BodyStitches) / plan.Gauge.StitchesPerCm) / 100;
        switch (part.Kind)
        {
            case PartKind.Brim:
                if (runs.Exists(r => r.Pattern == StitchPattern.PickUp))
                {
                    Add(WorkingKind.PickUp, SourceMark.Ours, plan.BrimStitches, loop);
                }

                Add(WorkingKind.Rib, SourceMark.Practice, plan.BrimRounds * plan.BrimStitches, LoopLength.Rib * loop);
                if (design.Brim!.BindOff == EdgeKind.Tubular)
                {
                    Add(WorkingKind.TubularRounds, SourceMark.Source, Extras.TubularRounds * plan.BrimStitches, Extras.TubularWeight * LoopLength.Rib * loop);
                }

                Add(WorkingKind.Edge, SourceMark.Source, edge, Extras.Edge(design.Brim.BindOff));
                break;
            case PartKind.Strand:
                Add(WorkingKind.Strand, SourceMark.Ours, runs[0].Stitches * loop, design.Braids.StrandCount == 1 ? Extras.SidewaysBraid : Extras.BraidStrand);
                break;
            case PartKind.Seam when plan.Construction == Construction.SideToSide:
                Add(WorkingKind.Seam, SourceMark.Source, edge, Extras.Seam);
                Add(WorkingKind.Gather, SourceMark.Ours, (double)plan.Circumference.Value / 100, Extras.Gather);
                break;
            case PartKind.Seam:
                Add(WorkingKind.Seam, SourceMark.Source, (double)part.Depth.Value / 100, Extras.Seam);
                break;
            case PartKind.PomPom:
                Add(WorkingKind.Told, SourceMark.Told, part.EndsMetres, 1);
                break;
            default:
                Add(WorkingKind.Stitches, SourceMark.Memory, runs.Sum(r => r.Rows * r.Stitches), loop);
                var sideways = plan.Construction == Construction.SideToSide;
                if (part.Kind == PartKind.Stripe && part.Number == 1 && (sideways || plan.BrimStitches == 0))
                {
                    Add(WorkingKind.CastOn, SourceMark.Source, edge, Extras.CastOn);
                }

                if (sideways && part.Kind == PartKind.Stripe && part.Number == plan.Stripes)
                {
                    Add(WorkingKind.Edge, SourceMark.Source, edge, Extras.Edge(EdgeKind.Ordinary));
                }

                break;
        }

        return steps;
    }
}
