using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>Another leftover for a part, and the word it would lead to.</summary>
/// <param name="Part">The part.</param>
/// <param name="Of">The leftover.</param>
/// <param name="Verdict">The word then.</param>
/// <param name="Chance">The chance then, 0 to 1.</param>
public sealed record PartChoice(string Part, FreeLeftover Of, Verdict Verdict, double Chance)
{
    private const int Tried = 6;
    private const int Shown = 3;

    /// <summary>The best few for a part, the surest first: those that could be long enough are tried, the nearest in length first.</summary>
    public static IReadOnlyList<PartChoice> For(Question question, AnswerView view, HatRow row, IReadOnlyList<FreeLeftover> bag, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(row);
        if (row.Parts.Count > 1)
        {
            return [];
        }

        var part = row.Parts[0];
        var asked = question.Leftovers.Select(l => l.Id).ToHashSet(StringComparer.Ordinal);
        var here = part.All.Select(a => a.Leftover).ToHashSet(StringComparer.Ordinal);
        var free = view.Leftovers.ToDictionary(l => l.Leftover.Id, l => l.Left.Millimetres, StringComparer.Ordinal);
        var like = view.Parts.Where(p => p.From is not null && p.Part.Name != part.Part.Name).Select(p => new Pairing(p.Part.Name, p.From!.Leftover))
            .ToList();
        var choices = new List<PartChoice>();
        foreach (var other in bag.Where(b => asked.Contains(b.Of.Id) && !here.Contains(b.Of.Id) && b.Free.ClassOrGuess == view.Answer.Hat.WeightClass)
            .OrderByDescending(b => free.GetValueOrDefault(b.Of.Id) >= part.Need.Millimetres)
                .ThenBy(b => Math.Abs(b.Free.Held.Millimetres - part.Planned.Millimetres)).Take(Tried))
        {
            var locks = question.Locks.Where(l => l.Part != part.Part.Name).Append(new Pairing(part.Part.Name, other.Of.Id));
            if (Matcher.TryWithoutRepairs(question with
            {
                Locks = [.. locks],
                Stripes = view.Answer.Hat.Plan is null ? question.Stripes
                : view.Answer.Hat.Stripes,
                Like = like
            }, out var answer, out _, cancel))
            {
                choices.Add(new(part.Part.Name, other, answer.Verdict, answer.ChanceOfEnough));
            }
        }

        return [.. choices.OrderByDescending(c => c.Verdict).ThenByDescending(c => c.Chance).Take(Shown)];
    }
}
