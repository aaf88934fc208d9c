using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Matching.Search;

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

    /// <summary>How two stripes side by side look: "one colour", "close" or "different".</summary>
    public static string Stripes(YarnColour a, YarnColour b) => ColourDifference.Ciede2000(a.Lab, b.Lab) switch
    {
        < ReadsAsOne => "one colour",
        < Close => "close",
        _ => "different",
    };

    /// <summary>How a braid of two colours shows in a black-and-white photo: "same value", "soft" or "good".</summary>
    public static string Braid(YarnColour a, YarnColour b) => Math.Abs(a.Lab.L - b.Lab.L) switch
    {
        < SameValue => "same value",
        < SoftValue => "soft",
        _ => "good",
    };
}
