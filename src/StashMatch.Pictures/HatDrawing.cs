using System.Globalization;
using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>A hat drawn from its row plan: first off the needles, then on the head. The same drawing serves screen and print.</summary>
public static class HatDrawing
{
    private const string Ink = "stroke=\"currentColor\"";

    /// <summary>The panel or tube as it is knitted, stitch-true, with a running line for the yarn and a knot where a new leftover joins.</summary>
    /// <param name="plan">The row plan.</param>
    /// <param name="paint">How each part is drawn, by the part's name.</param>
    /// <param name="id">Unique on the page.</param>
    /// <param name="title">What the drawing shows, in words.</param>
    public static string OffTheNeedles(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint, string id, string title)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paint);
        var bands = Bands.Of(plan);
        var sideways = plan.Construction == Construction.SideToSide;
        var (left, top) = (bands.Min(b => b.Box.Left), bands.Min(b => b.Box.Top));
        var (right, bottom) = (bands.Max(b => b.Box.Right), bands.Max(b => b.Box.Bottom));
        var (stitch, row) = (10 / (double)plan.Gauge.StitchesPerCm, 10 / (double)plan.Gauge.RowsPerCm);
        var pen = new Pen(id, title, left - 34, top - 34, right - left + 68, bottom - top + 56);
        foreach (var band in bands)
        {
            if (band.Section.Kind == SectionKind.Braid)
            {
                DrawBraid(pen, band, paint, sideways, plan.BodyStitches / 2);
                continue;
            }

            var p = paint.GetValueOrDefault(band.Parts[0].Name);
            pen.Open(band.Parts[0].Name, p?.Label ?? band.Parts[0].Name);
            pen.Shape(band.Outline, Fabric.Fill(id, p));
            if (p is { Leftover: true })
            {
                pen.Shape(band.Outline, band.Section.Kind == SectionKind.Brim ? "fill=\"none\"" : $"fill=\"url(#{id}-knit)\"");
            }

            if (band.Section.Kind == SectionKind.Brim)
            {
                Ribs(pen, band, stitch, plan.BrimFolded);
            }

            if (p is { Short: true })
            {
                pen.Shape(band.Outline, $"fill=\"url(#{id}-gap)\" {Ink} stroke-width=\"1\" stroke-dasharray=\"4 3\"");
            }

            Name(pen, band, p, sideways);
            pen.Close();
        }

        Edges(pen, bands, sideways);
        RunningLine(pen, bands, paint, sideways, top, right);
        return pen.Finish(Fabric.Definitions(id, stitch, row, sideways));
    }

    /// <summary>The worn hat from the front, from a row plan, or sketched from printed lengths where there is none.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="paint">How each part is drawn, by the part's name.</param>
    /// <param name="id">Unique on the page.</param>
    /// <param name="title">What the drawing shows, in words.</param>
    public static string OnTheHead(HatNeeds hat, IReadOnlyDictionary<string, PartPaint> paint, string id, string title)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(paint);
        return WornHat.Draw(hat, paint, id, title);
    }

    private static void DrawBraid(Pen pen, Band band, IReadOnlyDictionary<string, PartPaint> paint, bool sideways, int arrows)
    {
        var (left, top, right, bottom) = band.Box;
        Fabric.Braid(pen, band.Parts, paint, arrows, (along, across) => sideways
            ? new Spot(left + (across * (right - left)), top + (along * (bottom - top)))
            : new Spot(left + (along * (right - left)), top + (across * (bottom - top))));
        pen.Shape(band.Outline, $"fill=\"none\" {Ink} stroke-opacity=\".45\" stroke-width=\".6\"");
    }

    private static void Ribs(Pen pen, Band band, double stitch, bool folded)
    {
        var (left, top, right, bottom) = band.Box;
        for (var x = left + (stitch * 2); x < right - 0.1; x += stitch * 2)
        {
            pen.Line([new Spot(x, top), new Spot(x, bottom)], $"{Ink} stroke-opacity=\".3\" stroke-width=\".7\"");
        }

        if (folded)
        {
            var fold = (top + bottom) / 2;
            pen.Line([new Spot(left - 9, fold), new Spot(right + 9, fold)], $"{Ink} stroke-width=\"1\" stroke-dasharray=\"6 4\"");
            pen.Text(new Spot(right + 11, fold + 3), "fold", "class=\"note\" font-size=\"9\" fill=\"currentColor\"");
        }

        pen.Shape(band.Outline, $"fill=\"none\" {Ink} stroke-opacity=\".55\" stroke-width=\".8\"");
    }

    // The part's number outside, the leftover's two letters on it, each only where there is room.
    private static void Name(Pen pen, Band band, PartPaint? paint, bool sideways)
    {
        var (left, top, right, bottom) = band.Box;
        var vertical = sideways && band.Section.Kind != SectionKind.Brim;
        var room = vertical ? right - left : bottom - top;
        var size = Math.Clamp(room * 0.62, 6, 13);
        var middle = new Spot((left + right) / 2, ((top + bottom) / 2) + (size * 0.35));
        if (paint?.Code is { } code && room >= 8)
        {
            var at = band.Section.Kind == SectionKind.Brim ? middle with { Y = top + ((bottom - top) * 0.3) } : middle;
            if (band.Section.Kind == SectionKind.Brim)
            {
                pen.Raw($"<rect x=\"{Pen.N(at.X - 12)}\" y=\"{Pen.N(at.Y - 11)}\" width=\"24\" height=\"15\" rx=\"3\" {Fabric.Fill(pen.Id, paint)}/>");
            }

            pen.Text(at, code, $"text-anchor=\"middle\" font-size=\"{Pen.N(size)}\" font-weight=\"700\" fill=\"{Fabric.InkOn(paint)}\"");
        }

        if (band.Section.Kind == SectionKind.Stripe && room >= 6)
        {
            var number = band.Section.Number.ToString(CultureInfo.InvariantCulture);
            var at = vertical ? new Spot(middle.X, top - 17) : new Spot(left - 14, ((top + bottom) / 2) + 3.5);
            pen.Text(at, number, "class=\"note\" text-anchor=\"middle\" font-size=\"10\" fill=\"currentColor\"");
        }
    }

    private static void Edges(Pen pen, IReadOnlyList<Band> bands, bool sideways)
    {
        var body = bands.Where(b => b.Section.Kind != SectionKind.Brim).ToList();
        var (first, last) = (body[0].Box, body[^1].Box);
        if (sideways)
        {
            foreach (var x in new[] { first.Left, last.Right })
            {
                pen.Line([new Spot(x, first.Top), new Spot(x, first.Bottom)], $"{Ink} stroke-width=\"1.8\" stroke-linecap=\"round\"");
            }

            pen.Line([new Spot(first.Left, first.Top), new Spot(last.Right, first.Top)], $"{Ink} stroke-opacity=\".6\" stroke-width=\"1\" stroke-dasharray=\"1.5 2.5\" stroke-linecap=\"round\"");
            pen.Line([new Spot(first.Left, 0), new Spot(last.Right, 0)], $"{Ink} stroke-opacity=\".6\" stroke-width=\".8\"");
        }
        else
        {
            var bottom = bands.Max(b => b.Box.Bottom);
            var edge = bands.First(b => b.Box.Bottom == bottom).Box;
            pen.Line([new Spot(edge.Left, bottom), new Spot(edge.Right, bottom)], $"{Ink} stroke-width=\"1.8\" stroke-linecap=\"round\"");
        }
    }

    // A thread beside the work in knitting order; a knot where the next section comes from another leftover.
    private static void RunningLine(Pen pen, IReadOnlyList<Band> bands, IReadOnlyDictionary<string, PartPaint> paint, bool sideways, double top, double right)
    {
        var main = bands.Where(b => b.Section.Kind != SectionKind.Braid && (!sideways || b.Section.Kind != SectionKind.Brim)).ToList();
        var thread = new List<Spot>();
        var knots = new List<Spot>();
        string? before = null;
        foreach (var band in main)
        {
            var (l, t, r, b) = band.Box;
            var (from, to) = sideways ? (new Spot(l, top - 8), new Spot(r, top - 8)) : (new Spot(right + 12, b), new Spot(right + 12, t));
            thread.Add(from);
            thread.Add(to);
            var code = paint.GetValueOrDefault(band.Parts[0].Name)?.Code;
            if (code is not null && code != before)
            {
                knots.Add(from);
            }

            before = code ?? before;
        }

        if (thread.Count == 0)
        {
            return;
        }

        var start = sideways ? new Spot(thread[0].X - 14, thread[0].Y + 7) : new Spot(thread[0].X + 8, thread[0].Y + 10);
        pen.Line([start, .. thread], $"{Ink} stroke-opacity=\".8\" stroke-width=\"1\" stroke-linejoin=\"round\" stroke-linecap=\"round\"");
        foreach (var knot in knots)
        {
            pen.Circle(knot, 2.4, "class=\"knot\" fill=\"currentColor\"");
        }
    }
}
