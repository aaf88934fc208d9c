using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Odds;

/// <summary>A chance that no sharing-out can fall below, as long as it asks no leftover for more than it is let.</summary>
/// <remarks>
/// Given the factor the leftovers are independent, so minus the logarithm of the chance is a sum over them. For each it is bounded by a
/// slope, the steepest that any lesser load could have, and by what its fullest load costs; the dearest leftovers are filled first until all
/// that is needed is placed. The parts of a load count as one part where that is worse, its tails as yarn. [ours]
/// </remarks>
internal sealed class LeastChance
{
    private const int Looks = 10;
    private const double Surely = 1e-300;
    private readonly (double Weight, double Flat, Dear[] Dearest)[] _points;

    /// <summary>Makes ready for leftovers each asked for at most so much.</summary>
    /// <param name="usage">The hat's usage.</param>
    /// <param name="leftovers">Each with the most it is asked for, millimetres.</param>
    public LeastChance(Usage usage, IEnumerable<(Leftover Leftover, long Most)> leftovers)
    {
        var kinds = leftovers.Where(l => l.Most > 0)
            .GroupBy(l => (l.Most, l.Leftover.Weighing.Net, l.Leftover.Weighing.BandGrams, l.Leftover.Ratio.MetresPerGram, Chance.RatioSpread(l.Leftover)))
            .Select(g => (g.First().Leftover, Most: g.Key.Most / 1000.0, Count: g.Count())).ToList();
        _points = [.. Chance.PointsOf(usage).Select(p =>
        {
            var costs = kinds.ConvertAll(k => CostOf(k.Leftover, k.Most, k.Count, p.Factor / usage.Factor));
            return (p.Weight, costs.Sum(c => c.Flat), costs.Select(c => c.Dear).Where(d => d.Slope > 0).OrderByDescending(d => d.Slope).ToArray());
        })];
    }

    // So much lost for each metre asked, up to so many metres.
    private readonly record struct Dear(double Slope, double Metres);

    /// <summary>The chance that holds for any way to place so much, millimetres.</summary>
    public double Of(long whole)
    {
        var sum = 0.0;
        foreach (var (weight, flat, dearest) in _points)
        {
            var (left, lost) = (whole / 1000.0, flat);
            foreach (var dear in dearest)
            {
                var metres = Math.Min(left, dear.Metres);
                lost += metres * dear.Slope;
                left -= metres;
                if (left <= 0)
                {
                    break;
                }
            }

            sum += weight * Math.Exp(-lost);
        }

        return sum;
    }

    // Up to half its most a load costs no more than that half; from there on the slope between two looks is taken from the dearer to the nearer.
    private static (double Flat, Dear Dear) CostOf(Leftover leftover, double most, int count, double times)
    {
        var half = Lost(leftover, most / 2, times);
        var (slope, at, full) = (0.0, most / 2, 0.0);
        for (var look = 1; look <= Looks; look++)
        {
            var next = most * (Looks + look) / (2 * Looks);
            full = Lost(leftover, next, times);
            slope = Math.Max(slope, full / at);
            at = next;
        }

        return (count * half, new Dear(slope, slope > 0 ? count * full / slope : 0));
    }

    private static double Lost(Leftover leftover, double load, double times)
    {
        var chance = 0.0;
        var asked = load * Math.Max(1, times);
        var parts = load * times * Chance.PartSpread;
        foreach (var (at, weight) in Chance.Gauss)
        {
            var holds = Math.Max(0, (double)leftover.Weighing.Net.Value + ((double)leftover.Weighing.BandGrams * at)) * (double)leftover.Ratio.MetresPerGram;
            var label = holds * Chance.RatioSpread(leftover);
            var over = holds - asked;
            var spread = over > 0 ? Math.Sqrt((label * label) + (parts * parts)) : label;
            chance += weight * (spread == 0 ? (over >= 0 ? 1 : 0) : Normal.Below(over / spread));
        }

        return -Math.Log(Math.Max(chance, Surely));
    }
}
