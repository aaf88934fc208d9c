namespace StashMatch.Pictures;

/// <summary>What a part of a hat is drawn with.</summary>
/// <param name="Hex">The yarn's colour as #rgb or #rrggbb. Null with no <paramref name="Code"/>: nothing goes in, an open gap; null with a code: a leftover whose colour is not known.</param>
/// <param name="Code">The leftover's two-letter code.</param>
/// <param name="Label">Part and leftover in words, such as "stripe 3, Moss".</param>
/// <param name="Short">Whether the leftover does not reach.</param>
/// <param name="Lacks">The share of the part that then lacks yarn, 0 to 1: off the needles its last rows are drawn open. 0 where it is not known.</param>
public sealed record PartPaint(string? Hex, string? Code, string Label, bool Short, double Lacks = 0);
