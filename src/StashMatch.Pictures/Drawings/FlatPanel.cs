using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>The side-to-side hat off the needles: the panel, first row at the left, the brim hanging from its lower edge.</summary>
internal static class FlatPanel
{
    private const double Left = 30;
    private const double Right = 66;
    private const double ThreadAbove = 12;
    private const double TagHeight = 26;
    private const double TagWidth = 28;
    private const double BraidTagWidth = 34;

    public static FlatHat Lay(RowPlan plan)
    {
        var row = Flat.PerCm / (double)plan.Gauge.RowsPerCm;
        var stitch = Flat.PerCm / (double)plan.Gauge.StitchesPerCm;
        var spans = Spans(plan, row);
        var lanes = new TagLanes(2, 3);
        var placed = new List<(PlanSection Section, double Middle, double Width, int Lane)>();
        foreach (var (section, from, to) in spans.Where(s => s.Section.Kind == SectionKind.Stripe)
            .Concat(spans.Where(s => s.Section.Kind == SectionKind.Braid)))
        {
            var (middle, stripe) = ((from + to) / 2, section.Kind == SectionKind.Stripe);
            var width = stripe ? TagWidth : BraidTagWidth;
            if (lanes.Place(middle, width, stripe ? 2 : 1) is { } lane)
            {
                placed.Add((section, middle, width, lane));
            }
        }

        var top = 29 + (TagHeight * Math.Max(1, lanes.Used));
        var (end, bottom) = (spans[^1].To, top + (plan.BodyStitches * stitch));
        var pieces = new List<Piece>();
        var yarn = new List<YarnRun>();
        double Wave(double x) => top - ThreadAbove + (2.2 * Math.Sin((x - Left) / 4.4));
        foreach (var (section, from, to) in spans)
        {
            if (section.Kind == SectionKind.Braid)
            {
                pieces.AddRange(Flat.Braid(
                    section.Number, bottom - top, to - from, stitch, p => new Point(from + p.Y, bottom - p.X)));
                foreach (var (strand, side) in new[] { ('a', 1), ('b', -1) })
                {
                    yarn.Add(new(PartNames.Strand(section.Number, strand), true, true, Flat.Along(
                        from, to, x => new Point(x, Wave(x) + (side * 3.4 * Math.Cos(Math.PI * (x - from) / (to - from)))))));
                }

                continue;
            }

            var edges = new List<Line>();
            if (section.Number == 1)
            {
                edges.Add(new(LineKind.Edge, [new(from + Flat.HalfEdge, top), new(from + Flat.HalfEdge, bottom)]));
            }

            if (section.Number == plan.Stripes)
            {
                edges.Add(new(LineKind.Edge, [new(to - Flat.HalfEdge, top), new(to - Flat.HalfEdge, bottom)]));
            }

            pieces.Add(new(PartNames.Stripe(section.Number), [Polygon.Box(from, top, to, bottom)], edges));
            var tail = section.Number == 1 ? Polygon.Curve(new(from - 7, top + 24), new(from - 18, top + 8), new(from - 16, top - 12), new(from, Wave(from))) : [];
            yarn.Add(new(PartNames.Stripe(section.Number), false, true, [.. tail, .. Flat.Along(from, to, x => new Point(x, Wave(x)))]));
        }

        var turn = end + 26;
        pieces.Add(new(PartNames.Seam, [],
        [
            new(LineKind.Thread, [new(Left + 3, top + 4.5), new(end - 4.5, top + 4.5), new(end - 4.5, bottom - 3)]),
        ]));
        yarn.Add(new(PartNames.Seam, false, true,
        [
            .. Polygon.Curve(new(end, Wave(end)), new(end + 18, Wave(end)), new(turn, top - 4), new(turn, top + 22)), new(turn, bottom - 4),
        ]));
        var notes = new List<Note> { new("cast on", Left - 11, (top + bottom) / 2, Upright: true), new("bind off, seam", end + 13, ((top + bottom) / 2) + 34, Upright: true) };
        var tags = placed.ConvertAll(p => p.Section.Kind == SectionKind.Stripe
            ? new Tag(PartNames.Stripe(p.Section.Number), null, p.Middle, top - 24 - (TagHeight / 2) - (TagHeight * p.Lane), p.Width, TagHeight)
            : new Tag(PartNames.Strand(p.Section.Number, 'a'), PartNames.Strand(p.Section.Number, 'b'), p.Middle, top - 35, p.Width, 16));
        var slips = spans.Where(s => s.Section.Kind == SectionKind.Stripe)
            .Select(s => new Slip(PartNames.Stripe(s.Section.Number), (s.From + s.To) / 2, (top + bottom) / 2, SlipSize(s.To - s.From))).ToList();
        tags.Add(new(PartNames.Seam, null, turn + 16, top + 30, TagWidth, 20));
        slips.Add(new(PartNames.Seam, turn, top + 64, 15));
        var height = bottom + 14;
        if (plan.BrimRounds > 0)
        {
            height = Brim(plan, pieces, yarn, tags, slips, notes, (Left + end) / 2, bottom, turn, stitch);
        }

        return new(end + Right, height, pieces, [], yarn, tags, slips, notes, row, stitch, Sideways: true);
    }

    private static double SlipSize(double room) => Math.Clamp(room * 0.44, 7, 26);

    private static List<(PlanSection Section, double From, double To)> Spans(RowPlan plan, double row)
    {
        var (at, spans) = (Left, new List<(PlanSection, double, double)>());
        foreach (var section in plan.Sections.Where(s => s.Kind != SectionKind.Brim))
        {
            spans.Add((section, at, at + (section.Rows * row)));
            at += section.Rows * row;
        }

        return spans;
    }

    private static double Brim(
        RowPlan plan, List<Piece> pieces, List<YarnRun> yarn, List<Tag> tags, List<Slip> slips, List<Note> notes, double middle, double top, double turn, double stitch)
    {
        var (half, bottom) = (plan.BrimStitches * stitch / 2, top + (Flat.PerCm * (double)plan.BrimKnitted.Value));
        var (left, right) = (middle - half, middle + half);
        var lines = new List<Line>();
        lines.AddRange(Flat.Ribs(left, top, right, bottom, stitch));
        lines.Add(new(LineKind.Edge, [new(left, bottom - Flat.HalfEdge), new(right, bottom - Flat.HalfEdge)]));
        var fold = (top + bottom) / 2;
        var run = right + 12;
        if (plan.BrimFolded)
        {
            lines.Add(new(LineKind.Fold, [new(left - 6, fold), new(right + 6, fold)]));
            notes.Add(new("fold", left - 20, fold + 3.5));
            yarn.Add(new(PartNames.Brim, false, false, Flat.Doubled(fold, y => new Point(run, y))));
        }

        pieces.Add(new(PartNames.Brim, [Polygon.Box(left, top, right, bottom)], lines));
        yarn.Add(new(PartNames.Brim, false, true,
        [
            .. Polygon.Curve(new(turn, top - 4), new(turn, top + 10), new(run, top + 6), new(run, top + 20)),
            new(run, bottom - 8),
            .. Polygon.Curve(new(run, bottom - 8), new(run, bottom + 6), new(run - 4, bottom + 12), new(run - 18, bottom + 12)),
        ]));
        tags.Add(new(PartNames.Brim, null, middle, bottom + 18, 80, 20));
        slips.Add(new(PartNames.Brim, middle, top + ((plan.BrimFolded ? 0.25 : 0.5) * (bottom - top)), Math.Min(26, (bottom - top) * (plan.BrimFolded ? 0.26 : 0.5))));
        return bottom + 34;
    }
}
