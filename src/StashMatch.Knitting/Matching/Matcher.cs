using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Repairs;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching;

/// <summary>Answers "can I make size C from these?": which leftover goes where, whether it is enough, and what mends it if not.</summary>
/// <remarks>Deterministic and limited by steps. In strict order: word, least short, brim, sure, tidy, colour, as it was; each answer says whether it is proven best.</remarks>
public static class Matcher
{
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
        question = question with { Leftovers = [.. question.Leftovers] };
        if (!TryWithoutRepairs(question, out answer, out why, out var best, cancel))
        {
            return false;
        }

        answer = answer with { Repairs = Mending.For(question, answer, best, cancel) };
        return true;
    }

    /// <summary>Answers a question with no repairs, for where only the word and the plan are asked for: the rest is as <see cref="TryAnswer"/> tells it.</summary>
    /// <inheritdoc cref="TryAnswer" path="/param"/>
    /// <exception cref="ArgumentException">Two leftovers share an id.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static bool TryWithoutRepairs(
        Question question,
        [NotNullWhen(true)] out Answer? answer,
        [NotNullWhen(false)] out CannotBeKnitted? why,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        return TryWithoutRepairs(question with { Leftovers = [.. question.Leftovers] }, out answer, out why, out _, cancel);
    }

    private static bool TryWithoutRepairs(
        Question question,
        [NotNullWhen(true)] out Answer? answer,
        [NotNullWhen(false)] out CannotBeKnitted? why,
        [NotNullWhen(true)] out Outcome? best,
        CancellationToken cancel)
    {
        if (question.Leftovers.DistinctBy(l => l.Id, StringComparer.Ordinal).Count() != question.Leftovers.Count)
        {
            throw new ArgumentException("Two leftovers share an id.", nameof(question));
        }

        answer = null;
        best = Best(question, out why, cancel);
        if (best is null)
        {
            why ??= new CannotBeKnitted("size", "The hat cannot be knitted in this size.");
            return false;
        }

        why = null;
        answer = Answers.Of(Finishing.Finished(best, cancel));
        Checker.Check(answer, question);
        return true;
    }

    /// <summary>
    /// The best over the stripe count asked, or over all the hat may have: the better word, then the higher reach, then more stripes; with all of
    /// them short, the least short. Null where none can be knitted, or covered where only that counts. Nothing is tidied.
    /// </summary>
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
        foreach (var stripes in counts)
        {
            if (!LaidOutHats.TryNeeds(question.Hat, question.Size, stripes, out var hat, out var cannot) || (cannot = CannotArrange(question, hat)) is not null)
            {
                why ??= cannot;
                continue;
            }

            if (Tiers.Settle(question with { Stripes = stripes }, hat, onlyIfCovered, cancel) is { } outcome
                && (best is null || Standing(outcome, stripes).CompareTo(Standing(best, best.Hat.Stripes)) > 0))
            {
                best = outcome;
            }
        }

        return best;
    }

    private static (Word, double, long, int) Standing(Outcome outcome, int stripes) => (outcome.Word, outcome.Reach, -outcome.Short.Millimetres, stripes);

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
}
