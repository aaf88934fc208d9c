using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Designing;

/// <summary>What testers together say of a hat's usage: how the next knitter's use will run against the bare metres.</summary>
/// <param name="Usage">The hat's usage with what they weighed taken in.</param>
/// <param name="Mean">The mean of their factors alone, as a multiple of the bare metres.</param>
/// <param name="Testers">Who they are, each once, in the order their sheets came.</param>
/// <remarks>
/// Each tester counts once, as the logarithm of what went in without tails against the bare metres. What is known of knitters at large, the
/// hat's usage before, counts as one tester for the mean and as four for how much knitters differ [ours]; from there it is the posterior
/// prediction of a normal with unknown mean and spread [memory]. So the spread is that of a knitter nobody has weighed, not of the mean.
/// </remarks>
public sealed record TestersUse(Usage Usage, double Mean, IReadOnlyList<string> Testers)
{
    /// <summary>A factor below this is not offered to be taken over [ours].</summary>
    public const double LeastFactor = 0.7;

    /// <summary>A factor above this is not offered to be taken over [ours].</summary>
    public const double MostFactor = 1.5;

    /// <summary>A factor less sure than this share either way is not offered to be taken over [ours].</summary>
    public const double MostSpread = 0.20;

    private const double LikeTesters = 1;
    private const double LikeSpreads = 4;

    /// <summary>Whether it is sure enough, and near enough to what hats take, to be taken over.</summary>
    public bool MayBeOffered => Usage.Factor is >= LeastFactor and <= MostFactor && Mean is >= LeastFactor and <= MostFactor && Usage.Spread <= MostSpread;

    /// <summary>A hat's usage as it is before anyone was weighed: the printed table's, the one it names itself, or that of knitters at large.</summary>
    public static Usage Before(Hat hat) => hat switch
    {
        PrintedHat printed => printed.AsPrinted,
        HatDesign { Usage.Calibrated: false } design => design.Usage,
        _ => Usage.Uncalibrated,
    };

    /// <summary>Whether a hat takes such a usage over: one that names its own factor does not.</summary>
    public static bool MayTakeOver(Hat hat) => hat is PrintedHat || Before(hat) == Usage.Uncalibrated;

    /// <summary>What those who were kept say; null where nobody was, or what they weighed is less than its tails.</summary>
    /// <param name="before">The hat's usage without them.</param>
    /// <param name="judged">What came back, judged.</param>
    public static TestersUse? Of(Usage before, TesterJudgement judged)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(judged);
        var each = judged.Readings.Where(r => r.Why == SetAside.No && r.Piece.BareMetres > 0)
            .GroupBy(r => r.Result.Tester, StringComparer.Ordinal)
            .Select(g => (Who: g.Key, Used: g.Sum(r => (double)r.Used.Value - r.Piece.EndsMetres), Bare: g.Sum(r => r.Piece.BareMetres)))
            .Where(t => t.Used > 0 && t.Bare > 0)
            .Select(t => (t.Who, Log: Math.Log(t.Used / t.Bare))).ToList();
        if (each.Count == 0)
        {
            return null;
        }

        var (n, mean, known) = (each.Count, each.Average(t => t.Log), Math.Log(before.Factor));
        var apart = each.Sum(t => (t.Log - mean) * (t.Log - mean));
        var away = LikeTesters * n / (LikeTesters + n) * (mean - known) * (mean - known);
        var alone = before.Spread * before.Spread / (1 + (1 / LikeTesters));
        var spread = ((LikeSpreads * alone) + apart + away) / (LikeSpreads + n) * (1 + (1 / (LikeTesters + n)));
        return new TestersUse(
            new Usage(Math.Exp(((LikeTesters * known) + (n * mean)) / (LikeTesters + n)), Math.Sqrt(spread), Calibrated: true),
            Math.Exp(mean),
            [.. each.Select(t => t.Who)]);
    }
}
