using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>How far the fabric of the body stands off its plain form: soft dents, the folds of the crown, braids, the seam. In cm.</summary>
internal sealed class WoolLift
{
    private const int LargeFolds = 15;
    private const int SmallFolds = 34;

    private readonly WoolHat hat;
    private readonly WoolForm form;
    private readonly double[] large;
    private readonly double[] small;
    private readonly double[] braids;

    public WoolLift(WoolHat hat, WoolForm form)
    {
        (this.hat, this.form) = (hat, form);
        large = hat.Sideways ? Folds(LargeFolds, 0.76) : Folds(Math.Max(4, hat.Gores), 0);
        small = Folds(SmallFolds, 0.76);
        braids = [.. hat.Areas.Select((a, i) => (a, i)).Where(p => p.a.Fabric == WoolFabric.Braid).Select(p => hat.FirstRows[p.i] + (p.a.Rows / 2.0))];
    }

    /// <summary>How far out at a place, and how deep in a fold.</summary>
    public (double Out, double Dip) Of(double angle, double sin, double cos, double s, double r)
    {
        var d = (0.17 * Over((cos * 1.3) + 9, (sin * 1.3) + (s * 0.16), 3)) + (0.06 * Over((cos * 4) + 3, (sin * 4) + (s * 0.5), 4));
        var dip = 0.0;

        // Two or three slack folds lie over the brim, where the wool has sunk down on it.
        var slack = Over((cos * 1.6) + 4, (sin * 1.6) + (s * 0.55), 7);
        d += 0.13 * slack * Hump(s, 2.8, 2.4) * Smooth(0, 0.8, s);
        return hat.Sideways ? Gathered(d, angle, s, r) : Decreased(d, dip, angle, s, r);
    }

    // A crown drawn up on a thread: folds of uneven width, each beginning at its own height, round on top and sharp between.
    private (double, double) Gathered(double d, double angle, double s, double r)
    {
        var (fall, dip) = (1 - (r / form.Radius), 0.0);
        if (fall > 0.02)
        {
            var (f, i) = Fold(large, angle);
            var deep = Smooth(0.12 + (0.25 * Hash(i, 1, 9)), 0.80, fall);
            var (g, j) = Fold(small, angle);
            var fine = Smooth(0.2 * Hash(j, 2, 9), 0.35, fall) * (1 - (0.75 * Smooth(0.55, 0.9, fall)));
            d += (f * deep * 0.66 * Math.Min(1, (r / 1.5) + 0.1)) + (g * fine * 0.20 * Math.Min(1, r / 2));
            dip = (deep * Math.Max(0, 0.1 - f) * 1.1) + (fine * Math.Max(0, -g) * 0.5);
        }

        var each = Grain.Round / hat.Rows;
        foreach (var braid in braids)
        {
            d += 0.07 * Hump(Turn(angle - ((braid * each) - Math.PI)) * form.Radius, 0, 0.36) * Smooth(0.5, 2, r);
        }

        return (d + (SeamDip(angle, r) * Smooth(0.5, 2, r)), dip);
    }

    // Decrease lines draw the crown in; braids stand proud of the rounds.
    private (double, double) Decreased(double d, double dip, double angle, double s, double r)
    {
        if (s > form.CrownFrom)
        {
            var f = Fold(large, angle).Height;
            var deep = Smooth(0.55, 0.95, 1 - (r / form.Radius));
            d += f * deep * 0.28 * Math.Min(1, (r / 0.8) + 0.1);
            dip += deep * Math.Max(0, -f) * 0.8;
        }

        var each = form.Body.End / hat.Rows;
        foreach (var braid in braids)
        {
            d += 0.07 * Hump(s, braid * each, 0.36);
        }

        return (hat.Flat ? d + SeamDip(angle, r) : d, dip);
    }

    // Two edges sewn together: a furrow between two soft ridges, at the back.
    private static double SeamDip(double angle, double r)
    {
        var off = (Math.PI - Math.Abs(angle)) * r;
        return (0.05 * Hump(off, 0.42, 0.30)) - (0.06 * Hump(off, 0, 0.18));
    }

    private static double[] Folds(int n, double uneven)
    {
        var edges = new double[n + 1];
        for (var i = 1; i <= n; i++)
        {
            edges[i] = edges[i - 1] + 0.62 + (uneven * Hash(i, n, 5));
        }

        return [.. edges.Select(e => e / edges[n] * Grain.Round)];
    }

    private static (double Height, int At) Fold(double[] folds, double angle)
    {
        angle -= Grain.Round * Math.Floor(angle / Grain.Round);
        var i = 0;
        while (i < folds.Length - 2 && folds[i + 1] <= angle)
        {
            i++;
        }

        var f = Clamp((angle - folds[i]) / (folds[i + 1] - folds[i]), 0, 1);
        return (Math.Pow(Math.Sin(Math.PI * f), 0.62) - 0.62, i);
    }
}
