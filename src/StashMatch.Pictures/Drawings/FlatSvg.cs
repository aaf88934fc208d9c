using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Writes a hat off the needles.</summary>
internal static class FlatSvg
{
    public static string Write(FlatHat hat, Palette palette, string id, string title)
    {
        var svg = new SvgWriter();
        var write = new PartWriter(svg, palette, id);
        write.Begin(0, 0, hat.Width, hat.Height, title);
        svg.Open("defs");
        write.Patterns(hat.TileWidth, hat.TileHeight, hat.Sideways);
        svg.Close();
        var joins = Joins(hat.Yarn, palette);
        foreach (var piece in hat.Pieces)
        {
            var part = piece.Part;
            var strand = PartNames.Read(part)?.Kind == PartKind.Strand;
            write.OpenPart(part);
            if (palette.Lacks(part) is > 0 and var lacks)
            {
                write.AsFarAsItGoes(piece, strand, lacks, hat.Sideways ? (part == PartNames.Brim ? Way.Down : strand ? Way.Up : Way.Right) : strand ? Way.Right : Way.Up);
            }
            else
            {
                write.Fill(piece, knit: !strand, strand);
            }

            write.Lines(part, piece.Lines);
            foreach (var run in hat.Yarn.Where(y => y.Part == part))
            {
                write.Yarn(part, SvgWriter.Path([run.Points], close: false), run.Strand ? 1.7 : 2.4);
            }

            foreach (var tag in hat.Tags.Where(t => t.Part == part))
            {
                WriteTag(svg, hat, tag);
            }

            foreach (var slip in hat.Slips.Where(s => s.Part == part))
            {
                WriteSlip(svg, palette.Code(part), slip);
            }

            svg.Close();
        }

        foreach (var run in joins)
        {
            Knot(svg, run.Points[0], palette.Hex(run.Part));
        }

        svg.Open("g", ("aria-hidden", "true"));
        write.Lines(null, hat.Over);
        svg.Close();
        foreach (var note in hat.Notes)
        {
            Text(svg, note.Upright ? "note upright" : "note", note.Text, note.X, note.Y, 14, bold: false, note.Upright ? $"rotate(-90 {SvgWriter.Number(note.X)} {SvgWriter.Number(note.Y)})" : null, "0.75");
        }

        return svg.Close().ToString();
    }

    /// <summary>The runs at whose start a leftover joins that was not in work just before.</summary>
    internal static IReadOnlyList<YarnRun> Joins(IReadOnlyList<YarnRun> yarn, Palette palette)
    {
        var (live, joins) = (new HashSet<string>(StringComparer.Ordinal), new List<YarnRun>());
        foreach (var run in yarn.Where(y => y.Joins))
        {
            var leftover = palette.Leftover(run.Part);
            if (leftover is not null && !live.Contains(leftover))
            {
                joins.Add(run);
            }

            if (!run.Strand)
            {
                live.Clear();
            }

            if (leftover is not null)
            {
                live.Add(leftover);
            }
        }

        return joins;
    }

    private static void WriteTag(SvgWriter svg, FlatHat hat, Tag tag)
    {
        var numbers = hat.Numbers;
        var number = $"{numbers.GetValueOrDefault(tag.Part)}";
        var (words, size) = tag switch
        {
            { Partner: { } partner } when numbers.TryGetValue(partner, out var other) => ($"{number}·{other}", Math.Min(14, tag.Height)),
            { Part: PartNames.Brim, Width: > 60 } => ($"{number} {PartNames.Brim}", 18),
            _ => (number, Math.Min(20, tag.Height)),
        };
        Text(svg, hat.Sideways ? (tag.Partner is null ? "ink number" : "ink numbers") : "ink", words, tag.X, tag.Y + (size * 0.36), size, bold: tag.Partner is null);
    }

    // The slip is paper in light and dark, and reads the same on every yarn.
    private static void WriteSlip(SvgWriter svg, string code, Slip slip)
    {
        if (code.Length == 0)
        {
            return;
        }

        var (half, high) = ((slip.Size * 0.33 * code.EnumerateRunes().Count()) + (slip.Size * 0.36), slip.Size * 0.74);
        var cut = high * 0.4;
        Point[] paper =
        [
            new(slip.X - half + cut, slip.Y - high), new(slip.X + half - cut, slip.Y - high), new(slip.X + half, slip.Y - high + cut), new(slip.X + half, slip.Y + high - cut),
            new(slip.X + half - cut, slip.Y + high), new(slip.X - half + cut, slip.Y + high), new(slip.X - half, slip.Y + high - cut), new(slip.X - half, slip.Y - high + cut),
        ];
        svg.Leaf("path", ("class", "slip"), ("d", SvgWriter.Path([paper], close: true)), ("fill", "#fbfaf5"), ("stroke", "#23262b"), ("stroke-opacity", "0.6"), ("stroke-width", SvgWriter.Number(slip.Size * 0.05)));
        svg.Open(
            "text", ("x", SvgWriter.Number(slip.X)), ("y", SvgWriter.Number(slip.Y + (slip.Size * 0.35))), ("font-size", SvgWriter.Number(slip.Size)), ("font-weight", "700"),
            ("text-anchor", "middle"), ("fill", "#23262b")).Words(code).Close();
    }

    private static void Text(SvgWriter svg, string name, string words, double x, double y, double size, bool bold, string? turn = null, string? opacity = null) => svg.Open(
        "text",
        ("class", name),
        ("x", SvgWriter.Number(x)),
        ("y", SvgWriter.Number(y)),
        ("font-size", SvgWriter.Number(size)),
        ("font-weight", bold ? "700" : null),
        ("text-anchor", "middle"),
        ("fill", "currentColor"),
        ("fill-opacity", opacity),
        ("transform", turn)).Words(words).Close();

    private static void Knot(SvgWriter svg, Point at, string? hex)
    {
        var (x, y) = (SvgWriter.Number(at.X), SvgWriter.Number(at.Y));
        svg.Leaf("path", ("class", "ink"), ("d", $"M{x} {y}l-3 -4.6M{x} {y}l3 -4.6"), ("fill", "none"), ("stroke", "currentColor"), ("stroke-width", "1"), ("stroke-linecap", "round"));
        svg.Leaf("circle", ("class", "knot"), ("cx", x), ("cy", y), ("r", "2.6"), ("fill", hex ?? "currentColor"), ("stroke", "currentColor"), ("stroke-width", "1.1"));
    }
}
