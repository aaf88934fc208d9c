using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.Pieces;

/// <summary>A leftover with what of it no plan has.</summary>
/// <param name="Of">The leftover as it was logged.</param>
/// <param name="Free">What is free of it.</param>
public sealed record FreeLeftover(LoggedLeftover Of, Leftover Free)
{
    /// <summary>Those that may go into a hat and of which something is free.</summary>
    public static IReadOnlyList<FreeLeftover> Among(IEnumerable<LoggedLeftover> logged) =>
        [.. logged.Where(l => l.ForHats).Select(l => (l, Free: l.ToFreeLeftover())).Where(l => l.Free is not null).Select(l => new FreeLeftover(l.l, l.Free!))];

    /// <summary>The bags leftovers lie in, by name.</summary>
    public static IReadOnlyList<string> Lots(IEnumerable<LoggedLeftover> logged) =>
        [.. logged.Select(l => l.Bag).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.OrdinalIgnoreCase)];
}
