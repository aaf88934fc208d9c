using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.TesterResults;

/// <summary>Makes sentences of what testers' results say.</summary>
public static class TesterWords
{
    private const double GramsToTheOunce = 28.349523125;

    /// <summary>Kept, or why it is set aside.</summary>
    public static string Of(TesterReading reading, WrittenGauge written)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(written);
        var result = reading.Result;
        var gauge = result.Written ?? written;
        return reading.Why switch
        {
            SetAside.No => reading.IsCoarse ? "kept; weigh it on a finer scale" : "kept",
            SetAside.Gauge => $"set aside: gauge {Gauge(result.StitchesPer10Cm, result.RowsPer10Cm)}, written for {Gauge(gauge.StitchesPer10Cm, gauge.RowsPer10Cm)}",
            SetAside.Rounds => $"set aside: {Math.Abs(result.ExtraRounds)} {(Math.Abs(result.ExtraRounds) == 1 ? "round" : "rounds")} {(result.ExtraRounds > 0 ? "more" : "fewer")} than written",
            SetAside.Yarn => "set aside: another yarn",
            SetAside.Again => "set aside: a later sheet of the same tester and size counts",
            SetAside.Proportion => $"set aside: × {Times(reading.Ratio)} of the estimate cannot be right. {Slip(reading.Ratio)} Correct the sheet and read it again.",
            _ => "set aside: far from what the others used",
        };
    }

    /// <summary>Why a factor is not offered to be taken over.</summary>
    public static string WhyNotOffered(TestersUse use)
    {
        ArgumentNullException.ThrowIfNull(use);
        return use.Usage.Spread > TestersUse.MostSpread
            ? $"the testers differ too much, by more than {Percent(TestersUse.MostSpread)} % either way"
            : $"a factor below {Times(TestersUse.LeastFactor)} or above {Times(TestersUse.MostFactor)} is hardly a hat knitted as written";
    }

    // Grams out of all proportion have few causes; the likely one is asked about.
    private static string Slip(double ratio) =>
        ratio * GramsToTheOunce is >= Testers.LeastRatio and <= Testers.MostRatio ? "Are these ounces, not grams?"
        : ratio < 1 ? "Is the label another yarn’s, or was only part of it weighed?"
        : "Is the label another yarn’s, or was the core on the ball only before?";

    private static string Percent(double share) => (100 * share).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>A ratio to two decimals.</summary>
    public static string Times(double ratio) => ratio.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>What using the testers' factor would do to a hat.</summary>
    public static string Take(Hat hat, TestersUse use)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(use);
        var who = use.Testers.Count == 1 ? "One tester" : $"{use.Testers.Count} testers";
        var (of, before) = (hat is PrintedHat ? "the printed lengths" : "the yarn in the stitches alone", TestersUse.Before(hat));
        return $"{who} used × {Times(use.Mean)} {of}{(use.Testers.Count == 1 ? "" : " on average")}. "
            + $"Other knitters use × {Times(before.Factor)}. Together that makes × {Times(use.Usage.Factor)}, give or take {(100 * use.Usage.Spread).ToString("0", CultureInfo.InvariantCulture)} %. "
            + "Use it, and every page counts on it for this hat. Sizes nobody knitted stay estimates.";
    }

    /// <summary>Where a factor taken over comes from, in at most 200 characters.</summary>
    public static string From(Hat hat, TestersUse use)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(use);
        static string Short(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";
        var count = $"{use.Testers.Count} {(use.Testers.Count == 1 ? "tester" : "testers")}";
        return $"{count} of {Short(hat.Name, 60)}, for this hat alone ({Short(string.Join(", ", use.Testers), 90)})";
    }

    /// <summary>A figure to print, whole units, the own unit first.</summary>
    public static string Figure(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return Shown.OwnFirst($"{figure.WholeMetres} m", $"{figure.WholeYards} yd");
    }

    public static string Source(FigureSource source) => source switch
    {
        FigureSource.Tester => "testers",
        FigureSource.Knitted => "knitted",
        _ => "estimated",
    };

    /// <summary>What went in, in both units.</summary>
    public static string Used(TesterReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return $"{Shown.Grams(reading.Grams.Value, reading.Result.ScaleStep)}, {Shown.Both(reading.Used)}";
    }

    private static string Gauge(decimal? stitches, decimal? rows) =>
        (stitches, rows) switch
        {
            ({ } s, { } r) => $"{Number(s)} × {Number(r)}",
            ({ } s, null) => $"{Number(s)} stitches",
            (null, { } r) => $"{Number(r)} rows",
            _ => "not given",
        };

    private static string Number(decimal number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
