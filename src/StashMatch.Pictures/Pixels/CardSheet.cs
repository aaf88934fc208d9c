namespace StashMatch.Pictures;

/// <summary>The words of a card and where everything stands on it.</summary>
internal sealed class CardSheet
{
    private const string Pencil = "#55585c";
    private const string Faint = "#dcd7c9";
    private const string Madder = "#93372c";
    private const int Margin = 56;
    private const int TopOfHat = 236;
    private const int MostHatHeight = 560;
    private const int ColumnFrom = 20;
    private const double LeftWidth = 704;
    private const double RightWidth = 354;

    private readonly CardWords words;
    private readonly IReadOnlyList<CardRow> rows;
    private readonly int columns;
    private readonly int rowHeight;
    private readonly double letters;
    private readonly double hatHeight;

    /// <summary>A sheet for drawings of these proportions, width to height; the hat on the head is the last.</summary>
    public CardSheet(CardWords words, params IReadOnlyList<(double Width, double Height)> drawings)
    {
        this.words = words;
        hatHeight = drawings.Select((d, i) => (i == drawings.Count - 1 ? RightWidth : LeftWidth) * d.Height / d.Width).Append(200).Max();
        hatHeight = Math.Ceiling(Math.Min(hatHeight, MostHatHeight));
        rows = words.Rows.Count <= HatCard.MostRows ? words.Rows : [.. words.Rows.Take(HatCard.MostRows)];
        columns = rows.Count > ColumnFrom ? 2 : 1;
        (rowHeight, letters) = columns == 1 ? (36, 22) : (29, 17.5);
    }

    public int Height => (int)TopOfTable + 44 + (rowHeight * Long) + 74;

    /// <summary>Room for the hat off the needles.</summary>
    public Box Left => new(Margin, TopOfHat, Margin + LeftWidth, TopOfHat + hatHeight);

    /// <summary>Room for the hat on the head.</summary>
    public Box Right => new(HatCard.Width - Margin - RightWidth, TopOfHat, HatCard.Width - Margin, TopOfHat + hatHeight);

    /// <summary>Room for a hat that is only seen on the head.</summary>
    public Box Whole => Right with { Left = Margin };

    private double TopOfTable => TopOfHat + hatHeight + 36;

    private int Long => (rows.Count + columns - 1) / columns;

    public void Write(Canvas canvas, Palette palette)
    {
        var pen = new PixelPen(canvas, default, 1, Palette.Graphite);
        pen.Begin(new(0, 0, HatCard.Width, Height), words.Title);
        pen.Shape(null, [[new(14, 14), new(HatCard.Width - 14, 14), new(HatCard.Width - 14, Height - 14), new(14, Height - 14)]], close: true, null, new(Palette.Graphite, 2));
        Say(pen, words.Verdict, Margin, 128, 84, Palette.Graphite, bold: true);
        var wide = Math.Max(150, Letters.Width(words.Verdict, 84, bold: true));
        Thread(pen, Margin, 158, wide);
        var (left, at) = (Margin + wide + 48, 44.0);
        foreach (var line in Broken(words.Title, 28, HatCard.Width - Margin - left, bold: true).Take(2))
        {
            at += 36;
            Say(pen, line, left, at, 28, Palette.Graphite, bold: true);
        }

        foreach (var line in words.Lines.SelectMany(l => Broken(l, 22, HatCard.Width - Margin - left)).Take(3))
        {
            at += 33;
            Say(pen, line, left, at, 22, Pencil);
        }

        var width = ((HatCard.Width - (2.0 * Margin)) - ((columns - 1) * 36)) / columns;
        for (var i = 0; i < columns; i++)
        {
            Table(pen, palette, Margin + (i * (width + 36)), width, [.. rows.Skip(i * Long).Take(Long)]);
        }

        var over = words.Rows.Count - rows.Count;
        Say(pen, (over > 0 ? $"And {over} parts more. " : "") + "Needs are rounded up. StashMatch", Margin, Height - 38, 17, Pencil);
    }

    private static void Say(PixelPen pen, string text, double left, double at, double size, string hex, bool bold = false) =>
        pen.Text(null, text, new(left + (Letters.Width(text, size, bold) / 2), at), size, new(hex), bold);

    private static void SayTo(PixelPen pen, string text, double right, double at, double size, string hex) => Say(pen, text, right - Letters.Width(text, size), at, size, hex);

    // Unbroken, thin, or broken with a gap.
    private void Thread(PixelPen pen, double left, double at, double width)
    {
        IReadOnlyList<Point> Run(double from, double to) => Flat.Along(from, to, x => new(left + (width * x / 100), at + (3.5 * Math.Sin(x / 9))));
        pen.Shape(null, words.Thread == 0 ? [Run(1, 33), Run(67, 99)] : [Run(1, 99)], close: false, null, new(Madder, words.Thread switch { 2 => 6, 1 => 2, _ => 4.5 }, RoundEnds: true));
    }

    private void Table(PixelPen pen, Palette palette, double left, double width, IReadOnlyList<CardRow> some)
    {
        // The last four columns are as wide as their letters need; the leftover's name has the rest.
        var (unit, right, top) = (letters * 4.2, left + width, TopOfTable + 22.0);
        var (part, swatch, name) = (left + (letters * 1.9), left + (letters * 10.2), left + (letters * 13.3));
        void Head(string text, double x, bool toRight)
        {
            if (toRight)
            {
                SayTo(pen, text, x, top, letters * 0.82, Pencil);
            }
            else
            {
                Say(pen, text, x, top, letters * 0.82, Pencil);
            }
        }

        Head("part", part, false);
        Head("yarn", swatch, false);
        Head("rows", right - (2 * unit), true);
        Head("needs", right, true);
        foreach (var (row, i) in some.Select((r, i) => (r, i)))
        {
            var at = TopOfTable + 38 + (rowHeight * (i + 0.7));
            pen.Shape(null, [[new(left, at - (rowHeight * 0.7)), new(right, at - (rowHeight * 0.7))]], close: false, null, new(Faint, 1.2));
            SayTo(pen, $"{row.Number}", left + (letters * 1.3), at, letters, Pencil);
            Say(pen, Letters.Cut(row.Part, letters, swatch - part - 6), part, at, letters, Palette.Graphite);
            var dot = new Point(swatch + (letters * 0.45), at - (letters * 0.34));
            if (!palette.IsOpen(row.Part))
            {
                pen.Ellipse(null, dot, letters * 0.42, letters * 0.42, new(palette.Hex(row.Part) ?? Palette.Paper), new(Palette.Graphite, 1, 0.6));
                Say(pen, palette.Code(row.Part), swatch + (letters * 1.25), at, letters, Palette.Graphite, bold: true);
            }

            Say(pen, Letters.Cut(row.Name, letters, right - (2 * unit) - (letters * 1.6) - name), name, at, letters, Palette.Graphite);
            SayTo(pen, row.Rows, right - (2 * unit), at, letters, Palette.Graphite);
            SayTo(pen, row.First, right - unit, at, letters, Palette.Graphite);
            SayTo(pen, row.Second, right, at, letters, Pencil);
        }
    }

    private static IEnumerable<string> Broken(string text, double size, double room, bool bold = false)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && Letters.Width($"{line} {word}", size, bold) > room)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? Letters.Cut(word, size, room, bold) : $"{line} {word}";
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
