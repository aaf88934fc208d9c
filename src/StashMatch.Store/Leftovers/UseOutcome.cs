namespace StashMatch.Store;

/// <summary>What became of taking some of a leftover.</summary>
public enum UseOutcome
{
    /// <summary>It is booked.</summary>
    Booked,

    /// <summary>There is no such leftover.</summary>
    NotThere,

    /// <summary>More was to be taken than is left: weigh it again.</summary>
    MoreThanIsLeft,
}
