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
            write.Fill(piece, knit: !strand && part != PartNames.Brim, strand);
            write.Lines(part, piece.Lines);
            foreach (var run in hat.Yarn.Where(y => y.Part == part))
            {
                write.Yarn(part, SvgWriter.Path([run.Points], close: false), run.Strand ? 1.3 : 1.8);
            }

            foreach (var tag in hat.Tags.Where(t => t.Part == part))
            {
                WriteTag(svg, palette, tag);
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
            Text(svg, "note", note.Text, note.X, note.Y, 10.5, bold: false, note.Upright ? $"rotate(-90 {SvgWriter.Number(note.X)} {SvgWriter.Number(note.Y)})" : null, "0.75");
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

    private static void WriteTag(SvgWriter svg, Palette palette, Tag tag)
    {
        var code = palette.Code(tag.Part);
        if (tag.Partner is { } partner)
        {
            var other = palette.Code(partner);
            if (code.Length + other.Length > 0)
            {
                Text(svg, "note", $"{(code.Length > 0 ? code : "–")}·{(other.Length > 0 ? other : "–")}", tag.X, tag.Y + 3.8, 10.5, bold: false, null, "0.8");
            }

            return;
        }

        var number = PartNames.Read(tag.Part) is { Number: > 0 and var n } ? $"{n}" : tag.Part;
        if (tag.Height > 20)
        {
            Text(svg, "ink", number, tag.X, tag.Y - 2, 14, bold: true);
            if (code.Length > 0)
            {
                Text(svg, "ink", code, tag.X, tag.Y + 12, 12, bold: false);
            }

            return;
        }

        svg.Open("text", ("class", "ink"), ("x", SvgWriter.Number(tag.X)), ("y", SvgWriter.Number(tag.Y + 4.5)), ("font-size", "12.5"), ("text-anchor", "middle"), ("fill", "currentColor"));
        svg.Open("tspan", ("font-weight", "700")).Words(number).Close();
        if (code.Length > 0)
        {
            svg.Words(" " + code);
        }

        svg.Close();
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
