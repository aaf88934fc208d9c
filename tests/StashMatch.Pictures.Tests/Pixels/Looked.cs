using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures.Tests;

/// <summary>A drawing as it is seen: pixels sorted into red, green and blue, and patches of one colour found among them.</summary>
internal sealed class Looked
{
    public const int Scale = 2;
    private static readonly string[] Hues = ["#d02020", "#20b020", "#3030d0"];

    private readonly char[,] seen;

    private Looked(Canvas canvas)
    {
        seen = new char[canvas.Width, canvas.Height];
        for (var y = 0; y < canvas.Height; y++)
        {
            for (var x = 0; x < canvas.Width; x++)
            {
                var (r, g, b) = canvas[x, y];
                var (most, least) = (Math.Max(r, Math.Max(g, b)), Math.Min(r, Math.Min(g, b)));

                // Half paper or more is paper, and ink is none of the colours; shade leaves a colour what it is.
                seen[x, y] = most - least < Math.Max(10, 0.4 * most) ? '.' : r > g && r > b ? 'r' : g > b ? 'g' : 'b';
            }
        }
    }

    public int Width => seen.GetLength(0);

    public int Height => seen.GetLength(1);

    public char this[int x, int y] => seen[x, y];

    /// <summary>The hat off the needles, each part in the colour told; what is told none is open.</summary>
    public static Looked Flat(RowPlan plan, Func<HatPart, char?> hue) => Flat(plan, Paint(plan, hue));

    public static Looked Flat(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint)
    {
        var hat = Pictures.Flat.Lay(plan);
        return Of(hat.Width, hat.Height, pen => FlatDrawing.Draw(hat, new Palette(paint), pen, "t"));
    }

    /// <summary>The hat on the head.</summary>
    public static Looked Worn(RowPlan plan, Func<HatPart, char?> hue)
    {
        var (hat, palette) = (WornHat.Of(plan), new Palette(Paint(plan, hue)));
        var view = WornDrawing.View(hat, palette);
        return Of(view.Width, view.Height, pen => WornDrawing.Draw(hat, palette, pen, "t"));
    }

    public static Dictionary<string, PartPaint> Paint(RowPlan plan, Func<HatPart, char?> hue) => plan.Parts
        .Where(p => hue(p) is not null).ToDictionary(p => p.Name, p => new PartPaint(Hues["rgb".IndexOf(hue(p)!.Value, StringComparison.Ordinal)], null, p.Name, false), StringComparer.Ordinal);

    /// <summary>Patches of one colour that hang together, of at least so many pixels.</summary>
    public List<Patch> Patches(int least)
    {
        var (patches, been) = (new List<Patch>(), new bool[Width, Height]);
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                if (!been[x, y] && seen[x, y] != '.' && Follow(x, y, been) is var patch && patch.Pixels >= least)
                {
                    patches.Add(patch);
                }
            }
        }

        return patches;
    }

    private static Looked Of(double width, double height, Action<IPen> draw)
    {
        var canvas = new Canvas((int)Math.Ceiling(width * Scale), (int)Math.Ceiling(height * Scale), Ink.Of("#ffffff"));
        draw(new PixelPen(canvas, default, Scale, "#000000"));
        return new(canvas);
    }

    private Patch Follow(int x, int y, bool[,] been)
    {
        var (hue, next, n, sumX, sumY) = (seen[x, y], new Stack<(int X, int Y)>([(x, y)]), 0, 0.0, 0.0);
        var (left, right, top, bottom) = (x, x, y, y);
        been[x, y] = true;
        while (next.TryPop(out var at))
        {
            (n, sumX, sumY) = (n + 1, sumX + at.X, sumY + at.Y);
            (left, right, top, bottom) = (Math.Min(left, at.X), Math.Max(right, at.X), Math.Min(top, at.Y), Math.Max(bottom, at.Y));
            Try(at.X + 1, at.Y);
            Try(at.X - 1, at.Y);
            Try(at.X, at.Y + 1);
            Try(at.X, at.Y - 1);
        }

        void Try(int i, int j)
        {
            if (i >= 0 && j >= 0 && i < Width && j < Height && !been[i, j] && seen[i, j] == hue)
            {
                been[i, j] = true;
                next.Push((i, j));
            }
        }

        return new(hue, n, sumX / n, sumY / n, right - left + 1, bottom - top + 1);
    }
}

/// <summary>A patch of one colour.</summary>
internal sealed record Patch(char Hue, int Pixels, double X, double Y, int Width, int Height)
{
    /// <summary>Whether it is too thin for a stripe: the yarn running beside it.</summary>
    public bool IsYarn => Math.Min(Width, Height) < 15 || Pixels < 0.4 * Width * Height;
}
