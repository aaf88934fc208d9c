namespace StashMatch.Pictures;

/// <summary>Draws parts, lines and the patterns both drawings use.</summary>
internal sealed class PartWriter(IPen pen, Palette palette)
{
    private const string Knit = "knit";
    private const string Hatch = "hatch";
    private const string Rule = "short";

    // Enough that no paper shows between two parts, too little to make one of them larger.
    private const double Seam = 0.3;

    /// <summary>Hatches for gaps and shortfalls, and one stitch after another.</summary>
    public static IReadOnlyList<Tile> Tiles(double width, double height, bool sideways)
    {
        IReadOnlyList<Point> stitch = sideways
            ? [new(width, 0), new(width * 0.1, height / 2), new(width, height)]
            : [new(0, height * 0.1), new(width / 2, height), new(width, height * 0.1)];
        var (fine, line) = (Math.Min(width, height), (IReadOnlyList<Point>)[new(4, 0), new(4, 8)]);
        return
        [
            new(Hatch, 8, 8, [new("gap", line, new(null, 1, 0.32))], Turned: true),
            new(Rule, 8, 8, [new(null, line, new("#fff", 3, 0.6)), new(null, line, new("#000", 1, 0.7))], Turned: true),
            new(Knit, width, height,
            [
                new(null, stitch, new("#000", fine * 0.24, 0.17)),
                new(null, stitch, new("#fff", fine * 0.2, 0.16), sideways ? new(width * 0.42, 0) : new(0, -height * 0.42)),
            ]),
        ];
    }

    public void OpenPart(string part) =>
        pen.OpenPart(part, palette.IsOpen(part) ? "part open" : palette.IsShort(part) ? "part short" : "part", palette.Title(part));

    public void Fill(Piece piece, bool knit, bool strand)
    {
        var (part, outlines) = (piece.Part, piece.Outlines);
        if (palette.IsOpen(part))
        {
            Gap(outlines, Hatch, strand);
            return;
        }

        if (palette.Hex(part) is { } hex)
        {
            pen.Shape("yarn", outlines, close: true, new(hex), strand ? new("#000", 0.6, 0.3) : new(hex, Seam));
        }
        else
        {
            pen.Shape("paper", outlines, close: true, new(null, 0.07), new(null, 0.8));
        }

        if (knit)
        {
            pen.Shape(null, outlines, close: true, Pictures.Fill.Of(Knit), null);
        }

        if (palette.IsShort(part))
        {
            Gap(outlines, Rule, strand);
        }
    }

    /// <summary>A part whose leftover does not reach: knitted as far as it goes, open after that.</summary>
    public void AsFarAsItGoes(Piece piece, bool strand, double lacks, Way way)
    {
        var points = piece.Outlines.SelectMany(o => o).ToList();
        if (points.Count == 0)
        {
            return;
        }

        var (left, right) = (points.Min(p => p.X), points.Max(p => p.X));
        var (top, bottom) = (points.Min(p => p.Y), points.Max(p => p.Y));
        var (x, up, down) = (right - (lacks * (right - left)), top + (lacks * (bottom - top)), bottom - (lacks * (bottom - top)));

        // Each stands over its outer edge by a unit, for the width of the line there.
        var (knitted, open) = way switch
        {
            Way.Right => (new Box(left - 1, top - 1, x, bottom + 1), new Box(x - 1, top - 1, right + 1, bottom + 1)),
            Way.Up => (new Box(left - 1, up - 1, right + 1, bottom + 1), new Box(left - 1, top - 1, right + 1, up)),
            _ => (new Box(left - 1, top - 1, right + 1, down), new Box(left - 1, down - 1, right + 1, bottom + 1)),
        };
        var hex = palette.Hex(piece.Part);
        pen.Within($"knitted-{piece.Part}", knitted, () =>
        {
            pen.Shape("yarn", piece.Outlines, close: true, new(hex, hex is null ? 0.07 : 1), strand ? new("#000", 0.6, 0.3) : null);
            if (!strand)
            {
                pen.Shape(null, piece.Outlines, close: true, Pictures.Fill.Of(Knit), null);
            }
        });
        pen.Within($"open-{piece.Part}", open, () => Gap(piece.Outlines, Hatch, strand));
        if (!strand)
        {
            var (from, to) = way == Way.Right ? (new Point(x, top), new Point(x, bottom)) : (new Point(left, way == Way.Up ? up : down), new Point(right, way == Way.Up ? up : down));
            pen.Shape("gap", [[from, to]], close: false, null, new(null, 1.2, 1, new(5, 3), RoundCorners: true));
        }
    }

    public void Lines(string? part, IEnumerable<Line> lines)
    {
        var open = part is not null && palette.IsOpen(part);
        foreach (var kind in lines.Where(l => l.Points.Count > 1 && !(open && (l.Kind is LineKind.Stitch or LineKind.Ridge))).GroupBy(l => l.Kind))
        {
            Draw(part, kind.Key, [.. kind.Select(l => l.Points)]);
        }
    }

    public void Yarn(string part, IReadOnlyList<IReadOnlyList<Point>> lines, double width, Dash? dash = null)
    {
        if (palette.IsOpen(part))
        {
            pen.Shape("gap", lines, close: false, null, new(null, 1, 0.7, new(2, 4), RoundCorners: true));
            return;
        }

        pen.Shape("ink", lines, close: false, null, new(null, width + 1.3, 0.55, dash, RoundCorners: true));
        pen.Shape("thread", lines, close: false, null, new(palette.Hex(part), width, 1, dash, RoundCorners: true));
    }

    private void Draw(string? part, LineKind kind, IReadOnlyList<IReadOnlyList<Point>> lines)
    {
        void Ruled(string? name, Stroke stroke, Point shift = default) => pen.Shape(name, lines, close: false, null, stroke, shift);
        switch (kind)
        {
            case LineKind.Thread:
                Yarn(part ?? "", lines, 1.6, new(6, 4));
                break;
            case LineKind.Edge:
                Ruled("ink", new(null, 4.4, 0.6, RoundCorners: true));
                if (part is not null && palette.Hex(part) is { } colour)
                {
                    Ruled(null, new(colour, 3.2, 1, new(5, 0.8)));
                }

                break;
            case LineKind.Fold:
                Ruled(null, new("#fff", 2.6, 0.6));
                Ruled("fold", new("#000", 1.2, 0.75, new(7, 4)));
                break;
            case LineKind.Valley:
                var bare = part is null || palette.IsOpen(part);
                pen.Shape(bare ? "gap" : null, lines, close: false, new(bare ? null : "#000", bare ? 0.1 : 0.24), null);
                break;
            case LineKind.Ridge:
                Ruled(null, new("#fff", 2, 0.17, RoundEnds: true));
                break;
            case LineKind.Stitch:
                var deep = part is not null && palette.IsDark(part);
                Ruled("stitches", new(deep ? "#fff" : "#000", 1.2, deep ? 0.15 : 0.19, RoundEnds: true, RoundCorners: true));
                break;
            case LineKind.Gore:
                Ruled(null, new("#000", 1.1, 0.35));
                Ruled(null, new("#fff", 0.9, 0.25), new(1.2, 0));
                break;
            case LineKind.Pleat:
                Ruled(null, new("#000", 1.8, 0.22, RoundEnds: true));
                break;
            case LineKind.Shadow:
                Ruled(null, new("#000", 6, 0.3, RoundEnds: true));
                break;
            default:
                Ruled("ink", new(null, 0.7, 0.4, new(1.5, 2.5), RoundCorners: true));
                break;
        }
    }

    private void Gap(IReadOnlyList<IReadOnlyList<Point>> outlines, string hatch, bool fine) =>
        pen.Shape("gap", outlines, close: true, Pictures.Fill.Of(hatch), new(null, fine ? 0.5 : 1.2, 1, fine ? new(2, 1.5) : new(5, 3)));
}
