using System.Diagnostics;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;

namespace StashMatch.Benchmarks;

/// <summary>One question answered by the matcher and by the solver's models, each timed from the question on.</summary>
/// <param name="Ours">The matcher's milliseconds, the best of a few runs.</param>
/// <param name="Theirs">Milliseconds of the fastest model that proved its answer, model building included; the time spent where none did.</param>
/// <param name="TheyProved">Whether any model did.</param>
/// <param name="WeProved">Whether the matcher says its answer is proven best.</param>
/// <param name="Agree">Whether the two agree as far as both proved.</param>
internal sealed record Race(double Ours, double Theirs, bool TheyProved, bool WeProved, bool Agree)
{
    /// <summary>How many times as long the solver took: at least so many where it did not come to an end.</summary>
    public double Ratio => Theirs / Math.Max(Ours, 1e-4);

    /// <summary>Whether everything can be covered by the label.</summary>
    public static Race ToCover(Question question)
    {
        var hat = NeedsOf(question);
        var held = Sheet.Of(question, hat).Held;
        var (ours, covered) = Timed(() => Inside.CanCover(Fresh(question), hat));
        var (plain, one) = Once(() => Checked(question, hat, held, s => new CompactModel(s, held, 3, coverAll: true, colours: false).Any()));
        var (full, other) = one.Proof == Proof.Open ? Once(() => new CompactModel(Sheet.Of(question, hat), held, 3, coverAll: true).Any()) : (double.MaxValue, one);
        var proof = one.Proof == Proof.Open ? other.Proof : one.Proof;
        return new Race(ours, Fastest((plain, one), (full, other)), proof != Proof.Open, covered is not null, covered is null || proof == Proof.Open || covered == (proof == Proof.Best));
    }

    /// <summary>The first five tiers. The solver is only asked for the tidiest at the rung and brim set the matcher came to, or for the least short, which is less work.</summary>
    public static Race ToSettle(Question question, bool patterns)
    {
        var hat = NeedsOf(question);
        var (ours, settled) = Timed(() => Inside.SettleWhole(Fresh(question)));
        var (plan, sheet) = (settled!.Plan, Sheet.Of(question, hat));
        var ballOf = Inside.BallOf(plan, sheet);
        if (settled.Word == Knitting.Matching.Search.Word.No)
        {
            var (most, goesIn) = Once(() => CompactModel.MostIn(Sheet.Of(question, hat)));
            return new Race(ours, most, goesIn.Proof == Proof.Best, plan.Proven, goesIn.Proof != Proof.Best || !plan.Proven || sheet.GoesIn(ballOf) == goesIn.Value);
        }

        // What each bears, in the order asked.
        var at = Enumerable.Range(0, plan.Puzzle.Bins).ToDictionary(b => plan.Puzzle.Leftover(b).Id, b => plan.Capacity.Of[b], StringComparer.Ordinal);
        long[] bears = [.. question.Leftovers.Select(l => at.GetValueOrDefault(l.Id))];
        var width = plan.Puzzle.BrimWidth;
        var plain = Once(() => Checked(question, hat, bears, s => new CompactModel(s, bears, width, coverAll: true, colours: false).Tidiest()));
        var ways = patterns ? Once(() => Checked(question, hat, bears, s => PatternModel.Solve(s, bears, width, colours: false))) : plain;
        var full = plain.Value.Proof == Proof.Open && ways.Value.Proof == Proof.Open ? Once(() => new CompactModel(Sheet.Of(question, hat), bears, width, coverAll: true).Tidiest()) : plain;
        var best = new[] { plain, ways, full }.Where(r => r.Value.Proof == Proof.Best).Select(r => (long?)r.Value.Value).FirstOrDefault();
        var worth = sheet.Worth(bears, ballOf);
        return new Race(ours, Fastest(plain, ways, full), best is not null, plan.Proven, best is null || worth == best || (worth < best && !plan.Proven));
    }

    // A model without the colour rule is quicker; what it finds is proven where it happens to keep the rule, or where it finds nothing.
    private static Settled Checked(Question question, HatNeeds hat, long[] bears, Func<Sheet, Settled> solve)
    {
        var sheet = Sheet.Of(question, hat);
        var settled = solve(sheet);
        return settled.Proof == Proof.Best && sheet.Broken(settled.BallOf, bears, 3) is not null ? settled with { Proof = Proof.Open } : settled;
    }

    private static double Fastest(params (double Milliseconds, Settled Value)[] runs) =>
        runs.Where(r => r.Value.Proof != Proof.Open).Select(r => r.Milliseconds).DefaultIfEmpty(runs.Where(r => r.Milliseconds < double.MaxValue).Distinct().Sum(r => r.Milliseconds)).Min();

    public static HatNeeds NeedsOf(Question question) =>
        question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out var why) ? hat : throw new InvalidOperationException(why.Reason);

    // A list of its own each time: nothing made ready for an earlier question helps.
    public static Question Fresh(Question question) => question with { Leftovers = [.. question.Leftovers] };

    public static (double Milliseconds, T Value) Timed<T>(Func<T> work)
    {
        var best = Once(work);
        for (var i = 0; i < 4 && best.Milliseconds < 50; i++)
        {
            var again = Once(work);
            best = again.Milliseconds < best.Milliseconds ? again : best;
        }

        return best;
    }

    public static (double Milliseconds, T Value) Once<T>(Func<T> work)
    {
        // On a busy machine the clock goes on while others work: the lesser of time and of what this process itself has used.
        var (watch, used) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        var value = work();
        var (wall, own) = (watch.Elapsed.TotalMilliseconds, (Environment.CpuUsage.TotalTime - used).TotalMilliseconds);
        return (wall > 5 ? Math.Min(wall, own) : wall, value);
    }
}
