namespace StashMatch.Knitting.Hats;

/// <summary>Stripes that are not all alike.</summary>
/// <param name="Values">One for each stripe from the cast-on or brim, each over 0: centimetres, or proportions.</param>
/// <param name="InCentimetres">Depths of their own, so that the hat's body comes out as deep as they are together; otherwise proportions of the body.</param>
public sealed record StripeDepths(IReadOnlyList<decimal> Values, bool InCentimetres)
{
    /// <summary>The depths where they are centimetres, else null.</summary>
    internal StripeDepths? Own => InCentimetres ? this : null;

    /// <summary>The proportions where they are proportions, else null.</summary>
    internal StripeDepths? Proportions => InCentimetres ? null : this;
}
