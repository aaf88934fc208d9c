using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>A part still ahead on a ball.</summary>
/// <param name="Part">The part's name.</param>
/// <param name="Planned">What was planned for it.</param>
/// <param name="Forecast">What it takes at the rate forecast.</param>
/// <param name="StopAt">What must be left on the ball, yarn alone, before it is begun: this part's and all later ones' forecast, up to the milligram.</param>
public sealed record PartAhead(string Part, Metres Planned, Metres Forecast, Grams StopAt);

/// <summary>How one ball stands half-way.</summary>
/// <param name="Ball">The ball.</param>
/// <param name="Rate">What is used for each metre planned: this ball's own where it was weighed, else what the other balls taught; 1 is as planned.</param>
/// <param name="Measured">Whether the rate is this ball's own.</param>
/// <param name="Used">Metres used up to the last reading, by its label, rounded down.</param>
/// <param name="PlannedSoFar">What was planned for the parts finished by then.</param>
/// <param name="Left">What is left now: the last reading less the forecast of parts finished since.</param>
/// <param name="Parts">What is ahead, in knitting order.</param>
public sealed record BallAhead(BallInWork Ball, double Rate, bool Measured, Metres Used, Metres PlannedSoFar, Metres Left, IReadOnlyList<PartAhead> Parts)
{
    /// <summary>What is ahead in all.</summary>
    public Metres Need => Metres.FromMillimetres(Parts.Sum(p => p.Forecast.Millimetres));

    /// <summary>What must be left on the ball as it lies, yarn alone, before a part is begun, once what is put by for a later part has been wound off; null for the part it is put by for.</summary>
    /// <param name="part">A part ahead.</param>
    /// <param name="putBy">The part something is put by for; null where nothing is.</param>
    public Grams? StopAt(string part, string? putBy)
    {
        if (part == putBy)
        {
            return null;
        }

        var ahead = Parts.SkipWhile(p => p.Part != part).Where(p => p.Part != putBy).Sum(p => p.Forecast.Millimetres);
        return Grams.FromMilligrams((long)Math.Ceiling(Ball.Start.Ratio.GramsOf(Metres.FromMillimetres(ahead)) * 1000));
    }

    /// <summary>What is to spare at the end; below 0 what is short. Metres.</summary>
    public decimal Spare => Left.Value - Need.Value;

    /// <summary>The same on the scale, grams.</summary>
    public decimal SpareGrams => Spare / Ball.Start.Ratio.MetresPerGram;

    /// <summary>By how much it is short.</summary>
    public Metres Short => Spare < 0 ? Need - Left : default;

    /// <summary>The chance that this ball by itself lasts to the end, 0 to 1; 1 with nothing ahead.</summary>
    public double Sureness { get; init; } = 1;

    /// <summary>Nine times in ten at least so much is to spare at the end; below 0 it is short. Metres.</summary>
    public required decimal LeastSpare { get; init; }

    /// <summary>Nine times in ten at most so much is to spare at the end. Metres.</summary>
    public required decimal MostSpare { get; init; }
}
