using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.DescribeHat;

/// <summary>What the page of hats says.</summary>
public static class HatWords
{
    public const string Title = "Hats";
    public const string Lead = "Describe a hat by its measurements, or type what its pattern prints. Saved, it can be made from your leftovers.";
    public const string Form = "A hat";
    public const string OpenFile = "Open a hat file";
    public const string StartFrom = "start from";
    public const string HowDescribed = "how it is described";
    public const string ByMeasurements = "by measurements";
    public const string ByPrintedTable = "by its printed table";
    public const string SaveThisHat = "Save this hat";
    public const string CorrectFields = "Correct the marked fields to save.";
    public const string CanIMakeIt = "Can I make it?";
    public const string TableForPattern = "The table for the pattern";
    public const string FileTooLong = "The file is too long for a hat.";

    public static string Saved(string name) => $"{name} is saved.";

    public static string Opened(string? name) => $"{(string.IsNullOrEmpty(name) ? "The hat" : name)} is among your hats now.";

    // By measurements.
    public const string Knitted = "knitted";
    public const string SideToSide = "side to side, flat";
    public const string BrimUpRound = "brim up, in the round";
    public const string BrimUpFlat = "brim up, flat and seamed";
    public const string MeasuresIn = "measures in";
    public const string Centimetres = "centimetres";
    public const string Inches = "inches";
    public const string BrimDepthLabel = "brim depth (empty for none)";
    public const string BrimDepth = "brim depth";
    public const string BrimWorn = "brim single or folded";
    public const string Single = "single";
    public const string Folded = "folded";
    public const string BrimFit = "brim fit";
    public const string Snug = "snug";
    public const string Easy = "easy";
    public const string Rib = "rib";
    public const string RibOne = "1×1 rib";
    public const string RibTwo = "2×2 rib";
    public const string BindOff = "bind-off";
    public const string CastOn = "cast-on";
    public const string Plain = "plain";
    public const string Tubular = "tubular";
    public const string Stretchy = "stretchy";
    public const string Braids = "braids";
    public const string NoBraids = "none";
    public const string BetweenStripes = "between stripes";
    public const string BesideBrimToo = "beside the brim too";
    public const string StrandsInBraid = "strands in a braid";
    public const string Two = "two";
    public const string OneSideways = "one, sideways";
    public const string StrandsFrom = "strands from";
    public const string FromStripes = "the stripes beside it";
    public const string FromScraps = "scraps";
    public const string DecreaseLines = "lines of decreases";
    public const string CrownYarn = "crown yarn";
    public const string StripesYarn = "the stripes’ yarn";
    public const string OwnYarn = "its own yarn";
    public const string AllAlike = "all alike";
    public const string ByProportion = "by proportion";
    public const string ByDepth = "each its own depth";
    public const string FewestStripes = "fewest stripes";
    public const string MostStripes = "most stripes";
    public const string DepthOfEach = "depth of each";
    public const string DepthsInOrder = "depth of each, from the first";
    public const string ProportionOfEach = "proportion of each";
    public const string ProportionsInOrder = "proportion of each, from the first";
    public const string PomPomLabel = "pom-pom takes, metres (empty for none)";
    public const string PomPom = "the pom-pom";
    public const string SizesCaption =
        "A head size is enough. The hat is then 90 % of it round and 40 % of it high. A circumference with a height overrides it.";
    public const string Head = "head";
    public const string Circumference = "circumference";
    public const string Height = "height";
    public const string StitchCount = "stitch count, if fixed";
    public const string AddSize = "add a size";

    public static string OfSize(string what, int number) => $"{what} of size {number}";

    public static string SizeNumber(int number) => $"size {number}";

    // By its printed table.
    public const string LengthsIn = "lengths in";
    public const string ReserveIs = "the reserve is";
    public const string NotIncluded = "not included";
    public const string Included = "included";
    public const string TheTable = "the table";
    public const string PasteTable = "Paste the table from a spreadsheet, or type it.";
    public const string FirstRow = "The first row is: part, yarn, then the sizes.";
    public const string OtherRows = "A row for each part follows: brim, stripe 1, braid 1 first colour, crown, seam.";
    public const string TableHint = "part; yarn; A; B\nbrim; M; 19; 20,9\nstripe 1; S1; 10; 11";
    public const string TotalRows = "Leave the part empty where the pattern gives one total for a letter.";

    // The hat so far.
    public const string SoFar = "The hat so far";
    public const string WhatItTakes = "What it takes";
    public const string WholeHat = "whole hat";
    public const string LongestStripe = "the longest stripe";
    public const string BraidStrand = "each colour of a braid";
    public const string Brim = "the brim";
    public const string Crown = "the crown";
    public const string Seam = "seam and gathering thread";
    public const string RowByRow = "Row by row";
    public const string PrintedTails = "Printed lengths include their tails.";

    public static string ForAHead(bool inches) => $"for a head of, {(inches ? "inches" : "cm")}";

    public static string SizeTitle(string hat, string size) => $"{hat}, size {size}";

    public static string Takes(string size, int stripes, string usage) =>
        $"What size {size} in {Terms.Stripes(stripes)} takes. Every length includes 10 % in reserve. {usage}";

    public static string Counted(Usage usage)
    {
        ArgumentNullException.ThrowIfNull(usage);
        return $"Counted with {UsageWords.Compared(usage.Factor)}, give or take {100 * usage.Spread:0} %.";
    }

    /// <summary>A run of like rows: "38 rows of 50 stitches, stockinette".</summary>
    public static string Run(RowRun run, RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(plan);
        var how = run.Pattern switch
        {
            StitchPattern.Rib => "rib",
            StitchPattern.PickUp => "picked up",
            StitchPattern.Decrease => "after decreases",
            StitchPattern.TubularEdge => "tubular edge",
            StitchPattern.BraidSetUp => "braid set-up",
            StitchPattern.BraidOver => plan.IsKnitted(run.Pattern) ? "braid, knitted from the wrong side, yarns crossed over" : "braid, purled, yarns crossed over",
            StitchPattern.BraidUnder => "braid, purled, yarns crossed under",
            _ => "stockinette",
        };
        return $"{Terms.Counted(run.Rows, "row")} of {run.Stitches} stitches, {how}";
    }

    public static string Section(string kind, int number, IEnumerable<RowRun> runs, RowPlan plan) =>
        $"{kind}{(number > 0 ? $" {number}" : "")}: {string.Join("; then ", runs.Select(r => Run(r, plan)))}";

    /// <summary>What to mind where gauge and weight class do not go together.</summary>
    public static string UnusualGauge(decimal stitches, IEnumerable<WeightClass> usual, WeightClass said)
    {
        var classes = string.Join(" or ", usual.Select(Terms.Of));
        return string.Create(
            CultureInfo.InvariantCulture, $"{stitches:0.#} stitches to 10 cm is usual for {classes}, not for {Terms.Of(said)}. Check them both.");
    }

    // At one's own gauge.
    public const string MyGauge = "At my own gauge";
    public const string MyStitches = "my stitches to 10 cm";
    public const string MyRows = "my rows to 10 cm";
    public const string UseMyGauge = "Use my gauge for this hat";
    public const string AtMyGauge = "The hat is at your gauge now, but not saved yet.";

    public static string ComesOut(string round, string height) => $"At your gauge the same counts come out {round} round, and {height} above the brim.";

    public static string ItTakes(string bare, string withReserve) => $"They take {bare}, or {withReserve} with 10 % in reserve.";

    public static string KeepsGauge(string stitches, string rows) =>
        $"The hat itself keeps {stitches} stitches and {rows} rows to 10 cm. Change it to your gauge, and each size fits its head again.";

    // Hats of one's own.
    public const string MyHats = "My own hats";
    public const string ItsTable = "its table";
    public const string ItsFile = "save its file";

    // What was weighed.
    public const string WeighSwatch = "Weigh a swatch";
    public const string Swatch = "A swatch";
    public const string StitchesCastOn = "stitches cast on";
    public const string RowsKnitted = "rows knitted";
    public const string SwatchWeighs = "the swatch weighs, grams";
    public const string YarnsLabel = "the yarn’s label";
    public const string UseFromNow = "Use it from now on";
    public const string WeighHat = "Weigh a finished hat";
    public const string FinishedHat = "A finished hat";
    public const string TheHat = "the hat";
    public const string SizeKnitted = "size knitted";
    public const string StripesKnitted = "stripes knitted";
    public const string AllOrPart = "whole hat, or one part";
    public const string GramsUsed = "grams used";

    public static string SwatchOf(string stitches, string rows, string grams, string label) => $"a swatch of {stitches} × {rows}, {grams} g of {label}";

    public static string HatOf(string size, string part, string grams, string label) => $"a finished hat, size {size}, {part}, {grams} g of {label}";
}
