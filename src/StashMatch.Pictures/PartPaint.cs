namespace StashMatch.Pictures;

/// <summary>How a part is to be drawn.</summary>
/// <param name="Hex">Its yarn's colour, or null where nothing goes in or no colour is known.</param>
/// <param name="Code">The two letters of the leftover that goes in, or null.</param>
/// <param name="Label">What it is called: "stripe 3, Moss".</param>
/// <param name="Leftover">Whether a leftover goes in at all.</param>
/// <param name="Short">Whether it lacks yarn.</param>
public sealed record PartPaint(string? Hex, string? Code, string Label, bool Leftover, bool Short);
