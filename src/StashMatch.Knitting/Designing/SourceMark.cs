namespace StashMatch.Knitting.Designing;

/// <summary>How well a constant is founded.</summary>
public enum SourceMark
{
    /// <summary>The hat itself says so.</summary>
    Told,

    /// <summary>Read in the source named.</summary>
    Source,

    /// <summary>From the literature, not re-read.</summary>
    Memory,

    /// <summary>Common practice, no source.</summary>
    Practice,

    /// <summary>Our own judgement.</summary>
    Ours,

    /// <summary>Weighed while it was knitted.</summary>
    Weighed,
}
