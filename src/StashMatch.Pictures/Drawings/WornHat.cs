using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>One band round a brim-up hat: a part, or a braid of two, and how much of the height it takes.</summary>
internal sealed record Belt(string Part, string? Partner, double Depth);

/// <summary>A hat on the head, seen from the front.</summary>
internal sealed record WornHat(
    IReadOnlyList<Piece> Body,
    IReadOnlyList<Point> Outline,
    Piece? Brim,
    bool Folded,
    IReadOnlyList<Line> Over,
    IReadOnlyList<Line> Under,
    Piece? Seam,
    IReadOnlyList<Piece> FromAbove,
    Point Above,
    Point Top,
    bool Sideways)
{
    private const double PerCm = 16;
    private const double Below = 10;

    // A head is a ninth or so larger round than the hat that clings to it.
    private const double Stretch = 1.1;
    private const double Turn = 0.26;

    public static WornHat Of(RowPlan plan)
    {
        var r = (double)plan.Circumference.Value * Stretch * PerCm / (2 * Math.PI);
        var length = (double)plan.BodyHeight.Value * PerCm;
        var brim = plan.BrimRounds > 0 ? (double)plan.BrimDepth.Value * PerCm : 0;
        if (plan.Construction == Construction.SideToSide)
        {
            return SideToSide(plan, r, length, brim);
        }

        var seam = plan.Parts.Any(p => p.Kind == PartKind.Seam);
        var belts = plan.Sections.Where(s => s.Kind != SectionKind.Brim).Select(s => s.Kind switch
        {
            SectionKind.Braid => new Belt(PartNames.Strand(s.Number, 'a'), PartNames.Strand(s.Number, 'b'), s.Rows),
            SectionKind.Crown => new Belt(PartNames.Crown, null, s.Rows),
            _ => new Belt(PartNames.Stripe(s.Number), null, s.Rows),
        });
        var gores = plan.CrownRounds > 0 ? plan.Sections[^1].Runs[^1].Stitches : 0;
        var crown = plan.BodyRows > 0 ? (double)plan.CrownRounds / plan.BodyRows : 0;
        return Belted([.. belts], r, length, brim, plan.BrimFolded, Math.Max(8, plan.BrimStitches / 2), plan.BodyStitches, gores, crown, seam);
    }

    public static WornHat Of(IReadOnlyList<HatPart> parts)
    {
        const double whole = 21 * PerCm;
        var sum = parts.Where(p => p.Kind != PartKind.Seam).Sum(p => Math.Max(p.BareMetres, 0));
        double Share(HatPart p) => sum > 0 ? Math.Max(p.BareMetres, 0) / sum : 1;
        var brim = Math.Min(0.45, parts.Where(p => p.Kind == PartKind.Brim).Sum(Share)) * whole;
        var belts = new List<Belt>();
        foreach (var part in parts.Where(p => p.Kind is not (PartKind.Brim or PartKind.Seam)))
        {
            if (part.Strand == 'b' && belts.FindIndex(b => b.Partner is null && b.Part == PartNames.Strand(part.Number, 'a')) is >= 0 and var at)
            {
                belts[at] = belts[at] with { Partner = part.Name, Depth = belts[at].Depth + Share(part) };
                continue;
            }

            belts.Add(new(part.Name, null, Share(part)));
        }

        var crown = belts.Count > 0 && belts[^1].Part == PartNames.Crown ? belts[^1].Depth / belts.Sum(b => b.Depth) : 0;
        return Belted(belts, 8.3 * PerCm, whole - brim, brim, false, 56, 112, crown > 0 ? 8 : 0, crown, parts.Any(p => p.Kind == PartKind.Seam));
    }

    private static WornHat Belted(
        IReadOnlyList<Belt> belts, double r, double length, double brim, bool folded, int ribs, int stitches, int gores, double crown, bool seam)
    {
        var body = WornSurface.Body(r, length, brim > 0 ? Below : 0);
        var (pieces, at, sum) = (new List<Piece>(), 0.0, Math.Max(1e-9, belts.Sum(b => b.Depth)));
        foreach (var (belt, i) in belts.Select((b, i) => (b, i)))
        {
            var (from, to) = (i == 0 && belt.Partner is null ? body.Start : body.End * at / sum, body.End * (at + belt.Depth) / sum);
            at += belt.Depth;
            if (belt.Partner is null)
            {
                pieces.Add(new(belt.Part, [body.Patch(-Math.PI, Math.PI, from, to)], [.. WornStitches.Upright(body, from, to, stitches, gores, body.End * (1 - crown))]));
            }
            else
            {
                pieces.AddRange(Rope.Round(body, belt.Part, belt.Partner, from, to, stitches));
            }
        }

        var over = new List<Line>();
        for (var i = 0; i < gores; i++)
        {
            var angle = (((i + 0.5) / gores) - 0.5) * 2 * Math.PI;
            var line = Flat.Along(body.End * (1 - crown), body.End - 2, s => Math.Abs(angle) < body.Reach(s) ? body.At(angle, s) : new(double.NaN, 0));
            over.Add(new(LineKind.Gore, [.. line.Where(p => !double.IsNaN(p.X))]));
        }

        var top = body.At(0, body.End);
        var button = seam ? new Piece(PartNames.Seam, [Oval(top, 4.5, 2.4)], []) : null;
        return Finish(body, pieces, over, r, brim, folded, ribs, button, [], default, sideways: false);
    }

    private static WornHat SideToSide(RowPlan plan, double r, double length, double brim)
    {
        var body = WornSurface.Body(r, length, brim > 0 ? Below : 0);
        var above = new Point((r * 1.08) + 76, 0);
        var (pieces, fromAbove, at) = (new List<Piece>(), new List<Piece>(), 0);
        foreach (var section in plan.Sections.Where(s => s.Kind != SectionKind.Brim))
        {
            // The seam is at the back, the middle of the panel in front, turned a little so that no side is like the other.
            double Angle(int row) => ((((double)row / plan.BodyRows) - 0.5) * 2 * Math.PI) - Turn;
            var (left, right) = (Angle(at), Angle(at + section.Rows));
            at += section.Rows;
            if (left + right < -2 * Math.PI)
            {
                (left, right) = (left + (2 * Math.PI), right + (2 * Math.PI));
            }

            if (section.Kind == SectionKind.Braid)
            {
                pieces.AddRange(Rope.Up(body, section.Number, left, right, plan.BodyStitches));
                fromAbove.AddRange(Rope.Wedges(section.Number, above, left, right));
                continue;
            }

            var part = PartNames.Stripe(section.Number);
            IReadOnlyList<IReadOnlyList<Point>> patches =
                [.. new[] { left - (2 * Math.PI), left, left + (2 * Math.PI) }.Select(l => body.Patch(l, l + right - left, body.Start, body.End)).Where(p => p.Count > 0)];
            pieces.Add(new(part, patches, [.. WornStitches.Sideways(body, left, right, section.Rows, plan.BodyStitches)]));
            fromAbove.Add(new(part, [Rope.Wedge(above, left, right, 0, Rope.AboveRadius)], []));
        }

        var over = new List<Line>();
        for (var i = 0; i < 22; i++)
        {
            var angle = (((i + 0.5) / 22) - 0.5) * 2 * Math.PI;
            var from = body.End - (r * (i % 2 == 0 ? 0.52 : 0.36));
            var line = Flat.Along(from, body.End - 3, s => Math.Abs(angle) < body.Reach(s) ? body.At(angle, s) : new(double.NaN, 0));
            over.Add(new(LineKind.Pleat, [.. line.Where(p => !double.IsNaN(p.X))]));
        }

        var top = body.At(0, body.End);
        var seam = new Piece(PartNames.Seam, [Oval(top, 7, 3.4), Oval(above, 3.2, 3.2)], []);
        return Finish(body, pieces, over, r, brim, plan.BrimFolded, Math.Max(8, plan.BrimStitches / 2), seam, fromAbove, above, sideways: true);
    }

    private static WornHat Finish(
        WornSurface body, List<Piece> pieces, List<Line> over, double r, double brim, bool folded, int ribs, Piece? seam, List<Piece> fromAbove, Point above, bool sideways)
    {
        const double front = Math.PI / 2;
        Piece? cuffed = null;
        var under = new List<Line>();
        if (brim > 0)
        {
            var cuff = WornSurface.Cuff(r, brim, folded);
            under.Add(new(LineKind.Shadow, [.. cuff.Across(cuff.End, -front * 0.88, front * 0.88).Select(p => p with { Y = p.Y - (folded ? 2.5 : 1) })]));
            cuffed = WornBrim.Of(cuff, ribs);
        }
        else
        {
            over.Add(new(LineKind.Edge, [.. body.Across(body.Start, -front, front)]));
        }

        return new(pieces, body.Silhouette(), cuffed, folded, over, under, seam, fromAbove, above, body.At(0, body.End), sideways);
    }

    private static IReadOnlyList<Point> Oval(Point at, double rx, double ry) =>
        [.. Enumerable.Range(0, 20).Select(i => new Point(at.X + (rx * Math.Cos(i * Math.PI / 10)), at.Y + (ry * Math.Sin(i * Math.PI / 10))))];
}
