namespace StashMatch.Store;

/// <summary>Whether yarn promised to plans is offered again.</summary>
public enum Promised
{
    /// <summary>What is promised is left out.</summary>
    LeftOut,

    /// <summary>What is promised is counted too.</summary>
    CountedToo,
}
