using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The two ways of writing the question down for the solver against each other, and the second one on larger bags.</summary>
public sealed class TwoModelsTests
{
    [Theory]
    [InlineData(nameof(Family.FewDepths))]
    [InlineData(nameof(Family.Tight))]
    [InlineData(nameof(Family.MixedFibres))]
    public void Both_models_find_the_same_tidiness(string family)
    {
        var both = 0;
        for (var seed = 100; seed < 124; seed++)
        {
            var question = Instances.Of(Enum.Parse<Family>(family), seed);
            question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out _);
            var sheet = Sheet.Of(question, hat!);
            var one = new CompactModel(sheet, sheet.Held, 3, coverAll: true).Tidiest();
            var other = PatternModel.Solve(sheet, sheet.Held, 3);
            if (one.Proof != Proof.Open && other.Proof != Proof.Open)
            {
                Assert.Equal((one.Proof, one.Value), (other.Proof, other.Value));
                both += one.Proof == Proof.Best ? 1 : 0;
            }
        }

        Assert.True(both >= 6, $"{both} settled by both");
    }

    /// <summary>Leftovers and stripes; the larger bags in the long form.</summary>
    public static TheoryData<int, int> Large => Long.Form ? new() { { 60, 6 }, { 120, 8 }, { 300, 6 } } : new() { { 60, 6 } };

    [Theory]
    [MemberData(nameof(Large))]
    public void The_tidiest_of_a_large_bag_is_what_the_pattern_model_proves(int leftovers, int stripes)
    {
        var settled = 0;
        for (var seed = 0; seed < (Long.Form ? 9 : 4); seed++)
        {
            var question = Instances.Large(leftovers, stripes, (Arrangement)(seed % 5), seed, near: seed % 3 == 0);
            Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
            var sheet = Sheet.Of(question, answer.Hat);
            if (answer.Verdict == Verdict.No)
            {
                continue;
            }

            var ballOf = Comparison.BallOf(sheet, answer.Parts);
            var rungs = new Rungs(sheet);
            var (word, rung, keeps) = rungs.Judge(sheet.LoadsOf(ballOf));
            var bears = keeps ? rungs.Kept(word, rung) : rungs.Bears(word, rung);
            var (width, ours) = (sheet.WidthOf(ballOf), sheet.Worth(bears, ballOf));

            // Without the colour rule the solver is quick and its best at least as good; only where ours is below that is the rule needed.
            var best = PatternModel.Solve(sheet, bears, width, colours: false);
            best = best.Proof == Proof.Best && ours < best.Value ? PatternModel.Solve(sheet, bears, width) : best;
            if (best.Proof == Proof.Best)
            {
                settled++;
                Assert.True(ours <= best.Value);
                Assert.True(!answer.ProvenBest || ours == best.Value, $"{seed}: {ours} for {best.Value}");
            }
        }

        Assert.True(settled >= (Long.Form ? 5 : 1), $"{settled} settled");
    }

    [Theory]
    [InlineData(nameof(Family.FewDepths))]
    [InlineData(nameof(Family.AllDifferentDepths))]
    [InlineData(nameof(Family.Tight))]
    [InlineData(nameof(Family.LocksAndNevers))]
    public void The_bound_is_never_below_the_tidiest(string family)
    {
        var seen = 0;
        for (var seed = 200; seed < 230; seed++)
        {
            var question = Instances.Of(Enum.Parse<Family>(family), seed);
            question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out _);
            var sheet = Sheet.Of(question, hat!);
            var best = CompactModel.Tidiest(sheet, sheet.Held, 3);
            if (best.Proof == Proof.Best && Inside.TidyBound(question, hat!, best.Value - 15_000) is { } bound)
            {
                seen++;
                Assert.True(bound >= best.Value - 1e-6, $"{seed}: {bound} for {best.Value}");
            }
        }

        Assert.True(seen >= 10, $"{seen} seen");
    }
}
