using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Draws a hat off the needles.</summary>
internal static class FlatDrawing
{
    // Smaller letters cannot be read on a phone; the page leaves them out there.
    private const double Legible = 13;

    public static void Draw(FlatHat hat, Palette palette, IPen pen, string title)
    {
        var write = new PartWriter(pen, palette);
        pen.Begin(new(0, 0, hat.Width, hat.Height), title);
        pen.Have(PartWriter.Tiles(hat.TileWidth, hat.TileHeight, hat.Sideways), []);
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

            if (!strand && !palette.IsOpen(part))
            {
                // So that pale yarn stands out from paper and dark yarn from the night.
                pen.Shape("ink", piece.Outlines, close: true, null, new(null, 0.9, 0.45));
            }

            write.Lines(part, piece.Lines);
            foreach (var run in hat.Yarn.Where(y => y.Part == part))
            {
                write.Yarn(part, [run.Points], run.Strand ? 1.7 : 2.4);
            }

            foreach (var tag in hat.Tags.Where(t => t.Part == part))
            {
                DrawTag(pen, hat, tag);
            }

            foreach (var slip in hat.Slips.Where(s => s.Part == part))
            {
                DrawSlip(pen, palette.Code(part), slip);
            }

            pen.Close();
        }

        foreach (var run in joins)
        {
            Knot(pen, run.Points[0], palette.Hex(run.Part));
        }

        pen.OpenAside(untouched: false);
        write.Lines(null, hat.Over);
        pen.Close();
        foreach (var note in hat.Notes)
        {
            pen.Text(note.Upright ? "note upright" : "note", note.Text, new(note.X, note.Y), 14, new(null, 0.75), upright: note.Upright);
        }

        pen.Close();
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

    private static void DrawTag(IPen pen, FlatHat hat, Tag tag)
    {
        var numbers = hat.Numbers;
        var number = $"{numbers.GetValueOrDefault(tag.Part)}";
        var (words, size) = tag switch
        {
            { Partner: { } partner } when numbers.TryGetValue(partner, out var other) => ($"{number}·{other}", Math.Min(14, tag.Height)),
            { Part: PartNames.Brim, Width: > 60 } => ($"{number} {PartNames.Brim}", 18),
            _ => (number, Math.Min(20, tag.Height)),
        };
        pen.Text(hat.Sideways ? (tag.Partner is null ? "ink number" : "ink numbers") : "ink", words, new(tag.X, tag.Y + (size * 0.36)), size, new(null), bold: tag.Partner is null);
    }

    // The slip is paper in light and dark, and reads the same on every yarn.
    private static void DrawSlip(IPen pen, string code, Slip slip)
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
        var fine = slip.Size < Legible;
        pen.Shape(fine ? "slip fine" : "slip", [paper], close: true, new(Palette.Paper), new(Palette.Graphite, slip.Size * 0.05, 0.6));
        pen.Text(fine ? "fine" : null, code, new(slip.X, slip.Y + (slip.Size * 0.35)), slip.Size, new(Palette.Graphite), bold: true);
    }

    private static void Knot(IPen pen, Point at, string? hex)
    {
        pen.Shape("ink", [[at, new(at.X - 3, at.Y - 4.6)], [at, new(at.X + 3, at.Y - 4.6)]], close: false, null, new(null, 1, RoundEnds: true));
        pen.Ellipse("knot", at, 2.6, 2.6, new(hex), new(null, 1.1));
    }
}
