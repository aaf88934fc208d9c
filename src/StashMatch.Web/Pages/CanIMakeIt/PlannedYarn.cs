using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What an answer takes of each logged leftover, part by part.</summary>
public static class PlannedYarn
{
    /// <summary>Two leftovers asked about as one: held together each gives the whole length, joined one after the other the first gives all it has.</summary>
    public static IReadOnlyList<PlannedPart> Of(IReadOnlyList<PartAnswer> planned, CanIMakeForm form, IReadOnlyDictionary<string, Metres> held)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(held);
        var (together, joined) = (Together.NamedHeld(form.Asked).ToDictionary(StringComparer.Ordinal),
            Together.NamedJoined(form.Asked).ToDictionary(StringComparer.Ordinal));
        var left = joined.Values.SelectMany(j => j).Distinct(StringComparer.Ordinal)
            .ToDictionary(id => id, id => Math.Max(0, held.GetValueOrDefault(id).Millimetres - (long)(1000 * Joined.Tails)), StringComparer.Ordinal);
        var parts = new List<PlannedPart>();
        foreach (var (part, from) in planned.SelectMany(p => p.All.Select(a => (p.Part.Name, a))))
        {
            var wanted = from.Metres.Millimetres;
            if (together.TryGetValue(from.Leftover, out var both))
            {
                parts.AddRange(both.Select(id => new PlannedPart(id, part, wanted)));
            }
            else if (joined.TryGetValue(from.Leftover, out var ids))
            {
                foreach (var id in ids)
                {
                    var takes = id == ids[^1] ? wanted : Math.Min(wanted, left[id]);
                    parts.Add(new PlannedPart(id, part, takes));
                    (left[id], wanted) = (left[id] - takes, wanted - takes);
                }
            }
            else
            {
                parts.Add(new PlannedPart(from.Leftover, part, wanted));
            }
        }

        return [.. parts.Where(p => p.Millimetres > 0).GroupBy(p => (p.Leftover, p.Part))
            .Select(g => new PlannedPart(g.Key.Leftover, g.Key.Part, g.Sum(p => p.Millimetres)))];
    }
}
