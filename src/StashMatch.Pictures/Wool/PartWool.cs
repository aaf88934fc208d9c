namespace StashMatch.Pictures;

/// <summary>What a part of a hat is knitted in.</summary>
/// <param name="Yarn">Its yarn; null where nothing goes in: undyed wool.</param>
/// <param name="Knitted">How much of the part there is yarn for, 0 to 1; the rest is only hinted at.</param>
/// <param name="Ahead">Whether it is still to be knitted: undyed wool with a hint of its colour.</param>
/// <param name="Code">The leftover's code, for a label; null for no label.</param>
/// <param name="Words">Part and yarn in words, such as "stripe 3, Rosehip"; null for the part's name.</param>
public sealed record PartWool(YarnLook? Yarn, double Knitted = 1, bool Ahead = false, string? Code = null, string? Words = null);
