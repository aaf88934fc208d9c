using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching;

/// <summary>Answers "can I make size C from these?": which leftover goes where, whether it is enough, and what mends it if not.</summary>
/// <remarks>Deterministic and limited by steps. In strict order: covered, safe, tidy; each answer says whether it is proven best.</remarks>
public static class Matcher
{
    /// <summary>From this chance on a covered hat is a yes.</summary>
    public const double GoodChance = 0.80;

    private static readonly decimal[] Ladder = [0, 2.5m, 5, 7.5m, 10, 15, 20, 25];

    /// <summary>Answers a question, repairs included.</summary>
    /// <param name="question">The question; every part and leftover its locks name exists.</param>
    /// <param name="answer">The answer, when the hat can be knitted as asked.</param>
    /// <param name="why">Why it cannot be knitted, otherwise.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">Two leftovers share an id.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static bool TryAnswer(
        Question question,
        [NotNullWhen(true)] out Answer? answer,
        [NotNullWhen(false)] out CannotBeKnitted? why,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Leftovers.DistinctBy(l => l.Id, StringComparer.Ordinal).Count() != question.Leftovers.Count)
        {
            throw new ArgumentException("Two leftovers share an id.", nameof(question));
        }

        question = question with { Leftovers = [.. question.Leftovers] };
        answer = null;
        if (Best(question, out why, cancel) is not { } best)
        {
            why ??= new CannotBeKnitted("size", "The hat cannot be knitted in this size.");
            return false;
        }

        why = null;
        best = Ordered(best, cancel);
        answer = Answers.Of(best, question.AllowancePercent);
        Checker.Check(answer, question);
        answer = answer with { Repairs = Repairs.For(question, answer, best, cancel) };
        return true;
    }

    /// <summary>The best plan over the stripe count asked, or over all the hat may have (of those short the one that is least short, then more stripes); null where none can be knitted, or covered where only that counts.</summary>
    internal static Outcome? Best(Question question, out CannotBeKnitted? why, CancellationToken cancel, bool onlyIfCovered = false)
    {
        why = null;
        IReadOnlyList<int> counts = question.Stripes is { } asked ? [asked] : question.Hat.CountsFor(question.Size);
        if (counts.Count == 0)
        {
            why = new CannotBeKnitted("size", $"The hat has no size {question.Size}.");
            return null;
        }

        Outcome? best = null;
        (Verdict, decimal, long, int) bestStands = default;
        foreach (var stripes in counts)
        {
            if (!question.Hat.TryNeeds(question.Size, stripes, out var hat, out var cannot) || (cannot = CannotArrange(question, hat)) is not null)
            {
                why ??= cannot;
                continue;
            }

            if (Settle(question with { Stripes = stripes }, hat, onlyIfCovered, cancel) is not { } outcome)
            {
                continue;
            }

            var stands = (outcome.Verdict, outcome.Plan.Rung, counts.Count == 1 ? 0 : -outcome.Short, stripes);
            if (best is null || stands.CompareTo(bestStands) > 0)
            {
                (best, bestStands) = (outcome, stands);
            }
        }

        return best is not null && ColourAlone(best, cancel) ? best with { Why = Why.Colour } : best;
    }

    internal static CannotBeKnitted? CannotArrange(Question question, HatNeeds hat) => question.Arrangement switch
    {
        Arrangement.OwnColours or Arrangement.AsItFalls => null,
        _ when hat.Plan is null => new CannotBeKnitted("arrangement", "A printed table says which yarn goes where. Choose every stripe different, or whatever fits."),
        Arrangement.InTurn when question.InTurn < 2 || question.InTurn >= hat.Stripes =>
            new CannotBeKnitted("inTurn", $"{hat.Stripes} stripes can repeat 2 to {hat.Stripes - 1} colours."),
        Arrangement.OneThread when !hat.Parts.Any(p => p.Kind is PartKind.Brim or PartKind.Strand) =>
            new CannotBeKnitted("arrangement", "The hat has neither brim nor braids for one colour to run through."),
        _ => null,
    };

    private static Outcome? Settle(Question question, HatNeeds hat, bool onlyIfCovered, CancellationToken cancel)
    {
        Puzzle? puzzle = null;
        Plan? covering = null;
        var certain = true;
        var hasBrim = hat.Parts.Any(p => p.Kind == PartKind.Brim);
        foreach (var set in hasBrim ? BrimSet.Widening.Skip(question.BrimFrom) : [null])
        {
            puzzle = Puzzle.Of(question, hat, set);
            covering = new Planner(puzzle, cancel).Feasible(0, out var found);
            certain &= found != Found.Unknown;
            if (covering is not null)
            {
                break;
            }
        }

        if (covering is null && onlyIfCovered)
        {
            return null;
        }

        var most = covering is null ? new Planner(puzzle!, cancel).MostCovered() : covering;
        var plan = most.Complete ? Safe(question, hat, most, cancel) : new Planner(puzzle!, cancel).Tidied(most);
        plan = plan with { Proven = plan.Proven && certain };
        return Outcome.Of(question, hat, plan);
    }

    // The stripes in the order of colours asked for, where that lowers nothing else.
    private static Outcome Ordered(Outcome outcome, CancellationToken cancel)
    {
        if (outcome.Question.ColourOrder == ColourOrder.Any)
        {
            return outcome;
        }

        var plan = new Planner(outcome.Plan.Puzzle, cancel).InOrder(outcome.Plan, outcome.Question.ColourOrder);
        var ordered = Outcome.Of(outcome.Question, outcome.Hat, plan);
        return ordered.Verdict == outcome.Verdict ? ordered with { Why = outcome.Why == Why.Colour ? outcome.Why : ordered.Why } : outcome;
    }

    // Whether there is yarn enough and only the colour rule stands in the way.
    private static bool ColourAlone(Outcome outcome, CancellationToken cancel) =>
        outcome.Why == Why.Short && !outcome.Question.Blend
        && new Planner(Puzzle.Of(outcome.Question with { Blend = true }, outcome.Hat, null), cancel).Feasible(0, out _) is not null;

    // Up the ladder to the first rung, not below the allowance, whose best plan is likely enough; else the highest that covers.
    private static Plan Safe(Question question, HatNeeds hat, Plan covering, CancellationToken cancel)
    {
        var allowance = question.AllowancePercent;
        var rungs = Ladder.Append(allowance).Distinct().Order().ToList();
        var planner = new Planner(covering.Puzzle, cancel);
        var highest = covering;
        var certain = true;
        foreach (var rung in rungs.Where(r => r >= allowance))
        {
            var found = Found.Yes;
            if ((rung == 0 ? covering : planner.Feasible(rung, out found)) is not { } plan)
            {
                certain &= found == Found.No;
                break;
            }

            highest = planner.Tidied(plan);
            certain &= highest.Proven;
            if (highest.ChanceOfEnough(hat.Usage) >= GoodChance)
            {
                break;
            }
        }

        if (highest != covering)
        {
            return highest with { Proven = certain };
        }

        foreach (var rung in rungs.Where(r => r < allowance && r > 0).OrderDescending())
        {
            var plan = planner.Feasible(rung, out var found);
            certain &= found != Found.Unknown;
            if (plan is not null)
            {
                highest = plan;
                break;
            }
        }

        var tidied = planner.Tidied(highest);
        return tidied with { Proven = tidied.Proven && certain };
    }
}
