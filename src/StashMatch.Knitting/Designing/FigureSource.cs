namespace StashMatch.Knitting.Designing;

/// <summary>Where a figure of a table comes from.</summary>
public enum FigureSource
{
    /// <summary>Reckoned, or taken from the printed table: nobody has weighed it in this size.</summary>
    Estimated,

    /// <summary>Weighed by the designer.</summary>
    Knitted,

    /// <summary>Weighed by a tester.</summary>
    Tester,
}
