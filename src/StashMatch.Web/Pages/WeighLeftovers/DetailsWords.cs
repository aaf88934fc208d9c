using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>What the details of one leftover say, and its history.</summary>
public static class DetailsWords
{
    public const string WeighsNow = "weighs now, grams";
    public const string SaveWeight = "Save the weight";
    public const string GramsKnitted = "or grams you knitted";
    public const string Into = "into";
    public const string IntoHint = "mittens";
    public const string TakeOff = "take off";
    public const string KnittedUpNothingLeft = "Knitted up, nothing left";
    public const string TooSmall = Terms.TooSmall;
    public const string LargeEnough = "large enough to use";
    public const string NotForHats = "not for hats";
    public const string ForHatsAgain = "for hats again";
    public const string PrintTag = "print its tag";
    public const string WhatItIs = "What it is";
    public const string TwoLetters = "two letters";
    public const string ChooseAnother = "Choose another colour";
    public const string HowItIsSpun = "how it is spun";
    public const string WhereKept = "where kept";
    public const string DyeLot = "dye lot";
    public const string KeepFor = "keep for";
    public const string KeepForHint = "nothing";
    public const string Note = "note";
    public const string History = "History";

    public static string PhotoOf(string name) => $"{name}, the photo its colour was taken from";

    public static string MoreThanThereIs(string left) => $"is more than the {left} there is: weigh what is left instead";

    public static string Changed(string name) => $"{name} is changed.";

    public static string TooSmallNow(string name, bool small) => small ? $"{name} is too small to use." : $"{name} can be used again.";

    public static string ForHatsNow(string name, bool forHats) => forHats ? $"{name} is for hats again." : $"{name} is not for hats.";

    // The history.
    public const string Chart = "What was left, step by step; the same in words below";
    public const string NothingLeft = "knitted up: nothing left";
    public const string Deleted = "deleted";

    /// <summary>What kind of step it was, where it is undone.</summary>
    public static string Step(EntryKind? kind) => kind switch
    {
        EntryKind.Weighed => "the weighing",
        EntryKind.Used => "what you knitted",
        EntryKind.KnittedUp => "knitted up",
        EntryKind.Removed => Deleted,
        _ => "the change",
    };

    public static string Weighed(string left, Grams core) => $"weighed: {left}{(core > default(Grams) ? $", {core} of core or bowl taken off" : "")}";

    public static string Knitted(Grams? used, string? into, string left) => $"{used} knitted{(into is null ? "" : $" into {into}")}: {left} left";

    public static string Undone(EntryKind? kind) => $"undone: {Step(kind)}";

    public static string Entry(string day, string what, bool undone) => $"{day}, {what}{(undone ? " (undone)" : "")}";

    /// <summary>One change of a detail: "now kept for: gift".</summary>
    public static string Change(FieldChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        var field = Field(change.Field);
        return (change.Before.Length, change.After.Length) switch
        {
            (0, _) => $"now {field}: {change.After}",
            (_, 0) => $"no longer {field}: {change.Before}",
            _ => $"{field}: {change.Before}, now {change.After}",
        };
    }

    // What the ledger calls a detail, as the page calls it.
    private static string Field(string name) => name switch
    {
        "code" => TwoLetters,
        "labelGrams" => "label, grams",
        "labelOunces" => "label, ounces",
        "labelMetres" => "label, metres",
        "labelYards" => "label, yards",
        "ratioFrom" => Terms.LengthFrom,
        "weightClass" => Terms.ClassField,
        "make" => "spun",
        "keptIn" => "kept in",
        "keptBackFor" => "kept for",
        "notForHats" => NotForHats,
        "crumb" => TooSmall,
        "lot" => DyeLot,
        _ => name,
    };
}
