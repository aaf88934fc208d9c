using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>The leftovers as they were last seen: every open page that lists a leftover as it stands holds this one, not one of its own.</summary>
public sealed class SeenLeftovers
{
    private volatile IReadOnlyList<Listed> _latest = [];

    /// <summary>What the store says now; those that did not change since they were last seen are the same ones.</summary>
    public IReadOnlyList<Listed> See(IReadOnlyList<LoggedLeftover> logged)
    {
        ArgumentNullException.ThrowIfNull(logged);
        var latest = _latest;
        var known = latest.ToDictionary(l => StateOf(l.Of));
        List<Listed> seen = [.. logged.Select(l => known.TryGetValue(StateOf(l), out var same) ? same : new Listed(l))];
        return _latest = seen.Count == latest.Count && seen.SequenceEqual(latest, ReferenceEqualityComparer.Instance) ? latest : seen;
    }

    /// <summary>A page has seen a change of its own.</summary>
    public void Keep(IReadOnlyList<Listed> seen) => _latest = seen;

    // The version is another one after each step; promises and pictures are kept beside it.
    private static (string Id, Guid Version, Metres Promised, bool HasPicture) StateOf(LoggedLeftover l) => (l.Id, l.Version, l.Promised, l.HasPicture);
}
