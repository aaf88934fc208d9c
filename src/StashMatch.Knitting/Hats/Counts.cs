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

    /// <summary>Shares <paramref name="units"/> out among <paramref name="shares"/>; what is left over goes one each to the first.</summary>
    public static int[] ShareOut(int units, int shares)
    {
        var result = new int[shares];
        for (var i = 0; i < shares; i++)
        {
            result[i] = (units / shares) + (i < units % shares ? 1 : 0);
        }

        return result;
    }
}
