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

    public static BagView Of(IReadOnlyList<LoggedLeftover> logged)
    {
        ArgumentNullException.ThrowIfNull(logged);
        return new(
            [.. logged.Select(l => new Listed(l))],
            [.. logged.Where(l => l.Ratio is not null).DistinctBy(l => (l.Ratio, l.Class, l.Superwash, l.Make, l.Fibre.ToString())).Take(MostYarns)],
            [.. logged.Select(l => l.Bag).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.OrdinalIgnoreCase)]);
    }

    public Listed? Find(string id) => All.FirstOrDefault(l => l.Of.Id == id);
}
