using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>What the tables for a pattern say, on the page, in plain lines and in words.</summary>
public static class TableWords
{
    public const string Title = "The table for the pattern";
    public const string YarnForGrams = "yarn for the gram figures";
    public const string ShowAs = "show as";
    public const string SizesNoneForAll = "sizes (tick none for all)";
    public const string ShowTable = "Show the table";
    public const string SaveCsv = "Save it as CSV";
    public const string SaveText = "Save it as plain text";
    public const string OrCopy = "Or copy it into a word processor, or print the page.";
    public const string TapCount = "Tap a stripe count to see where its figures come from.";
    public const string PlainLines = "The table in plain lines";
    public const string TheTable = "The table";
    public const string AllSizes = "All sizes";
    public const string None = "none";
    public const string CannotBeKnitted = "cannot be knitted";

    /// <summary>The forms a table comes in.</summary>
    public static IReadOnlyDictionary<string, string> Forms { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["one"] = "one table",
        ["pages"] = "one page for each size",
        ["line"] = "plain text, A (B, C, D)",
        ["large"] = "large print",
        ["words"] = "in words, for a screen reader",
    };

    // Columns.
    public const string RowsInStripe = "rows in a stripe";
    public const string DepthOfStripe = "depth of a stripe";
    public const string Figures = "figures";
    public const string Stripe = "a stripe";
    public const string Strand = "each colour of a braid";
    public const string Brim = "the brim";
    public const string Crown = "the crown";
    public const string Seam = "seam and gathering";
    public const string PomPom = "the pom-pom";
    public const string WholeHat = "whole hat";
    public const string StripeTakes = "A stripe takes";
    public const string StrandTakes = "Each colour of a braid takes";
    public const string BrimTakes = "The brim takes";
    public const string CrownTakes = "The crown takes";
    public const string SeamTakes = "Seam and gathering thread take";
    public const string PomPomTakes = "The pom-pom takes";
    public const string WholeHatTakes = "The whole hat takes";

    public static string Yarn(string letter) => $"yarn {letter}";

    public static string YarnTakes(string letter) => $"Yarn {letter} takes";

    // What the figures are.
    public const string RoundedUp = "It is then rounded up to whole metres and yards.";
    public const string LargestCounts = "Where stripes differ, the largest one is shown.";
    public const string Depths = "Depths are to the nearest tenth of a centimetre and eighth of an inch.";
    public const string Estimated = "Estimated";
    public const string EstimatedMeans = "worked out, weighed by nobody in this size.";
    public const string Knitted = "Knitted";
    public const string KnittedMeans = "weighed by the designer.";
    public const string Testers = "Testers";
    public const string TestersMeans = "the most that a tester used who knitted it as written.";

    public static string Includes(string reserve) => $"Every length includes {reserve} % in reserve.";

    public static string IncludesSpoken(string reserve) => $"Every length includes {reserve} per cent in reserve.";

    public static string GramsFor(LabelRatio label, bool typed)
    {
        ArgumentNullException.ThrowIfNull(label);
        return $"Grams are for yarn of {label}{(typed ? "" : ", usual for this weight class")}.";
    }

    public static string GramsForSpoken(LabelRatio label)
    {
        ArgumentNullException.ThrowIfNull(label);
        return string.Create(CultureInfo.InvariantCulture, $"Grams are for yarn of {label.MassInGrams:0.#} grams to {label.LengthInMetres:0.#} metres.");
    }

    /// <summary>Where the testers' factor comes from.</summary>
    public static string EstimatesAre(double factor, bool measured, string from)
    {
        var lengths = measured ? "yarn in the stitches alone" : "printed lengths";
        return string.Create(CultureInfo.InvariantCulture, $"Estimates are {factor:0.00} times the {lengths}, from {from}.");
    }

    public static string Caption(string hat, string size, string reserve) => $"{hat}. {size}. {Includes(reserve)}";

    public static string CaptionOfAll(string hat, string reserve) => $"{hat}. {Includes(reserve)}";

    /// <summary>"Size C, for a head of 52 cm / 20½ in".</summary>
    public static string Size(string size, string? head) => head is null ? $"Size {size}" : $"Size {size}, for a head of {head}";

    public static string HowComeAbout(int stripes, string size) => $"{Terms.Stripes(stripes)} in size {size}: where its figures come from";

    /// <summary>Where a figure comes from.</summary>
    public static string Source(FigureSource source) => source switch
    {
        FigureSource.Tester => "testers",
        FigureSource.Knitted => "knitted",
        _ => "estimated",
    };

    public const string RestEstimated = "the rest estimated";

    // In plain lines.
    public static string SizesLine(string sizes) => $"Sizes: {sizes}";

    public static string HeadLine(string heads, string unit) => $"To fit a head of: {heads} {unit}";

    public static string Line(string head, string figures, string unit) => $"{Terms.Capital(head)}: {figures}{(unit.Length == 0 ? "" : $" {unit}")}";

    // In words.
    public static string StripeHas(int rows, string depth) => $"A stripe has {rows} rows and is {depth} deep.";

    public static string TakesSpoken(string what, string length, string grams) => $"{what} {length}, {grams} grams.";

    /// <summary>Where a row's figures come from, with no signs.</summary>
    public static string FiguresSpoken(string source)
    {
        ArgumentException.ThrowIfNullOrEmpty(source);
        return source switch
        {
            "estimated" => "These figures are estimated.",
            "testers" => "These figures are what testers used.",
            "knitted" => "These figures are what the designer used.",
            var mixed => $"Where these figures come from. {Terms.Capital(mixed).Replace(':', ',').Replace(";", ",", StringComparison.Ordinal)}.",
        };
    }

    // Where the figures come from.
    public const string TheWorking = "Where the figures come from";
    public const string StepByStep = "Step by step";
    public const string StepsCaption = "Step by step. Lengths are to the millimetre, and rounded up only at the end.";
    public const string Step = "step";
    public const string ComesTo = "comes to";
    public const string BasedOn = "based on";
    public const string Printed = "printed, rounded up";
    public const string BackToTable = "Back to the table";

    public static string WorkingOf(string size, int stripes) => $"Where the figures of size {size} in {Terms.Stripes(stripes)} come from";
}
