namespace StashMatch.Knitting.Designing;

/// <summary>What yarn a brim is knitted from, the best first; in the order of the widening brim sets.</summary>
public enum BrimYarn
{
    /// <summary>One that keeps its shape.</summary>
    KeepsShape,

    /// <summary>One that relaxes with wear.</summary>
    Relaxes,

    /// <summary>One of unknown fibre.</summary>
    Unknown,

    /// <summary>One prone to stretching.</summary>
    Stretches,
}
