using System.Collections.Concurrent;
using StashMatch.Knitting.Matching;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Many questions held against the rule at once, and what came of it.</summary>
internal sealed class Proofs
{
    private readonly ConcurrentBag<(int Seed, string Complaint)> _wrong = [];
    private int _open, _words, _shorts, _nos, _best, _asked;

    /// <summary>How many were asked.</summary>
    public int Asked => _asked;

    /// <summary>How many the solver left open.</summary>
    public int Open => _open;

    /// <summary>How many said that their word and reach are proven.</summary>
    public int Words => _words;

    /// <summary>How many said that they are proven best in every tier.</summary>
    public int Best => _best;

    /// <summary>How many were short.</summary>
    public int Nos => _nos;

    /// <summary>How many of those said that their metres short are proven.</summary>
    public int Shorts => _shorts;

    public static string Percent(int some, int all) => all == 0 ? "none" : FormattableString.Invariant($"{100.0 * some / all:0.0} % of {all}");

    /// <summary>Asks so many questions and fails with the smallest form of the first that is answered wrongly.</summary>
    public static Proofs Of(int many, Func<int, Question> drawn, Func<Question, Comparison> compare)
    {
        var proofs = new Proofs();
        var cancel = TestContext.Current.CancellationToken;
        Parallel.For(0, many, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = 2 }, seed =>
        {
            try
            {
                proofs.Count(seed, compare(drawn(seed)));
            }
            catch (InvalidOperationException e)
            {
                proofs._wrong.Add((seed, e.Message));
            }
        });
        Assert.True(proofs._wrong.IsEmpty, proofs._wrong.IsEmpty ? "" : proofs.Message(drawn, compare));
        return proofs;
    }

    private void Count(int seed, Comparison comparison)
    {
        comparison.Complaints.ToList().ForEach(c => _wrong.Add((seed, c)));
        var no = comparison.Answer.Verdict == Verdict.No;
        Interlocked.Increment(ref _asked);
        Interlocked.Add(ref _open, comparison.Open ? 1 : 0);
        Interlocked.Add(ref _words, comparison.WordProven ? 1 : 0);
        Interlocked.Add(ref _best, comparison.Answer.ProvenBest ? 1 : 0);
        Interlocked.Add(ref _nos, no ? 1 : 0);
        Interlocked.Add(ref _shorts, no && comparison.ShortProven ? 1 : 0);
    }

    private string Message(Func<int, Question> drawn, Func<Question, Comparison> compare)
    {
        bool Fails(Question question)
        {
            try
            {
                return compare(question).Complaints.Count > 0;
            }
            catch (InvalidOperationException)
            {
                return true;
            }
        }

        var smallest = Written.Smallest(drawn(_wrong.Min(w => w.Seed)), Fails);
        var told = Fails(smallest) ? string.Join("; ", compare(smallest).Complaints) : "";
        return $"{string.Join('\n', _wrong.Order().Select(w => $"{w.Seed}: {w.Complaint}"))}\n{Written.AsCode(smallest)}{told}";
    }
}
