namespace StashMatch.Knitting.Odds;

/// <summary>The standard normal distribution.</summary>
public static class Normal
{
    private static readonly double[] Up =
        [3.52624965998911e-02, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871, 221.213596169931, 220.206867912376];

    private static readonly double[] Down =
    [
        8.83883476483184e-02, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674, 637.333633378831, 793.826512519948,
        440.413735824752,
    ];

    /// <summary>Density at <paramref name="z"/>.</summary>
    public static double Density(double z) => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);

    /// <summary>Chance of a value below <paramref name="z"/>, to about 1e-14.</summary>
    /// <remarks>Hart's rational approximation as given by West 2005, "Better approximations to cumulative normal functions", Wilmott [memory].</remarks>
    public static double Below(double z)
    {
        // From here on 1 less the tail is 1.
        if (z > 8.3)
        {
            return 1;
        }

        var x = Math.Abs(z);
        if (x > 37)
        {
            return 0;
        }

        double tail;
        var e = Math.Exp(-x * x / 2);
        if (x < 7.07106781186547)
        {
            tail = e * Horner(Up, x) / Horner(Down, x);
        }
        else
        {
            tail = e / (x + (1 / (x + (2 / (x + (3 / (x + (4 / (x + 0.65))))))))) / 2.506628274631;
        }

        return z > 0 ? 1 - tail : tail;
    }

    private static double Horner(double[] coefficients, double x)
    {
        var sum = 0.0;
        foreach (var c in coefficients)
        {
            sum = (sum * x) + c;
        }

        return sum;
    }
}
