using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>The gauge a hat is written for; either count null where the pattern does not say.</summary>
/// <param name="StitchesPer10Cm">Stitches to 10 cm.</param>
/// <param name="RowsPer10Cm">Rows or rounds to 10 cm.</param>
public sealed record WrittenGauge(decimal? StitchesPer10Cm, decimal? RowsPer10Cm)
{
    /// <summary>The gauge of a hat described by measurements; none for a printed one.</summary>
    public static WrittenGauge Of(Hat hat) =>
        hat is HatDesign design ? new(design.Gauge.StitchesPer10Cm, design.Gauge.RowsPer10Cm) : new(null, null);
}

/// <summary>
/// Judges what testers sent back: who did not knit it as written is set aside first, then what is out of all proportion, then who is far from the
/// others; the rest makes the figures.
/// </summary>
public static class Testers
{
    /// <summary>A gauge further off than this is another hat [ours].</summary>
    public const decimal MostGaugeOffPercent = 5;

    /// <summary>Used against reckoned below this is asked about before it counts [ours].</summary>
    public const double LeastRatio = 0.6;

    /// <summary>Used against reckoned above this is asked about before it counts [ours].</summary>
    public const double MostRatio = 1.6;

    /// <summary>Judges results. Those of a size or count the hat does not have, and pieces it does not have, are left out.</summary>
    /// <param name="hat">The hat they knitted.</param>
    /// <param name="results">What came back, in the order it came: of two sheets of the same tester and size the later counts.</param>
    public static TesterJudgement Judge(Hat hat, IReadOnlyList<TesterResult> results)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(results);
        var last = results.Select((r, i) => (Key: KeyOf(r), i)).GroupBy(r => r.Key).ToDictionary(g => g.Key, g => g.Max(r => r.i));
        var readings = results.SelectMany((r, i) => Read(hat, r, isLast: last[KeyOf(r)] == i)).ToList();
        foreach (var pool in readings.Where(r => r.Why == SetAside.No).GroupBy(r => r.Piece.Pool, StringComparer.Ordinal).ToList())
        {
            Compare([.. pool], readings);
        }

        var kept = readings.Where(r => r.Why == SetAside.No).ToList();
        return new TesterJudgement(
            readings,
            [.. kept.GroupBy(r => r.Piece.Pool, StringComparer.Ordinal).Select(g => Factor(g.Key, [.. PerTester(g).Select(t => t.Ratio)]))],
            new WeighedUse([.. kept.GroupBy(r => (r.Result.Size, r.Piece.Name, Math.Round(r.Piece.BareMetres, 3))).Select(g => Largest([.. g]))]));
    }

    private static (string, string) KeyOf(TesterResult result) => (result.Tester.Trim().ToUpperInvariant(), result.Size);

    private static IEnumerable<TesterReading> Read(Hat hat, TesterResult result, bool isLast)
    {
        if (!hat.TryNeeds(result.Size, result.Stripes, out var needs, out _))
        {
            yield break;
        }

        var pieces = Piece.Of(needs);
        var why = isLast ? WhyNot(result.Written ?? WrittenGauge.Of(hat), result) : SetAside.Again;
        foreach (var part in result.Parts)
        {
            if (pieces.FirstOrDefault(p => p.Name == part.Piece) is { } piece)
            {
                var used = Metres.Needed((double)result.Label.MetresIn(part.Used.Value));
                var ratio = (double)used.Value / piece.NeedMetres(needs.Usage);
                var whyPart = why == SetAside.No && (ratio is < LeastRatio or > MostRatio) ? SetAside.Proportion : why;
                yield return new TesterReading(result, piece, part.Used, used, ratio, whyPart, null);
            }
        }
    }

    private static SetAside WhyNot(WrittenGauge written, TesterResult result) =>
        IsOff(written.StitchesPer10Cm, result.StitchesPer10Cm) || IsOff(written.RowsPer10Cm, result.RowsPer10Cm) ? SetAside.Gauge
            : result.ExtraRounds != 0 ? SetAside.Rounds
            : result.OtherYarn ? SetAside.Yarn
            : SetAside.No;

    private static bool IsOff(decimal? written, decimal? knitted) =>
        written is > 0 and var w && knitted is { } k && Math.Abs(k - w) * 100 > w * MostGaugeOffPercent;

    // From five testers on, one whose use is far from the others' is set aside in that pool.
    private static void Compare(IReadOnlyList<TesterReading> pool, List<TesterReading> readings)
    {
        var testers = PerTester(pool).ToList();
        if (testers.Count < ModifiedZ.LeastValues)
        {
            return;
        }

        var floor = ModifiedZ.Median([.. testers.Select(t => t.Band)]);
        var scores = ModifiedZ.Of([.. testers.Select(t => t.Ratio)], floor);
        for (var i = 0; i < testers.Count; i++)
        {
            var (who, score) = (testers[i].Result, scores[i]);
            for (var k = 0; k < readings.Count; k++)
            {
                if (ReferenceEquals(readings[k].Result, who) && readings[k].Piece.Pool == pool[0].Piece.Pool)
                {
                    readings[k] = readings[k] with { Score = score, Why = Math.Abs(score) > ModifiedZ.Limit ? SetAside.FarFromOthers : SetAside.No };
                }
            }
        }
    }

    // One ratio for each sheet: all of the pool it weighed against all of that reckoned; how far half a scale step may put it off.
    private static IEnumerable<(TesterResult Result, double Ratio, double Band)> PerTester(IEnumerable<TesterReading> pool) =>
        pool.GroupBy(r => r.Result, ReferenceEqualityComparer.Instance).Select(g =>
        {
            var (used, reckoned) = (g.Sum(r => (double)r.Used.Value), g.Sum(r => (double)r.Used.Value / r.Ratio));
            var result = (TesterResult)g.Key!;
            var band = (double)result.Label.MetresIn(result.ScaleStep.Value / 2) * Math.Sqrt(g.Count());
            return (result, used / reckoned, band / reckoned);
        });

    private static TesterFactor Factor(string pool, IReadOnlyList<double> ratios)
    {
        var mean = ratios.Average();
        if (ratios.Count < 2)
        {
            return new TesterFactor(pool, ratios.Count, mean, null, null);
        }

        var sd = Math.Sqrt(ratios.Sum(r => (r - mean) * (r - mean)) / (ratios.Count - 1));
        var half = StudentT.Nine(ratios.Count - 1) * sd / Math.Sqrt(ratios.Count);
        return new TesterFactor(pool, ratios.Count, mean, mean - half, mean + half);
    }

    private static LargestUse Largest(IReadOnlyList<TesterReading> readings)
    {
        var largest = readings.MaxBy(r => r.Used)!;
        var source = readings.Any(r => !r.Result.ByDesigner) ? FigureSource.Tester : FigureSource.Knitted;
        return new LargestUse(largest.Result.Size, largest.Piece, largest.Used, source, largest.Result.Tester);
    }
}
