namespace StashMatch.Knitting.Matching;

/// <summary>What a person should know before casting on.</summary>
public enum WarningCode
{
    /// <summary>The brim's yarn is prone to stretching.</summary>
    BrimStretch,

    /// <summary>The brim's yarn relaxes with wear.</summary>
    BrimRelax,

    /// <summary>The brim's fibre is not known.</summary>
    BrimUnknownFibre,

    /// <summary>A leftover of another weight class.</summary>
    WeightClassMix,

    /// <summary>Two colours side by side are close.</summary>
    LowContrast,

    /// <summary>A braid's strands have the same value.</summary>
    BraidSameValue,

    /// <summary>A colour is not known.</summary>
    ColourUnknown,

    /// <summary>Machine-washable wool with untreated wool.</summary>
    CareMix,

    /// <summary>A strong colour beside a pale one.</summary>
    ColourRun,

    /// <summary>One scale step is much against this weight.</summary>
    CoarseScale,

    /// <summary>The label ratio is guessed.</summary>
    GuessedRatio,

    /// <summary>Yarn and gauge do not belong together: one of them may be mistyped.</summary>
    GaugeOrLabel,

    /// <summary>The label ratio lies far outside what is usual for the weight class said.</summary>
    LabelOrClass,

    /// <summary>The first and the last stripe of a side-to-side hat meet at the seam and look the same.</summary>
    SeamSameColour,
}

/// <summary>A warning as typed facts; sentences are made from it elsewhere.</summary>
/// <param name="Code">What it is about.</param>
/// <param name="Part">The part concerned, if one is.</param>
/// <param name="Leftover">The leftover concerned, if one is.</param>
/// <param name="OtherPart">The second part concerned, if one is.</param>
/// <param name="OtherLeftover">The second leftover concerned, if one is.</param>
/// <param name="CloseCall">Within 3 points of a boundary of the brim rule.</param>
public sealed record Warning(WarningCode Code, string? Part, string? Leftover, string? OtherPart = null, string? OtherLeftover = null, bool CloseCall = false);

/// <summary>A usual caution; no legal claim.</summary>
public enum CautionCode
{
    /// <summary>Under threes: nothing small that can come off.</summary>
    SmallParts,

    /// <summary>Children: no ties or long cords.</summary>
    Cords,

    /// <summary>Babies: not for sleep, not indoors or in a warm car seat.</summary>
    NotForSleep,

    /// <summary>Stranded braids: ends woven in, no long floats.</summary>
    Floats,

    /// <summary>Rubber elastic or angora: ask first.</summary>
    AskFirst,

    /// <summary>The size does not say whose head it is for: is it for a child?</summary>
    ForAChild,
}
