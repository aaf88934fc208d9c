namespace StashMatch.Web.Pieces;

/// <summary>What a list of leftovers is sorted by.</summary>
public enum LeftoverOrder
{
    /// <summary>As logged, newest first.</summary>
    Newest,

    /// <summary>By name.</summary>
    Name,

    /// <summary>By the two letters on the tag.</summary>
    Code,

    /// <summary>The longest first.</summary>
    Longest,

    /// <summary>The heaviest first.</summary>
    Heaviest,

    /// <summary>By weight class, the thinnest first.</summary>
    Class,

    /// <summary>By bag, then name.</summary>
    Bag,

    /// <summary>By colour: greys first, then round the circle.</summary>
    Colour,
}
