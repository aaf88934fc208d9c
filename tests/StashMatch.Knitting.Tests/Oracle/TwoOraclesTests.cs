using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The two proofs against each other, the matcher aside: a rule read wrong in one of them shows here first.</summary>
public sealed class TwoOraclesTests
{
    [Fact]
    public void Looking_at_everything_and_the_solver_say_the_same()
    {
        var (words, wrong) = (new int[4], new List<string>());
        for (var seed = 0; seed < (Long.Form ? 600 : 60); seed++)
        {
            // The solver is not asked what was there before.
            var question = SmallInstances.Of(seed) with { Like = [] };
            question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out _);
            var sheet = Sheet.Of(question, hat!);
            var (all, solved) = (Everything.Of(sheet), Solved.Of(sheet));
            words[(int)all.Word!]++;
            if (all with { Changed = null, SeamDiffers = null, MostUp = null } != solved || Everything.WhyOf(question, hat!) != Solved.WhyOf(question, hat!))
            {
                wrong.Add($"{seed}: {all}\n  {solved}\n  {Everything.WhyOf(question, hat!)} {Solved.WhyOf(question, hat!)}");
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.All(words, w => Assert.True(w > 0, $"few of one word: {string.Join(' ', words)}"));
    }
}
