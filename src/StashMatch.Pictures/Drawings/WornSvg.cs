using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Writes a hat on the head.</summary>
internal static class WornSvg
{
    public static string Write(WornHat hat, Palette palette, string id, string title)
    {
        var svg = new SvgWriter();
        var write = new PartWriter(svg, palette, id);
        var ball = palette.Has(PartNames.PomPom) ? Fluff.On(hat.Top) : null;
        var all = hat.Outline.Concat(hat.Brim?.Outlines[0] ?? []).Concat(ball?.Outlines[0] ?? []).ToList();
        var (left, right) = (all.Min(p => p.X) - 16, all.Max(p => p.X) + 16);
        var (top, bottom) = (all.Min(p => p.Y) - 16, all.Max(p => p.Y) + 18);
        var lift = new Point(0, 0);
        if (hat.FromAbove.Count > 0)
        {
            right = hat.Above.X + Rope.AboveRadius + 16;
            lift = new(0, bottom - Rope.AboveRadius - 34);
        }

        write.Begin(left, top, right - left, bottom - top, title);
        Defs(svg, write, hat, palette, id);
        svg.Leaf("ellipse", ("class", "shade"), ("cx", "0"), ("cy", N(bottom - 19)), ("rx", N(all.Max(p => p.X) * 0.74)), ("ry", "8"), ("fill", "#000"), ("fill-opacity", "0.1"));
        var above = hat.FromAbove.ToLookup(p => p.Part, StringComparer.Ordinal);
        foreach (var piece in hat.Body)
        {
            var strand = PartNames.Read(piece.Part)?.Kind == PartKind.Strand;
            write.OpenPart(piece.Part);
            write.Fill(piece, knit: false, strand);
            write.Lines(piece.Part, piece.Lines);
            foreach (var small in above[piece.Part])
            {
                write.Fill(Moved(small, lift), knit: false, strand: false);
            }

            svg.Close();
        }

        Overlay(svg, write, hat, id);
        if (hat.Brim is { } brim)
        {
            write.OpenPart(brim.Part);
            write.Fill(brim, knit: false, strand: false);
            write.Lines(brim.Part, brim.Lines);
            if (!palette.IsOpen(brim.Part))
            {
                var d = SvgWriter.Path(brim.Outlines, close: true);
                svg.Leaf("path", ("d", d), ("fill", write.Url("left")));
                svg.Leaf("path", ("d", d), ("fill", write.Url("right")));
            }

            svg.Close();
            Ink(svg, SvgWriter.Path(brim.Outlines, close: true), "1.3");
        }

        if (hat.Seam is { } seam)
        {
            write.OpenPart(seam.Part);
            write.Fill(seam with { Outlines = [.. seam.Outlines.Select((o, i) => i == 0 ? o : [.. o.Select(p => new Point(p.X, p.Y + lift.Y))])] }, knit: false, strand: true);
            svg.Close();
            Ink(svg, SvgWriter.Path(seam.Outlines.Take(1), close: true), "0.9");
        }

        if (ball is not null)
        {
            write.OpenPart(ball.Part);
            write.Fill(ball, knit: false, strand: false);
            write.Lines(ball.Part, ball.Lines);
            svg.Close();
            Ink(svg, SvgWriter.Path(ball.Outlines, close: true), "0.9");
        }

        if (hat.FromAbove.Count > 0)
        {
            var (x, y) = (hat.Above.X, hat.Above.Y + lift.Y);
            svg.Leaf("circle", ("class", "ink"), ("cx", N(x)), ("cy", N(y)), ("r", N(Rope.AboveRadius)), ("fill", "none"), ("stroke", "currentColor"), ("stroke-width", "1.1"));
            svg.Open("text", ("class", "note"), ("x", N(x)), ("y", N(y + Rope.AboveRadius + 17)), ("font-size", "12"), ("text-anchor", "middle"), ("fill", "currentColor"), ("fill-opacity", "0.75"));
            svg.Words("from above").Close();
        }

        return svg.Close().ToString();
    }

    private static string N(double value) => SvgWriter.Number(value);

    private static Piece Moved(Piece piece, Point by) =>
        piece with { Outlines = [.. piece.Outlines.Select(o => (IReadOnlyList<Point>)[.. o.Select(p => new Point(p.X + by.X, p.Y + by.Y))])] };

    private static void Defs(SvgWriter svg, PartWriter write, WornHat hat, Palette palette, string id)
    {
        var edge = hat.Outline.Concat(hat.Brim?.Outlines[0] ?? []).Max(p => p.X);
        svg.Open("defs");
        write.Patterns(hat.Sideways ? 5.5 : 7, hat.Sideways ? 7 : 5.5, hat.Sideways);
        Shade("left", -edge, -edge * 0.25, "0.34");
        Shade("right", edge, edge * 0.12, "0.44");
        svg.Open("radialGradient", ("id", id + "-light"), ("gradientUnits", "userSpaceOnUse"), ("cx", N(-edge * 0.3)), ("cy", N(hat.Top.Y + (edge * 0.55))), ("r", N(edge * 0.8)));
        svg.Leaf("stop", ("offset", "0"), ("stop-color", "#fff"), ("stop-opacity", "0.22"));
        svg.Leaf("stop", ("offset", "1"), ("stop-color", "#fff"), ("stop-opacity", "0"));
        svg.Close();

        // Shading and stitches lie on what is knitted, not on a gap.
        var knitted = hat.Body.Any(p => palette.IsOpen(p.Part)) ? hat.Body.Where(p => !palette.IsOpen(p.Part)).SelectMany(p => p.Outlines) : [hat.Outline];
        svg.Leaf("path", ("id", id + "-body"), ("d", SvgWriter.Path(knitted, close: true)));
        svg.Close();
        void Shade(string name, double from, double to, string dark)
        {
            svg.Open("linearGradient", ("id", $"{id}-{name}"), ("gradientUnits", "userSpaceOnUse"), ("x1", N(from)), ("y1", "0"), ("x2", N(to)), ("y2", "0"));
            svg.Leaf("stop", ("offset", "0"), ("stop-color", "#000"), ("stop-opacity", dark));
            svg.Leaf("stop", ("offset", "0.35"), ("stop-color", "#000"), ("stop-opacity", "0.12"));
            svg.Leaf("stop", ("offset", "1"), ("stop-color", "#000"), ("stop-opacity", "0"));
            svg.Close();
        }
    }

    private static void Overlay(SvgWriter svg, PartWriter write, WornHat hat, string id)
    {
        svg.Open("g", ("aria-hidden", "true"), ("pointer-events", "none"));
        foreach (var fill in new[] { "light", "left", "right" })
        {
            svg.Leaf("use", ("href", $"#{id}-body"), ("fill", write.Url(fill)));
        }

        write.Lines(null, hat.Over);
        write.Lines(null, hat.Under);
        svg.Close();
        Ink(svg, SvgWriter.Path([hat.Outline], close: true), "1.3");
    }

    private static void Ink(SvgWriter svg, string d, string width) => svg.Leaf(
        "path", ("class", "ink"), ("d", d), ("fill", "none"), ("stroke", "currentColor"), ("stroke-opacity", "0.75"), ("stroke-width", width), ("stroke-linejoin", "round"), ("pointer-events", "none"));
}
