using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>A point in millimetres of fabric, x to the right, y down.</summary>
public readonly record struct Spot(double X, double Y);

/// <summary>One section of the row plan laid out flat.</summary>
/// <param name="Section">The section.</param>
/// <param name="Parts">The part it is, or a braid's two strands.</param>
/// <param name="Outline">Its corners.</param>
public sealed record Band(PlanSection Section, IReadOnlyList<HatPart> Parts, IReadOnlyList<Spot> Outline)
{
    /// <summary>Area in square millimetres.</summary>
    public double Area
    {
        get
        {
            var twice = 0.0;
            for (var i = 0; i < Outline.Count; i++)
            {
                var (a, b) = (Outline[i], Outline[(i + 1) % Outline.Count]);
                twice += (a.X * b.Y) - (b.X * a.Y);
            }

            return Math.Abs(twice) / 2;
        }
    }

    /// <summary>Left, top, right and bottom.</summary>
    public (double Left, double Top, double Right, double Bottom) Box =>
        (Outline.Min(p => p.X), Outline.Min(p => p.Y), Outline.Max(p => p.X), Outline.Max(p => p.Y));
}

/// <summary>Lays a row plan out flat as it comes off the needles, stitch for stitch in proportion.</summary>
public static class Bands
{
    /// <summary>The bands in knitting order. Side to side: the panel from the cast-on on the left, its lower edge at y 0, the brim below. Brim up: y 0 is the top of the brim.</summary>
    public static IReadOnlyList<Band> Of(RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (stitch, row) = (10 / (double)plan.Gauge.StitchesPerCm, 10 / (double)plan.Gauge.RowsPerCm);
        var bands = new List<Band>();
        var at = 0.0;
        var panel = plan.BodyRows * row;
        foreach (var section in plan.Sections)
        {
            IReadOnlyList<HatPart> parts = [.. plan.Parts.Where(p => Belongs(p, section))];
            if (section.Kind == SectionKind.Brim)
            {
                var (half, depth) = (plan.BrimStitches * stitch / 2, plan.BrimRounds * row);
                var middle = plan.Construction == Construction.SideToSide ? panel / 2 : 0;
                bands.Add(new Band(section, parts, Box(middle - half, 0, middle + half, depth)));
            }
            else if (plan.Construction == Construction.SideToSide)
            {
                var width = section.Rows * row;
                bands.Add(new Band(section, parts, Box(at, -plan.BodyStitches * stitch, at + width, 0)));
                at += width;
            }
            else
            {
                bands.Add(new Band(section, parts, Stacked(section, ref at, stitch, row)));
            }
        }

        return bands;
    }

    private static bool Belongs(HatPart part, PlanSection section) => section.Kind switch
    {
        SectionKind.Brim => part.Kind == PartKind.Brim,
        SectionKind.Crown => part.Kind == PartKind.Crown,
        SectionKind.Stripe => part.Kind == PartKind.Stripe && part.Number == section.Number,
        _ => part.Kind == PartKind.Strand && part.Number == section.Number,
    };

    private static Spot[] Box(double left, double top, double right, double bottom) =>
        [new(left, top), new(right, top), new(right, bottom), new(left, bottom)];

    // Each run is as wide as its stitches; the crown's runs narrow step by step.
    private static List<Spot> Stacked(PlanSection section, ref double at, double stitch, double row)
    {
        var (left, right) = (new List<Spot>(), new List<Spot>());
        foreach (var run in section.Runs)
        {
            var half = run.Stitches * stitch / 2;
            left.Add(new Spot(-half, at));
            right.Add(new Spot(half, at));
            at -= run.Rows * row;
            left.Add(new Spot(-half, at));
            right.Add(new Spot(half, at));
        }

        right.Reverse();
        return [.. left, .. right];
    }
}
