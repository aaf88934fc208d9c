using System.Globalization;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pieces;

/// <summary>Which leftovers of a list are looked at, and in which order.</summary>
public sealed record LeftoverFilter
{
    private static readonly Dictionary<string, int> ColourPlaces = NamedColour.All.Select((n, i) => (n.Name, i)).ToDictionary(n => n.Name, n => n.i, StringComparer.Ordinal);

    /// <summary>Words that must all be found in what is said of it.</summary>
    public string Words { get; init; } = "";

    /// <summary>One bag; empty for all.</summary>
    public string Bag { get; init; } = "";

    /// <summary>A weight class, 0 to 7; empty for all.</summary>
    public string Class { get; init; } = "";

    /// <summary>Words that must all be found in its fibres; "unknown" for those nobody knows.</summary>
    public string Fibre { get; init; } = "";

    /// <summary>"known", "unknown" or all.</summary>
    public string Colour { get; init; } = "";

    /// <summary>"hats", "not-hats", "crumbs", "kept-back", "knitted-up" or all.</summary>
    public string Only { get; init; } = "";

    public LeftoverOrder Order { get; init; }

    /// <summary>Whether anything is left out by it.</summary>
    public bool IsOpen => Words.Trim().Length + Bag.Length + Class.Length + Fibre.Trim().Length + Colour.Length + Only.Length == 0;

    /// <summary>Those it lets through, in its order; those as they stood where the order says nothing.</summary>
    public IList<Listed> Of(IReadOnlyList<Listed> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        var (words, fibres) = (Split(Words), Split(Fibre));
        var some = all.Where(l => IsMeant(l) && Array.TrueForAll(words, w => Says(l, w)) && Array.TrueForAll(fibres, w => l.Of.Fibre.IsUnknown ? Has("unknown", w) : Has(l.Of.Fibre.ToString(), w)));
        return Order switch
        {
            LeftoverOrder.Name => [.. some.OrderBy(l => l.Of.Name, StringComparer.OrdinalIgnoreCase)],
            LeftoverOrder.Code => [.. some.OrderBy(l => l.Of.Code, StringComparer.Ordinal)],
            LeftoverOrder.Longest => [.. some.OrderByDescending(l => l.Held)],
            LeftoverOrder.Heaviest => [.. some.OrderByDescending(l => l.Grams)],
            LeftoverOrder.Class => [.. some.OrderBy(l => l.Class is { } c ? (int)c : 9)],
            LeftoverOrder.Bag => [.. some.OrderBy(l => l.Of.Bag is null).ThenBy(l => l.Of.Bag, StringComparer.OrdinalIgnoreCase).ThenBy(l => l.Of.Name, StringComparer.OrdinalIgnoreCase)],
            LeftoverOrder.Colour => [.. some.OrderBy(l => l.ColourName is { } name ? ColourPlaces[name] : int.MaxValue)],
            _ => [.. some],
        };
    }

    /// <summary>The address of a page that looks at the same leftovers.</summary>
    public string Address(string page) => page + "?" + string.Join('&', new[]
    {
        ("words", Words.Trim()), ("bag", Bag), ("class", Class), ("fibre", Fibre.Trim()), ("colour", Colour), ("only", Only), ("order", Order == default ? "" : Order.ToString()),
    }.Where(p => p.Item2.Length > 0).Select(p => $"{p.Item1}={Uri.EscapeDataString(p.Item2)}"));

    private static string[] Split(string typed) => typed.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool Has(string? text, string word) => text?.Contains(word, StringComparison.OrdinalIgnoreCase) == true;

    private static bool Says(Listed l, string word) =>
        Has(l.Of.Name, word) || l.Of.Code == word || Has(l.Of.Bag, word) || Has(l.Of.KeptIn, word) || Has(l.Of.Lot, word) || Has(l.ColourName, word)
        || Has(l.Of.Colour?.Hex, word) || Has(l.Of.KeptBackFor, word) || Has(l.Of.Note, word) || Has(l.Of.Fibre.ToString(), word) || Has(l.Of.Ratio?.ToString(), word)
        || (l.Class is { } c && (Has(Terms.Of(c), word) || WeightClasses.CalledOf(c).Any(called => Has(called, word))));

    private bool IsMeant(Listed l) =>
        (Bag.Length == 0 || Bag == l.Of.Bag)
        && (Class.Length == 0 || (l.Class is { } c && Class == ((int)c).ToString(CultureInfo.InvariantCulture)))
        && (Colour.Length == 0 || (Colour == "known") == l.Of.Colour is not null)
        && Only switch
        {
            "hats" => l.Of.ForHats,
            "not-hats" => l.Of.NotForHats,
            "crumbs" => l.Of.Ratio is null || l.Of.Crumb,
            "kept-back" => l.Of.KeptBackFor is not null,
            "knitted-up" => l.Of.KnittedUp,
            _ => true,
        };
}
