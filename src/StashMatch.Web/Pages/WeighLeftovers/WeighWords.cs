using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>What the page of leftovers says: the entry line, the list, the filter and the totals.</summary>
public static class WeighWords
{
    public const string Title = "My leftovers";
    public const string HowToType = "Type along the line and press Enter. The cursor is back at the name for the next ball.";
    public const string Loading = "Loading your leftovers…";
    public const string NothingYet = "Nothing is weighed yet. Put the first ball on the scale: its name and grams are enough.";
    public const string PrintTags = "Print their tags";
    public const string DemoIsInvented = "The leftovers of “The bread bin” are invented.";
    public const string UndoDemo = "Undo: bring the demo back";
    public const string DemoIsBack = "The demo is back.";
    public const string RemoveDemo = "Remove the demo";
    public const string DemoRemoved = "The demo is removed.";
    public const string NothingMatches = "Nothing matches.";
    public const string List = "Leftovers";
    public const string NotThere = "That leftover is no longer here.";
    public const string StillHere = "What you typed is still here.";

    // The entry line.
    public const string Entry = "A leftover";
    public const string CoreHint = "0 g";
    public const string ClassHint = "fingering";
    public const string FibreHint = "80% merino, 20% nylon";
    public const string ColourHint = "green";
    public const string ChooseColour = "Choose the colour";
    public const string CareHint = "30 C mild, flat";
    public const string BagHint = "which bag";
    public const string Singles = "singles";
    public const string Superwash = "superwash";
    public const string HaveNoLabel = "I have no label";
    public const string OrTheSameAs = "or the same as";
    public const string LiveSoon = "Metres and yards show here as you type.";

    // One leftover of the list.
    public const string WeighAgain = "weigh again";
    public const string NothingLeft = "knitted up, nothing left";
    public const string NoLabelNotUsed = "no label, so not used in hats";
    public const string NotForHats = "not for hats";

    // The filter.
    public const string LookFor = "Look for leftovers";
    public const string Find = "find";
    public const string FindHint = "name, code, colour, place";
    public const string SortBy = "sort by";
    public const string FilterBy = "by bag, weight class, fibre, colour";
    public const string AllBags = "all bags";
    public const string AllClasses = "all weight classes";
    public const string FibreFilterHint = "wool, or unknown";
    public const string AnyColour = "with or without";
    public const string HasColour = "has a colour";
    public const string NoColourYet = "no colour yet";
    public const string Only = "only";
    public const string AllLeftovers = "all leftovers";
    public const string ForHats = "for hats";
    public const string TooSmallOrNoLabel = "too small, or no label";
    public const string KeptForSomething = "kept for something";

    // The totals.
    public const string ByClass = "In all, by weight class";
    public const string TotalsCaption = "The leftovers below, without those knitted up. Those without a label count in grams only.";
    public const string Leftovers = "leftovers";
    public const string All = "all";
    public const string ClassUnknown = "unknown";

    /// <summary>What the list can be sorted by.</summary>
    public static IReadOnlyList<(LeftoverOrder Order, string Name)> Orders { get; } =
    [
        (LeftoverOrder.Newest, "newest"), (LeftoverOrder.Longest, "longest"), (LeftoverOrder.Heaviest, "heaviest"), (LeftoverOrder.Name, "name"),
        (LeftoverOrder.Code, "two letters"), (LeftoverOrder.Class, "thinnest"), (LeftoverOrder.Bag, "bag"), (LeftoverOrder.Colour, "colour"),
    ];

    public static string HowMany(int shown, int all) => shown == all ? Terms.Counted(all, "leftover") : $"{shown} of {Terms.Counted(all, "leftover")}";

    public static string ShowAll(int count) => $"Show all {count}";

    public static string InAll(string grams, string length, int count) => $"In all: {grams}, {length}, {Terms.Counted(count, "leftover")}";

    public static string Undo(string what) => $"undo: {what}";

    public static string Undone(string what) => $"Undone: {what}.";

    public static string SameAgain(LoggedLeftover yarn)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        return $"same yarn again as {yarn.Name}: {yarn.Ratio}";
    }

    public static string SameAs(LoggedLeftover yarn)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        return $"{yarn.Name}: {Terms.Of(yarn.Ratio)}";
    }

    /// <summary>Whose label stands there while it is another leftover's.</summary>
    public static string Borrowed(string label, string from) => $"{label} is {from}’s label: right only for the same yarn.";

    /// <summary>What a ball without a label comes to.</summary>
    public static string NoLabelYet(string grams) => $"{grams}. No label yet, so no hat can use it.";

    public static string FinerThanScale(decimal step) => $"You typed more than your scale shows: it shows every {step:0.###} g. Change that if it is finer.";

    public const string ScaleTooCoarse = "Your scale is too coarse for a ball as small as this. Use a finer scale if you can.";

    public static string Saved(string name, string? held) => $"{name} is saved: {held ?? NoLabelNotUsed}.";

    public static string NowWeighs(string name, string grams) => $"{name} now weighs {grams}.";

    public static string TakenOff(Grams used, string name, string? what) => $"{used} of {name} is taken off{(what is null ? "" : $", for {what}")}.";

    public static string TooLittleLeft(string name, string left, Grams wanted) => $"Nothing is taken off. Only {left} of {name} is left, less than {wanted}.";

    public static string IsKnittedUp(string name) => $"{name} is knitted up.";

    public static string Deleted(string name) => $"{name} is deleted.";

    // What undo undoes.
    public static string Weighing(string name) => $"weighing {name}";

    public static string WeighingAgain(string name) => $"weighing {name} again";

    public static string WhatYouKnitted(string name) => $"what you knitted from {name}";

    public static string KnittingUp(string name) => $"{name} knitted up";

    public static string Deleting(string name) => $"deleting {name}";

    public static string TheChange(string name) => $"the change to {name}";

    public static string KeptFor(string what) => $"kept for {what}";

    public static string KeptForHats(string length) => $"{length} kept for your hats";

    /// <summary>After rows of a table were saved.</summary>
    public static string RowsSaved(int saved, int known)
    {
        var here = known > 0 ? $" {known} already here, left as {(known == 1 ? "it was" : "they were")}." : "";
        return $"{(saved == 1 ? "1 row is" : $"{saved} rows are")} saved.{here}";
    }
}
