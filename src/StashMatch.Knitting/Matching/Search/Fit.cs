namespace StashMatch.Knitting.Matching.Search;

/// <summary>Which leftovers may serve a class of items, metres and colours aside.</summary>
internal sealed class Fit
{
    public Fit(bool[] bins)
    {
        Bins = bins;
        var first = Array.IndexOf(bins, true);
        OnlyBin = first >= 0 && Array.LastIndexOf(bins, true) == first ? first : -1;
        All = Array.TrueForAll(bins, b => b);
    }

    public bool[] Bins { get; }

    /// <summary>The one leftover that may serve, or -1 where there are more, or none.</summary>
    public int OnlyBin { get; }

    /// <summary>Whether every leftover may.</summary>
    public bool All { get; }
}
