using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>The hat on the head: a dome seen from the front, its parts bent onto it, the brim below.</summary>
internal sealed class WornHat
{
    private const int Steps = 26;
    private const double Straight = 0.36;
    private readonly double _radius;
    private readonly double _wall;
    private readonly double _dome;
    private readonly double _bow;

    private WornHat(double circumference, double height)
    {
        _radius = circumference / Math.PI / 2 * 1.06;
        _wall = height * Straight;
        var arc = height - _wall;
        var mean = arc / (Math.PI / 2);
        _dome = Math.Sqrt(Math.Max((2 * mean * mean) - (_radius * _radius), _radius * _radius * 0.30));
        _bow = _radius * 0.11;
    }

    private double Top => _wall + _dome;

    public static string Draw(HatNeeds hat, IReadOnlyDictionary<string, PartPaint> paint, string id, string title)
    {
        var plan = hat.Plan;
        var (around, height) = plan is null ? (480.0, 160.0) : ((double)plan.Circumference.Value * 10, (double)plan.BodyHeight.Value * 10);
        var worn = new WornHat(around, height);
        var brimDepth = plan is null ? (hat.Parts.Any(p => p.Kind == PartKind.Brim) ? 45 : 0) : (double)plan.BrimDepth.Value * 10;
        var (reach, foot) = (worn._radius * 1.16, brimDepth + worn._bow + 12);
        var pen = new Pen(id, title, -reach, -worn.Top - 14, 2 * reach, worn.Top + 14 + foot);
        var sideways = plan?.Construction == Construction.SideToSide;
        var rowsOf = hat.Parts.ToDictionary(p => p.Name, p => plan is null ? p.BareMetres : p.Rows, StringComparer.Ordinal);
        var body = Sections(hat, rowsOf).ToList();
        var whole = body.Sum(s => s.Size);
        var at = 0.0;
        foreach (var (parts, size) in body)
        {
            var (from, to) = (at / whole, (at + size) / whole);
            at += size;
            if (sideways)
            {
                worn.Meridians(pen, parts, paint, from, to, plan!.BodyStitches / 2);
            }
            else
            {
                worn.Rings(pen, parts, paint, from, to, (plan?.BodyStitches ?? 110) / 4);
            }
        }

        worn.Finish(pen, sideways);
        if (hat.Parts.FirstOrDefault(p => p.Kind == PartKind.Brim) is { } brim)
        {
            worn.Brim(pen, brim, paint.GetValueOrDefault(brim.Name), brimDepth, plan?.BrimFolded ?? false, plan?.BrimStitches ?? 110);
        }

        var (stitch, row) = plan is null ? (4.5, 3.3) : (10 / (double)plan.Gauge.StitchesPerCm, 10 / (double)plan.Gauge.RowsPerCm);
        return pen.Finish(Fabric.Definitions(id, stitch, row, sideways));
    }

    // Stripes, braids and crown in knitting order with their share of the body: rows, or printed lengths where no rows are known.
    private static IEnumerable<(IReadOnlyList<HatPart> Parts, double Size)> Sections(HatNeeds hat, Dictionary<string, double> size)
    {
        foreach (var part in hat.Parts)
        {
            if (part.Kind is PartKind.Stripe or PartKind.Crown or PartKind.Yarn)
            {
                yield return ([part], size[part.Name]);
            }
            else if (part is { Kind: PartKind.Strand, Strand: 'a' })
            {
                yield return ([part, .. hat.Parts.Where(p => p.Kind == PartKind.Strand && p.Number == part.Number && p.Strand == 'b')], size[part.Name]);
            }
        }
    }

    // A place on the dome: angle from -90° (left) to 90°, height from 0 (at the brim) to 1 (at the top).
    private Spot At(double angle, double up)
    {
        var along = up * (_wall + (Math.PI / 2 * Math.Sqrt(((_radius * _radius) + (_dome * _dome)) / 2)));
        double out_, high;
        if (along <= _wall)
        {
            (out_, high) = (1, along);
        }
        else
        {
            var turn = Math.Min(1, (along - _wall) / (Math.PI / 2 * Math.Sqrt(((_radius * _radius) + (_dome * _dome)) / 2))) * Math.PI / 2;
            (out_, high) = (Math.Cos(turn), _wall + (_dome * Math.Sin(turn)));
        }

        return new Spot(_radius * out_ * Math.Sin(angle), -high + (_bow * out_ * Math.Cos(angle)));
    }

    private void Meridians(Pen pen, IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint, double from, double to, int arrows)
    {
        // The seam is at the back: the middle of the panel faces front, a quarter of it is hidden on either side.
        double Angle(double share) => Math.Clamp((share - 0.5) * 2 * Math.PI, -Math.PI / 2, Math.PI / 2);
        var (left, right) = (Angle(from), Angle(to));
        if (right - left < 0.01)
        {
            foreach (var hidden in parts)
            {
                pen.Open(hidden.Name, paint.GetValueOrDefault(hidden.Name)?.Label ?? hidden.Name);
                pen.Close();
            }

            return;
        }

        if (parts[0].Kind == PartKind.Strand)
        {
            Fabric.Braid(pen, parts, paint, arrows, (along, across) => At(left + (across * (right - left)), 1 - along));
            return;
        }

        Piece(pen, parts[0], paint, [.. Sweep(t => At(left, t)), .. Sweep(t => At(right, 1 - t))]);
    }

    private void Rings(Pen pen, IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint, double from, double to, int arrows)
    {
        static double Angle(double share) => (share - 0.5) * Math.PI;
        if (parts[0].Kind == PartKind.Strand)
        {
            Fabric.Braid(pen, parts, paint, arrows, (along, across) => At(Angle(along), from + (across * (to - from))));
            return;
        }

        Piece(pen, parts[0], paint,
            [.. Sweep(t => At(Angle(t), from)), .. Sweep(t => At(Math.PI / 2, from + (t * (to - from)))), .. Sweep(t => At(Angle(1 - t), to)), .. Sweep(t => At(-Math.PI / 2, to - (t * (to - from))))]);
    }

    private static void Piece(Pen pen, HatPart part, IReadOnlyDictionary<string, PartPaint> paint, IReadOnlyList<Spot> outline)
    {
        var p = paint.GetValueOrDefault(part.Name);
        pen.Open(part.Name, p?.Label ?? part.Name);
        pen.Shape(outline, Fabric.Fill(pen.Id, p));
        if (p is { Leftover: true })
        {
            pen.Shape(outline, $"fill=\"url(#{pen.Id}-knit)\"");
        }

        if (p is { Short: true })
        {
            pen.Shape(outline, $"fill=\"url(#{pen.Id}-gap)\" stroke=\"currentColor\" stroke-width=\"1\" stroke-dasharray=\"4 3\"");
        }

        pen.Close();
    }

    private void Finish(Pen pen, bool gathered)
    {
        var outline = Outline();
        pen.Shape(outline, $"fill=\"url(#{pen.Id}-round)\" stroke=\"currentColor\" stroke-opacity=\".5\" stroke-width=\"1\" stroke-linejoin=\"round\"");
        for (var angle = -1.2; angle <= 1.21; angle += gathered ? 0.2 : 0.4)
        {
            pen.Line([At(angle, gathered ? 0.93 : 0.9), At(angle, 0.985)], "stroke=\"#000\" stroke-opacity=\".3\" stroke-width=\"1\" stroke-linecap=\"round\"");
        }
    }

    private List<Spot> Outline() =>
        [.. Sweep(t => At(-Math.PI / 2, t)), .. Sweep(t => At(Math.PI / 2, 1 - t)), .. Sweep(t => At((Math.PI / 2) - (t * Math.PI), 0))];

    private void Brim(Pen pen, HatPart part, PartPaint? paint, double depth, bool folded, int stitches)
    {
        var swell = folded ? 1.075 : 1.0;
        Spot Edge(double angle, double down) => new(
            _radius * (down is > 0.08 and < 0.92 ? swell : swell * 0.99) * Math.Sin(angle), (down * depth) - (folded ? 3 : 0) + (_bow * 1.05 * Math.Cos(angle)));
        static double Angle(double share) => (share - 0.5) * Math.PI;
        List<Spot> outline =
        [
            .. Sweep(t => Edge(Angle(t), 0)), .. Sweep(t => Edge(Math.PI / 2, t)), .. Sweep(t => Edge(Angle(1 - t), 1)), .. Sweep(t => Edge(-Math.PI / 2, 1 - t)),
        ];
        pen.Open(part.Name, paint?.Label ?? part.Name);
        pen.Shape(outline, Fabric.Fill(pen.Id, paint));
        var ribs = stitches / 4;
        for (var i = 1; i < ribs; i++)
        {
            var angle = Angle(i / (double)ribs);
            pen.Line([Edge(angle, 0.02), Edge(angle, 0.98)], $"stroke=\"#000\" stroke-opacity=\".26\" stroke-width=\"{Pen.N(0.5 + Math.Cos(angle))}\"");
        }

        if (paint is { Short: true })
        {
            pen.Shape(outline, $"fill=\"url(#{pen.Id}-gap)\" stroke=\"currentColor\" stroke-width=\"1\" stroke-dasharray=\"4 3\"");
        }

        pen.Shape(outline, $"fill=\"url(#{pen.Id}-round)\" stroke=\"currentColor\" stroke-opacity=\".55\" stroke-width=\"1\" stroke-linejoin=\"round\"");
        if (folded)
        {
            pen.Line([.. Sweep(t => Edge(Angle(t), 0))], "stroke=\"#000\" stroke-opacity=\".45\" stroke-width=\"2.2\"");
        }

        pen.Close();
    }

    private static IEnumerable<Spot> Sweep(Func<double, Spot> at)
    {
        for (var i = 0; i <= Steps; i++)
        {
            yield return at(i / (double)Steps);
        }
    }
}
