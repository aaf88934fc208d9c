using StashMatch.Knitting.Hats;

namespace StashMatch.Web.Pieces;

/// <summary>How much yarn this knitter uses, beside most knitters.</summary>
public static class UsageWords
{
    public const string Heading = "How I use yarn";
    public const string WeighOne = "Weigh a swatch or a finished hat";

    /// <summary>"3 % more yarn than most knitters".</summary>
    /// <param name="factor">The yarn a hat really takes, as so many times the yarn in the stitches alone.</param>
    public static string Compared(double factor) => Math.Round(100 * ((factor / Usage.Uncalibrated.Factor) - 1)) switch
    {
        0 => "as much yarn as most knitters",
        > 0 and var more => $"{more:0} % more yarn than most knitters",
        var less => $"{-less:0} % less yarn than most knitters",
    };

    /// <summary>What all that was weighed comes to.</summary>
    /// <param name="usage">What is counted on.</param>
    /// <param name="weighed">Whether anything was weighed, switched off or not.</param>
    public static string Now(Usage usage, bool weighed)
    {
        ArgumentNullException.ThrowIfNull(usage);
        return usage.Calibrated
            ? $"You use {Compared(usage.Factor)}, give or take {100 * usage.Spread:0} %. Your own hats by measurements count on that."
            : $"{(weighed ? "What you weighed is switched off." : "You have weighed no swatch yet.")} So we count on what most knitters use, "
                + $"give or take {100 * usage.Spread:0} %.";
    }

    /// <summary>One swatch, hat or plan it was learnt from.</summary>
    public static string Known(string from, double factor, bool switchedOff) => $"{from}: {Compared(factor)}{(switchedOff ? ", switched off" : "")}";

    /// <summary>After switching.</summary>
    public static string Switched(bool on) => on ? "Switched on." : "Switched off.";

    /// <summary>What to do with what a finished hat taught.</summary>
    public static string Learned(double factor, double spread) => $"You used {Compared(factor)}, give or take {100 * spread:0} %.";
}
