namespace StashMatch.Knitting.Yarns;

/// <summary>Thickness of a yarn, 0 to 7 (Craft Yarn Council, Standard Yarn Weight System) [source].</summary>
public enum WeightClass
{
    /// <summary>0, Lace.</summary>
    Lace,

    /// <summary>1, Super Fine.</summary>
    SuperFine,

    /// <summary>2, Fine.</summary>
    Fine,

    /// <summary>3, Light.</summary>
    Light,

    /// <summary>4, Medium.</summary>
    Medium,

    /// <summary>5, Bulky.</summary>
    Bulky,

    /// <summary>6, Super Bulky.</summary>
    SuperBulky,

    /// <summary>7, Jumbo.</summary>
    Jumbo,
}
