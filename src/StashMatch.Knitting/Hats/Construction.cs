namespace StashMatch.Knitting.Hats;

/// <summary>How a hat is put together.</summary>
public enum Construction
{
    /// <summary>Brim first, in the round, stripes round the head, crown drawn in by decreases.</summary>
    BrimUpRound,

    /// <summary>The same worked flat and seamed.</summary>
    BrimUpFlat,

    /// <summary>A flat panel knitted side to side, seamed, gathered at the top, brim picked up along the selvedge.</summary>
    SideToSide,
}
