using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What came of asking: the hats and leftovers there are, and the answer where there is one.</summary>
/// <param name="Hats">Every hat that can be asked for.</param>
/// <param name="Bag">The leftovers that may go into it.</param>
/// <param name="Hat">The hat that was asked for; null where there is none of that id.</param>
/// <param name="View">The answer; null where the question cannot be read or the hat not be knitted so.</param>
/// <param name="Cannot">Why it cannot be knitted so.</param>
public sealed record Asked(IReadOnlyList<ListedHat> Hats, IReadOnlyList<LoggedLeftover> Bag, Hat? Hat, AnswerView? View, CannotBeKnitted? Cannot);

/// <summary>Asks a form's question of the hats and leftovers in the store: the page and its picture ask the same.</summary>
public sealed class HatQuestion(HatStore hatStore, LeftoverStore leftoverStore)
{
    public async Task<Asked> AskAsync(CanIMakeForm form, FieldErrors errors, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(form);
        var hats = await hatStore.ListAsync(cancel);
        IReadOnlyList<LoggedLeftover> bag = [.. (await leftoverStore.ListAsync(cancel)).Where(l => l.ForHats && (string.IsNullOrEmpty(form.Bag) || l.Bag == form.Bag))];
        var hat = hats.FirstOrDefault(h => h.Id == form.Hat)?.Hat;
        var asked = new Asked(hats, bag, hat, null, null);
        if (form.Read(hat, [.. bag.Select(l => l.ToLeftover()!)], errors) is not { } question)
        {
            return asked;
        }

        if (!Matcher.TryAnswer(question, out var answer, out var cannot, cancel))
        {
            return asked with { Cannot = cannot };
        }

        var codes = bag.ToDictionary(l => l.Id, l => l.Code, StringComparer.Ordinal);
        foreach (var join in form.Join)
        {
            codes[join] = string.Join('+', join.Split('~').Select(id => codes.GetValueOrDefault(id, id)));
        }

        return asked with { View = new AnswerView(answer, codes) { AllowancePercent = question.AllowancePercent } };
    }
}
