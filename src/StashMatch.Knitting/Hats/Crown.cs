namespace StashMatch.Knitting.Hats;

/// <summary>Which yarn the crown is of.</summary>
public enum CrownYarn
{
    /// <summary>The stripes go on through the crown.</summary>
    Stripes,

    /// <summary>A yarn of its own.</summary>
    Own,
}

/// <summary>A crown drawn in by decreases (brim-up hats).</summary>
/// <param name="DecreaseLines">Lines of decreases every other round, 4 to 16.</param>
/// <param name="Yarn">Whose yarn it is.</param>
public sealed record Crown(int DecreaseLines = 8, CrownYarn Yarn = CrownYarn.Stripes);
