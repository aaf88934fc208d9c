namespace StashMatch.Knitting.Hats;

/// <summary>Where braids lie.</summary>
public enum BraidPlaces
{
    /// <summary>No braids.</summary>
    None,

    /// <summary>One between each two stripes.</summary>
    BetweenStripes,

    /// <summary>One between each two stripes and one above the brim (brim-up only).</summary>
    BesideBrimToo,
}

/// <summary>What the two strands of a braid are.</summary>
public enum StrandSource
{
    /// <summary>The yarns of the two parts the braid lies between, not cut.</summary>
    Neighbours,

    /// <summary>Two scraps, each cut.</summary>
    Scraps,
}

/// <summary>The hat's braids.</summary>
/// <param name="Where">Where they lie.</param>
/// <param name="Strands">What their strands are.</param>
/// <param name="StrandCount">2, or 1 for a sideways braid of one strand.</param>
public sealed record Braids(BraidPlaces Where = BraidPlaces.None, StrandSource Strands = StrandSource.Neighbours, int StrandCount = 2)
{
    /// <summary>Numbers of braids left out, counted in knitting order with those left out; their rows go to the stripes.</summary>
    public IReadOnlyList<int> Without { get; init; } = [];

    /// <summary>How many of the braids numbered <paramref name="first"/> to <paramref name="last"/> are worked.</summary>
    internal int Worked(int first, int last) => Math.Max(0, last - first + 1) - Without.Count(n => n >= first && n <= last);
}
