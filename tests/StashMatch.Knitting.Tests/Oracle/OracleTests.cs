using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Every tier of the matcher's answers against a solver that knows nothing of the matcher.</summary>
public sealed class OracleTests
{
    private static readonly int PerFamily = Long.Form ? 90 : 20;

    static OracleTests() => (CompactModel.Limit, CompactModel.Patient) = Long.Form ? (2, true) : (0.5, false);

    /// <summary>The families, each with the least share of words that say they are proven.</summary>
    public static TheoryData<string, double> Families => new()
    {
        { nameof(Family.FewDepths), 1 },
        { nameof(Family.AllDifferentDepths), 0.95 },
        { nameof(Family.Tight), 1 },
        { nameof(Family.CloneKit), 1 },
        { nameof(Family.MixedFibres), 0.95 },
        { nameof(Family.LocksAndNevers), 0.95 },
        { nameof(Family.ShortBag), 0.95 },
        { nameof(Family.PrintedLetters), 1 },
    };

    [Theory]
    [MemberData(nameof(Families))]
    public void What_is_said_to_be_proven_best_is_best_in_every_tier(string family, double wordsProven)
    {
        var cancel = TestContext.Current.CancellationToken;
        var kind = Enum.Parse<Family>(family);
        var proofs = Proofs.Of(PerFamily, seed => Instances.Of(kind, seed), q => Comparison.Of(q, (sheet, known) => Solved.Of(sheet, known is null ? []
            : new[] { known.ToArray() }), Solved.WhyOf, cancel));
        ProofFigures.Tell($"{family}: word and reach proven, all equal to the solver's",
            $"{Proofs.Percent(proofs.Words, proofs.Asked)}, {proofs.Open} left open by the solver", wordsProven >= 1 ? "100 %" : "99.5 % of all");
        ProofFigures.Tell($"{family}: every tier proven, all equal to the solver's", Proofs.Percent(proofs.Best, proofs.Asked), "told");
        ProofFigures.Tell($"{family}: metres short proven, all equal to the solver's", Proofs.Percent(proofs.Shorts, proofs.Nos),
            "95 % colour-tight, 100 % else");
        Assert.True(proofs.Open <= Math.Max(1, PerFamily / 30), $"{proofs.Open} of {PerFamily} left open by the solver");
        Assert.True(proofs.Words >= wordsProven * proofs.Asked, $"{proofs.Words} of {proofs.Asked} words proven");
        Assert.True(proofs.Best >= 0.9 * proofs.Asked, $"{proofs.Best} of {proofs.Asked} proven in every tier");
        Assert.True(proofs.Shorts >= (0.95 * proofs.Nos) - 1, $"{proofs.Shorts} of {proofs.Nos} metres short proven");
    }
}
