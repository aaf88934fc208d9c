using System.Collections.Concurrent;
using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Every tier of the matcher's answers against a solver that knows nothing of the matcher.</summary>
public sealed class OracleTests
{
    private const int PerFamily = 90;

    /// <summary>The families, each with the share of answers that say they are proven best, measured less a little.</summary>
    public static TheoryData<string, double> Families => new()
    {
        { nameof(Family.FewDepths), 0.95 },
        { nameof(Family.AllDifferentDepths), 0.97 },
        { nameof(Family.Tight), 0.97 },
        { nameof(Family.CloneKit), 0.97 },
        { nameof(Family.MixedFibres), 0.97 },
        { nameof(Family.LocksAndNevers), 0.95 },
        { nameof(Family.ShortBag), 0.97 },
        { nameof(Family.PrintedLetters), 0.97 },
    };

    [Theory]
    [MemberData(nameof(Families))]
    public void What_is_said_to_be_proven_best_is_best_in_every_tier(string family, double provenAtLeast)
    {
        var cancel = TestContext.Current.CancellationToken;
        var wrong = new ConcurrentBag<(int Seed, string Complaint)>();
        var (open, proven, complete) = (0, 0, 0);
        Parallel.For(0, PerFamily, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = 2 }, seed =>
        {
            try
            {
                var comparison = Comparison.Of(Instances.Of(Enum.Parse<Family>(family), seed), cancel);
                comparison.Complaints.ToList().ForEach(c => wrong.Add((seed, c)));
                Interlocked.Add(ref open, comparison.Open ? 1 : 0);
                Interlocked.Add(ref proven, comparison.Proven ? 1 : 0);
                Interlocked.Add(ref complete, comparison.Complete ? 1 : 0);
            }
            catch (InvalidOperationException e)
            {
                wrong.Add((seed, e.Message));
            }
        });
        TestContext.Current.TestOutputHelper!.WriteLine($"{family}: {proven} proven, {complete} covered, {open} left open by the solver, of {PerFamily}");
        Assert.True(wrong.IsEmpty, Message(family, wrong, cancel));
        Assert.True(open <= 3, $"{open} of {PerFamily} left open by the solver");
        Assert.True(proven >= provenAtLeast * PerFamily, $"{proven} of {PerFamily} proven");
    }

    // All that is wrong, and the first of it as a question to paste into a test.
    private static string Message(string family, ConcurrentBag<(int Seed, string Complaint)> wrong, CancellationToken cancel)
    {
        if (wrong.IsEmpty)
        {
            return "";
        }

        bool Fails(Question question)
        {
            try
            {
                return Comparison.Of(question, cancel).Complaints.Count > 0;
            }
            catch (InvalidOperationException)
            {
                return true;
            }
        }

        var first = wrong.Min(w => w.Seed);
        return $"{string.Join('\n', wrong.Order().Select(w => $"{family} {w.Seed}: {w.Complaint}"))}\n{Written.AsCode(Written.Smallest(Instances.Of(Enum.Parse<Family>(family), first), Fails))}";
    }
}
