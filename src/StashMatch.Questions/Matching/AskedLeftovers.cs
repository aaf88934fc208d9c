using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>The leftovers of a question: those that are logged, some of them by their ids, or others described.</summary>
internal static class AskedLeftovers
{
    /// <summary>Those that are there to be asked with, and the ids of those that are meant; null for all of them.</summary>
    public static (IReadOnlyList<Leftover> There, HashSet<string>? Meant) Read(Reading asked, Field field, IReadOnlyList<Leftover> logged)
    {
        asked.Text(MatchQuestion.Bag);
        if (asked.Said[field].Each is not { } each)
        {
            return (logged, null);
        }

        var own = new List<Leftover>();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (one, i) in asked.Each(field).Select((o, i) => (o, i)))
        {
            if (one.Said.Words is { } id)
            {
                Name(asked, field, i, id, ids, logged.FirstOrDefault(l => l.Id == id), own);
            }
            else if (!one.Said.IsNothing && LeftoverText.Read(one) is { } leftover)
            {
                Once(asked, $"{asked.Place(field, i)}.{LeftoverText.Id.Name}", ids, leftover.Id);
                own.Add(leftover);
            }
        }

        return each.Count > 0 && each.All(e => e.Words is not null) ? (logged, ids) : (own, null);
    }

    private static void Name(Reading asked, Field field, int index, string id, HashSet<string> ids, Leftover? found, List<Leftover> own)
    {
        if (found is null)
        {
            asked.Errors.Add(asked.Place(field, index), $"{Pairings.Short(id)} is not among the leftovers that may go into a hat");
            return;
        }

        Once(asked, asked.Place(field, index), ids, id);
        own.Add(found);
    }

    private static void Once(Reading asked, string place, HashSet<string> ids, string id)
    {
        if (!ids.Add(id))
        {
            asked.Errors.Add(place, "is there twice");
        }
    }
}
