namespace StashMatch.Knitting.Hats;

/// <summary>Whole stitches and rows from measures: every count is the nearest allowed one, half up.</summary>
internal static class Counts
{
    /// <summary>The multiple of <paramref name="step"/> nearest to <paramref name="wanted"/>, half up.</summary>
    public static int Nearest(decimal wanted, int step = 1) => (int)Math.Floor((wanted / step) + 0.5m) * step;

    /// <summary>The smallest number both divide.</summary>
    public static int LeastCommonMultiple(int a, int b)
    {
        var (x, y) = (a, b);
        while (y != 0)
        {
            (x, y) = (y, x % y);
        }

        return a / x * b;
    }
}
