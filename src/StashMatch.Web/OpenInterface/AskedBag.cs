using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Fetches the logged leftovers a question is asked with.</summary>
internal static class AskedBag
{
    /// <summary>Those that may go into a hat, of one bag where one is named; none where the question brings its own.</summary>
    public static async Task<IReadOnlyList<Leftover>> ForHatsAsync(this LeftoverStore store, Said asked, CancellationToken cancel) =>
        asked[MatchQuestion.Leftovers].Each is { } own && own.All(l => l.Words is null)
            ? []
            : await store.ForHatsAsync(Promised.LeftOut, asked[MatchQuestion.Plan].Words, asked[MatchQuestion.Bag].Words, cancel);
}
