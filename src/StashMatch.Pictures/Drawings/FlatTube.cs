using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>The brim-up hat off the needles, brim at the bottom: a tube laid flat, one half to see, or the whole width where it is worked flat.</summary>
internal static class FlatTube
{
    private const double Lane = 40;
    private const double TagHeight = 16;

    public static FlatHat Lay(RowPlan plan)
    {
        var row = Flat.PerCm / (double)plan.Gauge.RowsPerCm;
        var share = plan.Construction == Construction.BrimUpFlat ? 1 : 0.5;
        var stitch = Flat.PerCm / (double)plan.Gauge.StitchesPerCm;
        var widest = Math.Max(plan.BodyStitches, plan.BrimStitches) * stitch * share;
        var ribbed = Flat.PerCm * (double)plan.BrimKnitted.Value;
        const double top = 22;
        var bottom = top + ribbed + (plan.BodyRows * row);

        // Rows of rib stand closer.
        var rib = plan.BrimRounds == 0 ? row : ribbed / plan.BrimRounds;
        double After(int rows) => bottom - (Math.Min(rows, plan.BrimRounds) * rib) - (Math.Max(0, rows - plan.BrimRounds) * row);

        // From the bottom up: the height each section starts at, and each row's half width.
        var spans = new List<(PlanSection Section, double From, double To)>();
        var halves = new List<double>();
        foreach (var section in plan.Sections)
        {
            var from = After(halves.Count);
            halves.AddRange(Worked(section).SelectMany(r => Enumerable.Repeat(r.Stitches * stitch * share / 2, r.Rows)));
            spans.Add((section, from, After(halves.Count)));
        }

        double HalfAt(double y)
        {
            var up = bottom - y;
            var at = (up < ribbed ? up / rib : plan.BrimRounds + ((up - ribbed) / row)) - 0.5;
            var low = Math.Clamp((int)Math.Floor(at), 0, halves.Count - 1);
            var high = Math.Min(low + 1, halves.Count - 1);
            return halves[low] + ((halves[high] - halves[low]) * Math.Clamp(at - low, 0, 1));
        }

        var lanes = new TagLanes(2, 1);
        var placed = new List<(PlanSection Section, double Middle, int Lane)>();
        foreach (var (section, from, to) in spans.OrderBy(s => s.Section.Kind == SectionKind.Braid))
        {
            if (lanes.Place((from + to) / 2, TagHeight, section.Kind == SectionKind.Braid ? 1 : 2) is { } lane)
            {
                placed.Add((section, (from + to) / 2, lane));
            }
        }

        var left = 18 + (Lane * lanes.Used);
        var middle = left + (widest / 2);
        var (pieces, yarn, over) = (new List<Piece>(), new List<YarnRun>(), new List<Line>());
        double Smooth(double y) => Enumerable.Range(-3, 7).Average(i => HalfAt(y + (i * row)));

        // The yarn runs as far from a leaning side as from an upright one.
        double Lean(double y) => Math.Min(2.4, Math.Sqrt(1 + Math.Pow((Smooth(y + (3 * row)) - Smooth(y - (3 * row))) / (6 * row), 2)));
        Point Edge(double y) => new(middle + Smooth(y) + (13 * Lean(y)) + (2 * Math.Sin(y / 4.4)), y);
        foreach (var (section, from, to) in spans)
        {
            if (section.Kind == SectionKind.Braid)
            {
                var half = section.Runs[0].Stitches * stitch * share / 2;
                pieces.AddRange(Flat.Braid(section.Number, 2 * half, from - to, stitch, p => new Point(middle - half + p.X, from - p.Y)));
                foreach (var (strand, side) in new[] { ('a', 1), ('b', -1) })
                {
                    yarn.Add(new(PartNames.Strand(section.Number, strand), true, true, Flat.Along(from, to, y =>
                        Edge(y) with { X = Edge(y).X + (side * 3.4 * Math.Cos(Math.PI * (y - from) / (to - from))) })));
                }

                continue;
            }

            var part = PartOf(section);
            pieces.Add(new(part, [Side(section, middle, from, section.Kind == SectionKind.Brim ? rib : row, stitch * share)], Lines(plan, section, spans, middle, from, to, stitch, share)));
            if (section.Kind == SectionKind.Brim && plan.BrimFolded)
            {
                var fold = (from + to) / 2;
                yarn.Add(new(part, false, false, Flat.Doubled(fold, Edge)));
            }

            var tail = ReferenceEquals(section, spans[0].Section)
                ? Polygon.Curve(new(middle + (widest / 2) - 30, from + 9), new(middle + (widest / 2) - 8, from + 11), Edge(from) with { Y = from + 10 }, Edge(from))
                : [];
            yarn.Add(new(part, false, true, [.. tail, .. Flat.Along(from, to, Edge)]));
        }

        Gores(plan, over, share, middle, top, bottom, row, Smooth);
        foreach (var (_, at, lane) in placed)
        {
            over.Add(new(LineKind.Leader, [new(left - 12 - (Lane * lane), at), new(middle - HalfAt(at) - 2, at)]));
        }

        var tags = placed.ConvertAll(p => new Tag(
            p.Section.Kind == SectionKind.Braid ? PartNames.Strand(p.Section.Number, 'a') : PartOf(p.Section),
            p.Section.Kind == SectionKind.Braid ? PartNames.Strand(p.Section.Number, 'b') : null,
            left - 13 - (Lane / 2) - (Lane * p.Lane),
            p.Middle,
            Lane - 4,
            TagHeight));
        var slips = spans.Where(s => s.Section.Kind != SectionKind.Braid && s.From - s.To >= 13).Select(s =>
        {
            var (low, high) = s.Section.Kind == SectionKind.Brim && plan.BrimFolded ? ((s.From + s.To) / 2, s.To) : (s.From, s.To);
            return new Slip(PartOf(s.Section), middle, (low + high) / 2, Math.Clamp((low - high) * 0.46, 8, 19));
        }).ToList();
        var notes = new List<Note> { new("cast on", middle, bottom + 18), new("drawn up", middle, top - 10) };
        if (plan.BrimFolded && plan.BrimRounds > 0)
        {
            notes.Add(new("fold", middle + (widest / 2) + 34, bottom - (ribbed / 2) + 3.5));
        }

        return new(middle + (widest / 2) + 50, bottom + 28, pieces, over, yarn, tags, slips, notes, stitch, row, Sideways: false);
    }

    private static IEnumerable<RowRun> Worked(PlanSection section) =>
        section.Runs.Where(r => r.Pattern is not (StitchPattern.TubularEdge or StitchPattern.PickUp));

    private static string PartOf(PlanSection section) => section.Kind switch
    {
        SectionKind.Brim => PartNames.Brim,
        SectionKind.Crown => PartNames.Crown,
        _ => PartNames.Stripe(section.Number),
    };

    // Up the right side and down the left. In the crown the edge runs through the middle of every round, so that the area stays that of the
    // stitches without a stair.
    private static List<Point> Side(PlanSection section, double middle, double from, double row, double stitch)
    {
        var (right, left, y) = (new List<Point>(), new List<Point>(), from);
        foreach (var run in Worked(section))
        {
            var half = run.Stitches * stitch / 2;
            var next = y - (run.Rows * row);
            double[] heights = run.Rows > 1 ? [y, next] : right.Count == 0 ? [y, (y + next) / 2] : [(y + next) / 2];
            right.AddRange(heights.Select(h => new Point(middle + half, h)));
            left.AddRange(heights.Select(h => new Point(middle - half, h)));
            y = next;
        }

        right.Add(right[^1] with { Y = y });
        left.Add(left[^1] with { Y = y });
        left.Reverse();
        return [.. right, .. left];
    }

    private static List<Line> Lines(
        RowPlan plan, PlanSection section, List<(PlanSection Section, double From, double To)> spans, double middle, double from, double to, double stitch, double share)
    {
        var lines = new List<Line>();
        var first = ReferenceEquals(section, spans[0].Section);
        var half = section.Runs.Max(r => r.Stitches) * stitch * share / 2;
        if (section.Kind == SectionKind.Brim)
        {
            lines.AddRange(Flat.Ribs(middle - half, to, middle + half, from, stitch));
            if (plan.BrimFolded)
            {
                lines.Add(new(LineKind.Fold, [new(middle - half - 6, (from + to) / 2), new(middle + half + 6, (from + to) / 2)]));
            }
        }

        if (first)
        {
            lines.Add(new(LineKind.Edge, [new(middle - half, from - Flat.HalfEdge), new(middle + half, from - Flat.HalfEdge)]));
        }

        return lines;
    }

    // The lines end in one stitch each, so the last round tells how many there are.
    private static void Gores(
        RowPlan plan, List<Line> over, double share, double middle, double top, double bottom, double row, Func<double, double> halfAt)
    {
        if (plan.CrownRounds == 0 || plan.Sections[^1].Runs[^1].Stitches < 2)
        {
            return;
        }

        var gores = (int)(plan.Sections[^1].Runs[^1].Stitches * share);
        var start = Math.Min(bottom, top + (plan.CrownRounds * row));
        for (var i = 1; i < gores; i++)
        {
            var across = ((2.0 * i) / gores) - 1;
            over.Add(new(LineKind.Gore, Flat.Along(start, top + (row / 2), y => new Point(middle + (across * halfAt(y)), y))));
        }
    }
}
