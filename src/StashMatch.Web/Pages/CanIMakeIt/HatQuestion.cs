using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What came of asking: the hats and leftovers there are, and the answer where there is one.</summary>
/// <param name="Hats">Every hat that can be asked for.</param>
/// <param name="Bag">The leftovers that may go into it.</param>
/// <param name="Lots">The bags there are.</param>
/// <param name="InPlans">How many leftovers are promised to plans, wholly or in part.</param>
/// <param name="Hat">The hat that was asked for; null where there is none of that id.</param>
/// <param name="View">The answer; null where the question cannot be read or the hat not be knitted so.</param>
/// <param name="Cannot">Why it cannot be knitted so.</param>
public sealed record Asked(IReadOnlyList<ListedHat> Hats, IReadOnlyList<FreeLeftover> Bag, IReadOnlyList<string> Lots, int InPlans, Hat? Hat,
    AnswerView? View, CannotBeKnitted? Cannot)
{
    /// <summary>The question as it was asked; null where it could not be read.</summary>
    public Question? Question { get; init; }

    /// <summary>What was asked in the end: with the nearest size where the hat has not the one in the address.</summary>
    public CanIMakeForm? Form { get; init; }

    /// <summary>The size asked for that the hat does not have, where the nearest one was taken; null otherwise.</summary>
    public string? NoSize { get; init; }
}

/// <summary>Asks a form's question of the hats and leftovers in the store: the page and its picture ask the same.</summary>
public sealed class HatQuestion(HatStore hatStore, LeftoverStore leftoverStore)
{
    /// <summary>Asks with what is free of each leftover; with all of it where a plan is being saved, so that the store says who has it.</summary>
    public async Task<Asked> AskAsync(CanIMakeForm form, FieldErrors errors, CancellationToken cancel, bool saving = false)
    {
        ArgumentNullException.ThrowIfNull(form);
        var hats = await hatStore.ListAsync(cancel);
        var hat = hats.FirstOrDefault(h => h.Id == form.Hat)?.Hat;
        string? missing = null;
        if (hat is not null && form.Size is { } wanted && !hat.SizeNames.Contains(wanted, StringComparer.Ordinal)
            && HatSizes.Nearest(wanted, hat, hats.Select(h => h.Hat)) is { } nearest)
        {
            (missing, form) = (wanted, form with { Size = nearest, Depths = null });
        }

        var all = (await leftoverStore.ListForPlanAsync(form.Plan ?? "", cancel)).Where(l => l.ForHats).ToList();
        IReadOnlyList<LoggedLeftover> lot = [.. all.Where(l => string.IsNullOrEmpty(form.Bag) || l.Bag == form.Bag)];
        var bag = saving || form.Kept == CanIMakeForm.CountKept ? [.. lot.Select(l => new FreeLeftover(l, l.ToLeftover()!))] : FreeLeftover.Among(lot);
        foreach (var gone in lot.Where(l => bag.All(b => b.Of.Id != l.Id)))
        {
            var chosen = form.Leftovers.Contains(gone.Id, StringComparer.Ordinal);
            if (chosen || form.Asked[Pairings.Locks].Each?.Any(l => Pairings.LeftoverOf(l) == gone.Id) == true)
            {
                errors.Add((chosen ? MatchQuestion.Leftovers : Pairings.Locks).Name,
                    $"names {gone.Name}, which is kept for another hat: choose another, or free its yarn there");
            }
        }

        var inPlans = form.Kept == CanIMakeForm.CountKept ? 0 : lot.Count(l => l.Promised != default);
        var asked = new Asked(hats, bag, FreeLeftover.Lots(all), inPlans, hat, null, null) { Form = form, NoSize = missing };
        if (form.Read(hat, [.. bag.Select(l => l.Free)], errors) is not { } question)
        {
            return asked;
        }

        if (!Matcher.TryAnswer(question, out var answer, out var cannot, cancel))
        {
            return asked with { Cannot = cannot };
        }

        var codes = bag.ToDictionary(l => l.Of.Id, l => l.Of.Code, StringComparer.Ordinal);
        foreach (var (several, ids) in form.Several())
        {
            codes[several] = string.Join('+', ids.Select(id => codes.GetValueOrDefault(id, id)));
        }

        return asked with { Question = question, View = new AnswerView(answer, codes, form.Shared, question.AllowancePercent) };
    }
}
