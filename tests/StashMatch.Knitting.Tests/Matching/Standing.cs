using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>How a question stands: what is said of it, as against the plan that is shown.</summary>
/// <param name="Answer">The answer.</param>
internal sealed record Standing(Answer Answer)
{
    public bool Proven => Answer.ProvenBest;

    public long Short => Answer.Short.Millimetres;

    public (Word Word, double Reach) Sure => (Comparison.WordOf(Answer), Answer.Reach);

    public static Standing Of(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out var why, TestContext.Current.CancellationToken), why?.Reason);
        return new Standing(answer);
    }

    /// <summary>What is worse here than in <paramref name="other"/>, or null: the word and how far it reaches, or the metres short.</summary>
    public string? WorseThan(Standing other) => Sure.CompareTo(other.Sure) < 0 ? $"{other.Sure} became {Sure}"
        : Short > other.Short ? $"short by {other.Short} mm became {Short}"
        : null;

    public override string ToString() => $"{Sure}, short by {Short} mm, {Answer.Why}{(Proven ? "" : ", not proven")}";
}
