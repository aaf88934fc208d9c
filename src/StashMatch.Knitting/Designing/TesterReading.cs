using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>Why a tester is set aside.</summary>
public enum SetAside
{
    /// <summary>Kept.</summary>
    No,

    /// <summary>The gauge is off by over 5 %.</summary>
    Gauge,

    /// <summary>More or fewer rounds than written.</summary>
    Rounds,

    /// <summary>Another yarn.</summary>
    Yarn,

    /// <summary>A later sheet of the same tester and size counts instead.</summary>
    Again,

    /// <summary>So far from what was reckoned that a slip is likely: ounces, another label, a core left on.</summary>
    Proportion,

    /// <summary>Knitted as written, but far from what the others used.</summary>
    FarFromOthers,
}

/// <summary>One piece as one tester weighed it.</summary>
/// <param name="Result">The tester's sheet.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Grams">What went in.</param>
/// <param name="Used">The same as length, up to the millimetre.</param>
/// <param name="Ratio">Used against what was reckoned without allowance.</param>
/// <param name="Why">Why it is set aside, or that it is kept.</param>
/// <param name="Score">Its modified z-score, where five or more were compared; else null.</param>
public sealed record TesterReading(TesterResult Result, Piece Piece, Grams Grams, Metres Used, double Ratio, SetAside Why, double? Score)
{
    /// <summary>Whether half a scale step is over 5 % of what went in: weigh it on a finer scale.</summary>
    public bool IsCoarse => Result.ScaleStep.Value / 2 > Grams.Value * 0.05m;
}

/// <summary>How testers' use of one pool of pieces compares with what was reckoned.</summary>
/// <param name="Pool">A printed letter or a kind of part.</param>
/// <param name="Testers">How many testers, those set aside left out.</param>
/// <param name="Mean">The mean of their ratios.</param>
/// <param name="Low">The interval's low end, which holds the mean nine times in ten; null with one tester.</param>
/// <param name="High">Its high end.</param>
public sealed record TesterFactor(string Pool, int Testers, double Mean, double? Low, double? High);

/// <summary>What all testers together say.</summary>
/// <param name="Readings">Every piece weighed, kept or set aside.</param>
/// <param name="Factors">Each pool's factor, in the order first weighed.</param>
/// <param name="Weighed">The largest kept of each size and piece, for the table.</param>
public sealed record TesterJudgement(IReadOnlyList<TesterReading> Readings, IReadOnlyList<TesterFactor> Factors, WeighedUse Weighed);
