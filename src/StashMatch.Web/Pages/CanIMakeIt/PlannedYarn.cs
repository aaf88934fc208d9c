using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What an answer takes of each logged leftover, part by part.</summary>
public static class PlannedYarn
{
    /// <summary>Two leftovers that were asked about as one, held together, each give the whole length.</summary>
    public static IReadOnlyList<PlannedPart> Of(Answer answer, CanIMakeForm form)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(form);
        var with = string.IsNullOrEmpty(form.HoldWith) ? form.Hold : form.HoldWith;
        string[] Logged(string id) => !string.IsNullOrEmpty(form.Hold) && id == $"{form.Hold}+{with}" ? [form.Hold, with!] : [id];
        return
        [
            .. answer.Parts.SelectMany(p => p.All.Where(a => a.Metres.Millimetres > 0).SelectMany(a => Logged(a.Leftover).Select(id => new PlannedPart(id, p.Part.Name, a.Metres.Millimetres))))
                .GroupBy(p => (p.Leftover, p.Part)).Select(g => new PlannedPart(g.Key.Leftover, g.Key.Part, g.Sum(p => p.Millimetres))),
        ];
    }
}
