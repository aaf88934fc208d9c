using StashMatch.Knitting.Hats;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Reads a hat wherever one stands: the id of a stored or sample hat, or a description inline.</summary>
public sealed class HatReader(HatStore hats, KnitterStore knitter)
{
    /// <summary>The hat a question is about; null where it cannot be read, with a message.</summary>
    public async Task<Hat?> ReadAsync(Reading asked, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var hat = MatchQuestion.Hat;
        if (asked.Said[hat].Words is { } id)
        {
            var found = await hats.FindAsync(id, cancel);
            if (found is null)
            {
                asked.Wrong(hat, "no hat has that id");
            }

            return found;
        }

        if (asked.In(hat) is { } described)
        {
            return HatText.Read(described) is { } read ? KnitterStore.With(await knitter.UsageAsync(cancel), read) : null;
        }

        asked.Wrong(hat, "is missing");
        return null;
    }

    /// <summary>What is said of a hat that could be read.</summary>
    public async Task<Said> DescribeAsync(Reading asked, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return asked.Said[MatchQuestion.Hat] is { Words: { } id } ? (await hats.ListAsync(cancel)).First(h => h.Id == id).Description : asked.Said[MatchQuestion.Hat];
    }
}
