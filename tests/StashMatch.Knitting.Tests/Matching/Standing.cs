using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>How a question stands: what is said of it, as against the plan that is shown.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="WordProven">Whether the word and how far it reaches are said to be proven.</param>
/// <param name="Proven">Whether the metres short, the brim and the sureness of the plan are said to be proven too.</param>
internal sealed record Standing(Answer Answer, bool WordProven, bool Proven)
{

    public long Short => Answer.Short.Millimetres;

    public (Word Word, double Reach) Sure => (Comparison.WordOf(Answer), Answer.Reach);

    public static Standing Of(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out var why, TestContext.Current.CancellationToken), why?.Reason);
        var (word, plan) = Inside.ProvenOf(question);
        return new Standing(answer, word, plan);
    }

    /// <summary>What is worse here than in <paramref name="other"/>, or null: the word and how far it reaches, or the metres short; each where both
    /// are proven.</summary>
    public string? WorseThan(Standing other) => WordProven && other.WordProven && Sure.CompareTo(other.Sure) < 0 ? $"{other.Sure} became {Sure}"
        : Proven && other.Proven && Short > other.Short ? $"short by {other.Short} mm became {Short}"
        : null;

    public override string ToString() => $"{Sure}, short by {Short} mm, {Answer.Why}{(Proven ? "" : ", not proven")}";
}
