using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Halfway;

/// <summary>A ball of a finished plan that was weighed before and after.</summary>
/// <param name="Start">As it was weighed before its first part.</param>
/// <param name="Left">What is left of it, no more than at the start; may be 0.</param>
/// <param name="Uses">What the plan took from it; all of it is knitted.</param>
public sealed record UsedBall(Leftover Start, Grams Left, IReadOnlyList<PlannedUse> Uses)
{
    /// <summary>What was used, grams.</summary>
    public Grams Used => Start.Weighing.Net - Left;

    /// <summary>What the finished plan says of its knitter: metres used less ends, against the bare metres; null where nothing can be told, or a number must be wrong (under 0.5 or over 2 × the bare metres).</summary>
    /// <param name="balls">Those weighed after the last part.</param>
    public static Calibration? Learn(IReadOnlyList<UsedBall> balls)
    {
        ArgumentNullException.ThrowIfNull(balls);
        var (bare, metres, squares) = (0.0, 0.0, 0.0);
        foreach (var ball in balls)
        {
            var perGram = (double)ball.Start.Ratio.MetresPerGram;
            var used = (double)ball.Used.Value * perGram;
            bare += ball.Uses.Sum(u => u.Bare);
            metres += used - ball.Uses.Sum(u => u.Ends);
            var label = used * LengthDoubt.Of(ball.Start).Label;

            // Read twice on the same scale.
            var scale = (double)ball.Start.Weighing.BandGrams / Math.Sqrt(3) * Math.Sqrt(2) * perGram;
            squares += (label * label) + (scale * scale);
        }

        return bare > 0 && metres / bare is >= 0.5 and <= 2 ? new Calibration(metres / bare, Math.Sqrt(squares) / metres) : null;
    }
}
