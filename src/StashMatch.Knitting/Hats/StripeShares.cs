namespace StashMatch.Knitting.Hats;

/// <summary>Shares rows out among stripes: equal, in proportions, or with depths of their own; in single rounds, or flat in pairs so that colours change on the right side.</summary>
internal static class StripeShares
{
    /// <summary>The fewest rows a stripe may have.</summary>
    public const int LeastRows = 2;

    /// <summary>Rows of each stripe, or null where some stripe would have less than two.</summary>
    /// <param name="rows">Rows of all stripes together, braids out.</param>
    /// <param name="odd">For flat work, which stripes follow a braid's three rows and so have an odd number; null in the round.</param>
    /// <param name="depths">Proportions, or null for equal stripes.</param>
    /// <param name="stripes">How many.</param>
    public static int[]? Share(int rows, bool[]? odd, StripeDepths? depths, int stripes)
    {
        var step = odd is null ? 1 : 2;
        var offset = odd?.Count(o => o) ?? 0;
        if (rows - offset < 0)
        {
            return null;
        }

        // A row over, which only the last stripe of a flat hat can have: nothing follows it.
        var over = (rows - offset) % step;
        var shares = ShareOut((rows - offset) / step, depths?.Values, stripes);
        for (var i = 0; i < stripes; i++)
        {
            shares[i] = (shares[i] * step) + (odd?[i] == true ? 1 : 0);
        }

        shares[^1] += over;
        return Array.TrueForAll(shares, s => s >= LeastRows) ? shares : null;
    }

    /// <summary>Rows of stripes with depths of their own, each the nearest allowed; a crown's last stripe may have any number, since nothing follows it.</summary>
    public static int[] Own(StripeDepths depths, decimal rowsPerCm, bool[]? odd, bool lastIsFree = false) =>
        [.. depths.Values.Select((d, i) => odd is null || (lastIsFree && i == odd.Length - 1)
            ? Math.Max(LeastRows, Counts.Nearest(d * rowsPerCm))
            : odd[i] ? Math.Max(3, Counts.Nearest((d * rowsPerCm) - 1, 2) + 1) : Math.Max(LeastRows, Counts.Nearest(d * rowsPerCm, 2)))];

    // By the largest remainder, the first stripe first where they tie.
    private static int[] ShareOut(int units, IReadOnlyList<decimal>? weights, int stripes)
    {
        var sum = weights?.Sum() ?? stripes;
        var ideal = Enumerable.Range(0, stripes).Select(i => units * (weights?[i] ?? 1) / sum).ToArray();
        var shares = ideal.Select(s => (int)Math.Floor(s)).ToArray();
        foreach (var i in Enumerable.Range(0, stripes).OrderByDescending(i => ideal[i] - Math.Floor(ideal[i])).ThenBy(i => i).Take(units - shares.Sum()))
        {
            shares[i]++;
        }

        return shares;
    }
}
