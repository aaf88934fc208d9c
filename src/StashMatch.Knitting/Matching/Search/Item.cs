namespace StashMatch.Knitting.Matching.Search;

/// <summary>What a group may share a leftover with under own colours.</summary>
internal enum Role
{
    /// <summary>Strands and seam: anything.</summary>
    Free,

    /// <summary>A stripe: no other stripe, brim or crown.</summary>
    Stripe,

    /// <summary>Brim or crown: no stripe.</summary>
    Head,
}

/// <summary>A group of parts to be covered from one leftover, in whole millimetres. A group held double from two leftovers makes two items.</summary>
internal sealed record Item(int Index, int Group, long Need, int Band, Role Role, bool HasBrim, int Class);

/// <summary>Like items: same need, band, role and choice of leftovers.</summary>
internal sealed record ItemClass(long Need, int Band, Role Role, ColourNeighbours Neighbours, Fit Fit, int Count)
{
    /// <summary>Whether each leftover may serve it.</summary>
    public bool[] Fits => Fit.Bins;

    /// <summary>The one leftover that may serve it, or -1 where there are more, or none.</summary>
    public int OnlyBin => Fit.OnlyBin;
}

/// <summary>What one leftover takes: how many of each class. Which of several equal leftovers it is, is still open.</summary>
internal sealed record Slot(int[] Members, int[] Counts);
