using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Draws a hat on the head.</summary>
internal static class WornDrawing
{
    /// <summary>How much of the plane the hat takes, its pom-pom and the view from above in.</summary>
    public static Box View(WornHat hat, Palette palette)
    {
        var all = hat.Outline.Concat(hat.Brim?.Outlines[0] ?? []).Concat(Ball(hat, palette)?.Outlines[0] ?? []).ToList();
        return new(
            all.Min(p => p.X) - 16, all.Min(p => p.Y) - 16,
            hat.FromAbove.Count > 0 ? hat.Above.X + Rope.AboveRadius + 16 : all.Max(p => p.X) + 16, all.Max(p => p.Y) + 18);
    }

    public static void Draw(WornHat hat, Palette palette, IPen pen, string title)
    {
        var write = new PartWriter(pen, palette);
        var (ball, view) = (Ball(hat, palette), View(hat, palette));
        var lift = hat.FromAbove.Count > 0 ? new Point(0, view.Bottom - Rope.AboveRadius - 34) : default;
        var edge = hat.Outline.Concat(hat.Brim?.Outlines[0] ?? []).Max(p => p.X);
        pen.Begin(view, title);
        pen.Have(PartWriter.Tiles(hat.Sideways ? 5.5 : 7, hat.Sideways ? 7 : 5.5, hat.Sideways),
        [
            new("left", "#000", new(-edge, 0), edge * 0.75, Round: false, [new(0, 0.34), new(0.35, 0.12), new(1, 0)]),
            new("right", "#000", new(edge, 0), -edge * 0.88, Round: false, [new(0, 0.44), new(0.35, 0.12), new(1, 0)]),
            new("light", "#fff", new(-edge * 0.3, hat.Top.Y + (edge * 0.55)), edge * 0.8, Round: true, [new(0, 0.22), new(1, 0)]),
        ]);
        pen.Ellipse("shade", new(0, view.Bottom - 19), edge * 0.74, 8, new("#000", 0.1), null);
        var above = hat.FromAbove.ToLookup(p => p.Part, StringComparer.Ordinal);
        foreach (var piece in hat.Body)
        {
            write.OpenPart(piece.Part);
            write.Fill(piece, knit: false, PartNames.Read(piece.Part)?.Kind == PartKind.Strand);
            write.Lines(piece.Part, piece.Lines);
            foreach (var small in above[piece.Part])
            {
                write.Fill(Moved(small, lift), knit: false, strand: false);
            }

            pen.Close();
        }

        // Shading and stitches lie on what is knitted, not on a gap.
        pen.OpenAside(untouched: true);
        pen.Layers(
            "body", hat.Body.Any(p => palette.IsOpen(p.Part)) ? [.. hat.Body.Where(p => !palette.IsOpen(p.Part)).SelectMany(p => p.Outlines)] : [hat.Outline],
            Fill.Of("light"), Fill.Of("left"), Fill.Of("right"));
        write.Lines(null, hat.Over);
        write.Lines(null, hat.Under);
        pen.Close();
        Ink(pen, [hat.Outline], 1.3);
        if (hat.Brim is { } brim)
        {
            Whole(brim, 1.3, strand: false, () =>
            {
                if (!palette.IsOpen(brim.Part))
                {
                    pen.Shape(null, brim.Outlines, close: true, Fill.Of("left"), null);
                    pen.Shape(null, brim.Outlines, close: true, Fill.Of("right"), null);
                }
            });
        }

        if (hat.Seam is { } seam)
        {
            Whole(seam with { Outlines = [.. seam.Outlines.Select((o, i) => i == 0 ? o : [.. o.Select(p => new Point(p.X, p.Y + lift.Y))])] }, 0.9, strand: true);
        }

        if (ball is not null)
        {
            Whole(ball, 0.9, strand: false);
        }

        if (hat.FromAbove.Count > 0)
        {
            var middle = new Point(hat.Above.X, hat.Above.Y + lift.Y);
            pen.Ellipse("ink", middle, Rope.AboveRadius, Rope.AboveRadius, null, new(null, 1.1));
            pen.Text("note", "from above", middle with { Y = middle.Y + Rope.AboveRadius + 17 }, 12, new(null, 0.75));
        }

        pen.Close();

        void Whole(Piece piece, double width, bool strand, Action? shade = null)
        {
            write.OpenPart(piece.Part);
            write.Fill(piece, knit: false, strand);
            write.Lines(piece.Part, piece.Lines);
            shade?.Invoke();
            pen.Close();
            Ink(pen, [.. piece.Outlines.Take(1)], width);
        }
    }

    private static Piece? Ball(WornHat hat, Palette palette) => palette.Has(PartNames.PomPom) ? Fluff.On(hat.Top) : null;

    private static Piece Moved(Piece piece, Point by) =>
        piece with { Outlines = [.. piece.Outlines.Select(o => (IReadOnlyList<Point>)[.. o.Select(p => new Point(p.X + by.X, p.Y + by.Y))])] };

    private static void Ink(IPen pen, IReadOnlyList<IReadOnlyList<Point>> outlines, double width) =>
        pen.Shape("ink", outlines, close: true, null, new(null, width, 0.75, RoundCorners: true), untouched: true);
}
