namespace StashMatch.Knitting.Matching;

/// <summary>When two colours side by side can be told apart [all ours].</summary>
public static class ColourRule
{
    /// <summary>dE00 under this reads as one colour.</summary>
    public const double ReadsAsOne = 5;

    /// <summary>dE00 under this is close.</summary>
    public const double Close = 10;

    /// <summary>A braid's strands with a lightness difference under this have the same value.</summary>
    public const double SameValue = 8;

    /// <summary>A braid's strands with a lightness difference under this are soft.</summary>
    public const double SoftValue = 15;
}
