namespace StashMatch.Web.Pieces;

/// <summary>One colour of an order of colours.</summary>
/// <param name="Part">The part it is seen in; null where it is none.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Code">The leftover's two letters; null where nothing goes in.</param>
/// <param name="Hex">The colour; null where it is not known.</param>
public sealed record StripColour(string? Part, string Name, string? Code, string? Hex);
