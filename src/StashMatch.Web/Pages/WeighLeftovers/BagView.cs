using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>All that is weighed, with what the page asks of it.</summary>
/// <param name="All">Newest first.</param>
/// <param name="Yarns">Those whose label may come again, the latest of each, at most forty.</param>
/// <param name="Names">The bags, in order.</param>
public sealed record BagView(IReadOnlyList<Listed> All, IReadOnlyList<LoggedLeftover> Yarns, IReadOnlyList<string> Names)
{
    private const int MostYarns = 40;

    public static BagView Empty { get; } = new([], [], []);

    public static BagView Of(IReadOnlyList<Listed> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        return new(
            all,
            [.. all.Where(l => l.Of.Ratio is not null).DistinctBy(l => (l.Of.Ratio, l.Of.Class, l.Of.Superwash, l.Of.Make, l.Of.Fibre.ToString())).Take(MostYarns).Select(l => l.Of)],
            [.. all.Select(l => l.Of.Bag).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.OrdinalIgnoreCase)]);
    }

    /// <summary>The same with one leftover as it is now; null takes it off, a new one goes first.</summary>
    public BagView With(string id, LoggedLeftover? now)
    {
        var at = All.ToList().FindIndex(l => l.Of.Id == id);
        List<Listed> all = [.. All];
        if (at >= 0)
        {
            all.RemoveAt(at);
        }

        if (now is not null)
        {
            all.Insert(Math.Max(0, at), new Listed(now));
        }

        return Of(all);
    }

    public Listed? Find(string id) => All.FirstOrDefault(l => l.Of.Id == id);
}
