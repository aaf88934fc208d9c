namespace StashMatch.Store;

/// <summary>A kit as it is written in JSON.</summary>
public sealed record KitDescription(string? Name, IReadOnlyList<KitSkeinDescription?>? Skeins);

/// <summary>So many like mini-skeins; the label as printed ("20 g / 80 m").</summary>
public sealed record KitSkeinDescription(string? Name, decimal? Grams, int? Count, string? Label, string? Colour = null, string? Fibre = null, int? WeightClass = null);
