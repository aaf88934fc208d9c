using System.Globalization;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.TesterResults;

/// <summary>What the page of testers says, and the sheet they are sent.</summary>
public static class TesterPageWords
{
    public const string Title = "What did testers really use?";
    public const string Lead = "Send a sheet out and read it back. What testers weighed then replaces the estimates in the hat’s table.";

    // A sheet to send out.
    public const string SendOut = "A sheet to send out";
    public const string PrintIt = "Print it";
    public const string SaveCsv = "Save it as CSV";
    public const string SeveralBack = "One tester may send several back, one for each hat knitted.";

    // Reading sheets back.
    public const string ReadBack = "Read sheets back";
    public const string FileLabel = "one sheet or many, as CSV";
    public const string FileTooLong = "The file is too long for tester sheets.";
    public const string NoName = "A sheet without a name";
    public const string TypeOne = "Type one in";
    public const string OneSheet = "A tester’s sheet";
    public const string Tester = "tester";
    public const string YarnLabel = "label of the yarn, such as 100 g / 400 m";
    public const string WrittenStitches = "written: stitches to 10 cm";
    public const string WrittenRows = "written: rows to 10 cm";
    public const string KnittedStitches = "knitted: stitches to 10 cm";
    public const string KnittedRows = "knitted: rows to 10 cm";
    public const string ExtraRounds = "rounds more (or −fewer)";
    public const string WhatChanged = "what was changed";
    public const string OtherYarn = "another yarn than the pattern’s";
    public const string Myself = "I knitted it myself";
    public const string PartsCaption = "Grams on the scale. Leave out what was not weighed.";
    public const string Before = "before";
    public const string After = "after";
    public const string SaveSheet = "Save this sheet";
    public const string NoSheetYet = "No sheet of this hat has come back yet, so its table is all estimates.";
    public const string Sheets = "Sheets";

    public static string Read(int count, string who) => $"{Terms.Counted(count, "sheet")} read: {who}.";

    public static string Keep(int count) => count == 1 ? "Save it" : "Save them";

    public static string Who(string? tester, string? size) => $"{tester}, size {size}";

    public static string GramsBefore(string part) => $"{Words.Part(part)}, grams before";

    public static string GramsAfter(string part) => $"{Words.Part(part)}, grams after";

    /// <summary>A part, and what it is made of where that is more than its name says.</summary>
    public static string PartWith(string part, string? inside) => inside is null ? Words.Part(part) : $"{Words.Part(part)} ({inside})";

    public static string Saved(string? tester) => $"{tester} is saved.";

    // The sheet itself.
    public const string SheetTitle = "A sheet for testers";
    public const string ChooseAgain = "Choose hat, size and stripes again";
    public const string PleaseWeigh = "Please weigh each ball just before a part, and again just after it. Leave it on whatever it is wound on.";
    public const string NoRightFigure = "Write down what the scale shows; there is no right figure.";
    public const string AboutYou = "About you and your knitting";
    public const string YourName = "your name";
    public const string YourYarn = "yarn, and its label (such as 100 g / 400 m)";
    public const string GaugeWritten = "gauge as written, to 10 cm / 4 in";
    public const string YourGauge = "your gauge after blocking, stitches and rows";
    public const string MoreOrFewer = "rounds or rows more or fewer than written";
    public const string OtherYarnAsked = "another yarn than the pattern’s?";
    public const string Differently = "anything you did differently, such as more rounds or a folded brim";
    public const string GramsInOrder = "Grams, as the scale shows them, in knitting order.";
    public const string PrintOr = "Print it from the browser, or";
    public const string SaveSheetCsv = "save it as CSV";
    public const string BackToTesters = "Back to what testers used";

    public static string SheetFor(string hat, string size, int stripes) => $"{hat}, size {size}, {Terms.Stripes(stripes)}";

    public static string SheetFoot(string title) => $"{title}. Grams, as the scale shows them. Name:";

    public static string Gauge(decimal stitches, decimal rows) => string.Create(CultureInfo.InvariantCulture, $"{stitches:0.##} stitches, {rows:0.##} rows");

    // What the results come to.
    public const string KeptOrAside = "Who is kept, who is set aside";
    public const string Results = "Results";
    public const string Knitted = "knitted";
    public const string Used = "used";
    public const string AgainstEstimate = "against the estimate";
    public const string KeptOrAsideColumn = "kept or set aside";
    public const string AsideCaption = "Set aside: who did not knit it as written. That is a gauge over 5 % off, other rounds, or another yarn.";
    public const string AsideProportion = "So is what is under 0.6 or over 1.6 of the estimate. Of one tester the latest sheet counts.";
    public const string AsideFarOff = "From five testers on, also who is far from the others. Everybody set aside is named.";
    public const string Compares = "How use compares, part by part";
    public const string Factors = "Factors";
    public const string ComparesCaption = "What was used, against the estimate without reserve.";
    public const string Testers = "testers";
    public const string Mean = "mean";
    public const string Range = "90 % range";
    public const string NoRange = "one tester gives no range";
    public const string WhatToPrint = "What to print";
    public const string PrintCaption = "The most that any kept tester used, with the reserve, rounded up. A size nobody knitted stays estimated.";
    public const string LargestCounts = "Where parts of a kind differ, the largest is shown.";
    public const string None = "none";
    public const string WholeTable = "The whole table with these figures";
    public const string ReserveWrong = "The reserve must be a number from 0 to 100.";

    public static string ByDesigner(string tester) => $"{tester} (designer)";

    public static string KnittedAs(string size, int stripes, string? changes) =>
        $"size {size}, {Terms.Stripes(stripes)}{(changes is null ? "" : $" (“{changes}”)")}";

    public static string RangeOf(string low, string high) => $"{low} to {high}";

    // The hat's own factor.
    public const string OwnFactor = "This hat’s own factor";
    public const string LookAgain = "Look at the sheets again, or wait for more.";
    public const string UseNewest = "Use what the sheets say now";
    public const string TestersFactor = "the testers’ factor";

    public static string NotOffered(string why) => $"We do not offer this factor: {why}. {LookAgain}";

    public static string StatesOwn(string times) => $"This hat states its own factor, × {times} the yarn in the stitches alone.";

    public static string Taken(bool off, string times, string percent, string from, string day) =>
        $"{(off ? "Switched off:" : "This hat counts on")} × {times}, give or take {percent} %. It comes from {from}, since {day}.";
}
