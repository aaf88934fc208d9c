namespace StashMatch.Pictures;

/// <summary>A portrait of a hat for a friend to look at: the hat on a plain ground, its yarns named below.</summary>
public static class WoolPortrait
{
    /// <summary>How wide a portrait is, in pixels.</summary>
    public const int Width = 1200;

    /// <summary>The most yarns that are named; the rest are counted.</summary>
    public const int MostYarns = 30;

    private const string Ground = "#f3f1ea";
    private const string Pencil = "#55585c";
    private const int Margin = 84;
    private const double PixelsPerMm = 2.6;

    /// <summary>The portrait as a PNG.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="words">What is said below it.</param>
    /// <param name="shape">Its shape.</param>
    /// <param name="yaw">How far the hat is turned.</param>
    /// <param name="threads">On how many threads it is painted.</param>
    public static byte[] Png(WoolHat hat, PortraitWords words, PortraitShape shape = PortraitShape.Tall, double yaw = WoolView.Turned, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(words);
        return Draw(hat, words, shape, yaw, threads).Png();
    }

    internal static Canvas Draw(WoolHat hat, PortraitWords words, PortraitShape shape, double yaw, int threads)
    {
        var yarns = words.Yarns.Take(MostYarns).ToList();
        var columns = yarns.Count switch { <= 3 => 1, <= 12 => 2, _ => 3 };
        var lines = (yarns.Count + columns - 1) / columns;
        var size = columns == 3 ? 21.0 : 27.0;
        var (hatWidth, hatHeight) = shape == PortraitShape.Square ? (Width - 320, 1200 - 280 - (int)(lines * size * 1.75)) : (Width - (2 * Margin), 0);
        var sheet = WoolPicture.Paint(hat, new WoolView(hatWidth, yaw, Height: shape == PortraitShape.Square ? Math.Max(420, hatHeight) : null), threads);
        var top = shape == PortraitShape.Square ? 44 : 64;
        var title = top + sheet.Height + 76;
        var line = size * 1.75;
        var height = shape == PortraitShape.Square ? Width : (int)(title + 26 + (lines * line) + 96);
        var canvas = new Canvas(Width, height, Ink.Of(Ground));
        canvas.Lay(sheet, (Width - sheet.Width) / 2, top);
        var pen = new PixelPen(canvas, default, 1, Palette.Graphite);
        Say(pen, Letters.Cut(words.Title, 40, Width - (2 * Margin), bold: true), Margin, title, 40, Palette.Graphite, bold: true);
        var (room, gap) = ((Width - (2.0 * Margin) - ((columns - 1) * 48)) / columns, 48.0);
        for (var i = 0; i < yarns.Count; i++)
        {
            Yarn(canvas, pen, yarns[i], Margin + ((i / lines) * (room + gap)), title + 26 + (((i % lines) + 0.72) * line), room, size);
        }

        var over = words.Yarns.Count - yarns.Count;
        var foot = (over > 0 ? $"And {over} more yarns. " : "") + words.Foot;
        Say(pen, Letters.Cut(foot, 20, Width - (2 * Margin)), Margin, height - 40, 20, Pencil);
        return canvas;
    }

    private static void Yarn(Canvas canvas, PixelPen pen, PortraitYarn yarn, double left, double at, double room, double size)
    {
        var swatch = new WoolSwatch(yarn.Look);
        var box = new Box(left, at - (size * 0.98), left + (size * 1.9), at + (size * 0.26));
        canvas.Fill([Rounded(box, size * 0.22)], (x, y) => swatch.At((x - box.Left) / PixelsPerMm, (y - box.Bottom) / PixelsPerMm));
        var code = box.Right + (size * 0.6);
        Say(pen, yarn.Code, code, at, size, Palette.Graphite, bold: true);
        var name = code + (size * 1.9);
        var amount = Letters.Width(yarn.Amount, size * 0.86);
        Say(pen, Letters.Cut(yarn.Name, size, left + room - amount - (size * 0.8) - name), name, at, size, Palette.Graphite);
        Say(pen, yarn.Amount, left + room - amount, at, size * 0.86, Pencil);
    }

    private static List<Point> Rounded(Box box, double r)
    {
        var points = new List<Point>();
        foreach (var (x, y, from) in new[] { (box.Right - r, box.Top + r, -0.5), (box.Right - r, box.Bottom - r, 0.0), (box.Left + r, box.Bottom - r, 0.5),
            (box.Left + r, box.Top + r, 1.0) })
        {
            for (var i = 0; i <= 6; i++)
            {
                var a = Math.PI * (from + (i / 12.0));
                points.Add(new(x + (r * Math.Cos(a)), y + (r * Math.Sin(a))));
            }
        }

        return points;
    }

    private static void Say(PixelPen pen, string text, double left, double at, double size, string hex, bool bold = false) =>
        pen.Text(null, text, new(left + (Letters.Width(text, size, bold) / 2), at), size, new(hex), bold);
}
