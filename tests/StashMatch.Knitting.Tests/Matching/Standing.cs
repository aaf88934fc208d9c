using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>How an answer stands in tiers 1 to 3, read off the answer alone.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Bare">Millimetres left uncovered in each band, brim and crown first; less is better.</param>
/// <param name="Worth">How tidy what is covered leaves the leftovers at the rung reached (0 where something is uncovered), in millimetres.</param>
internal sealed record Standing(Answer Answer, IReadOnlyList<long> Bare, long Worth)
{
    public bool Proven => Answer.ProvenBest;

    public decimal Rung => Answer.SafeToPercent ?? -1;

    public static Standing Of(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        var sheet = Oracle.Sheet.Of(question, answer.Hat);
        var bare = new long[4];
        var ballOf = Oracle.Comparison.BallOf(sheet, answer);
        for (var i = 0; i < ballOf.Length; i++)
        {
            bare[sheet.Lots[i].Band] += ballOf[i] < 0 ? sheet.Lots[i].Need : 0;
        }

        return new Standing(answer, bare, sheet.Worth(answer.SafeToPercent ?? 0, ballOf));
    }

    /// <summary>Below 0 where this covers less than <paramref name="other"/>, band by band; above 0 where it covers more.</summary>
    public int CoversAgainst(Standing other) => other.Bare.Zip(Bare, (o, b) => o.CompareTo(b)).FirstOrDefault(c => c != 0);
}
