using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching;

/// <summary>Can it be made?</summary>
public enum Verdict
{
    /// <summary>Some metres are short.</summary>
    No,

    /// <summary>Nothing is short, but the reserve is not kept, or some leftover is less sure than was asked.</summary>
    OnlyJust,

    /// <summary>Nothing is short, the reserve is kept, and every leftover is as sure as was asked.</summary>
    Yes,
}

/// <summary>The one reason behind a verdict.</summary>
public enum Why
{
    /// <summary>All is there, with the reserve and as surely as was asked.</summary>
    Covered,

    /// <summary>All is there, but no plan keeps the reserve.</summary>
    Allowance,

    /// <summary>All is there, but no plan is as sure as was asked.</summary>
    Chance,

    /// <summary>As <see cref="Chance"/>, and knowing this knitter's use better would be enough.</summary>
    NotCalibrated,

    /// <summary>Too little yarn.</summary>
    Short,

    /// <summary>Too few leftovers that are long enough for the colours wanted; <see cref="Answer.TooFew"/> tells the count.</summary>
    TooFewLeftovers,

    /// <summary>Enough yarn, but neighbouring colours would be alike.</summary>
    Colour,

    /// <summary>The hat cannot be knitted as asked.</summary>
    CannotBeKnitted,
}

/// <summary>A count anybody can check: so many different leftovers are wanted, each of at least so many metres, and fewer are there.</summary>
/// <param name="Wanted">How many parts want a leftover of their own, 2 or more.</param>
/// <param name="There">How many leftovers are long enough for one of them.</param>
/// <param name="Each">What each must hold at least.</param>
public sealed record TooFew(int Wanted, int There, Metres Each);
