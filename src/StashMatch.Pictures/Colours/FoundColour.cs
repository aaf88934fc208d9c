using StashMatch.Knitting.Colours;

namespace StashMatch.Pictures;

/// <summary>A colour found on a photo, and where to ring it.</summary>
/// <param name="Number">1 to 4, the largest share first.</param>
/// <param name="Colour">The mean of its pixels.</param>
/// <param name="Share">How much of the photo it covers, over 0 to 1.</param>
/// <param name="Across">Where it lies widest, 0 at the left to 1 at the right.</param>
/// <param name="Down">The same, 0 at the top to 1 at the foot.</param>
public sealed record FoundColour(int Number, YarnColour Colour, double Share, double Across, double Down);
