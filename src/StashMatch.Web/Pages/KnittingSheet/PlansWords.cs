using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>What the list of hats being knitted says.</summary>
public static class PlansWords
{
    public const string Title = "Knitting now";
    public const string Nothing = "You are knitting nothing yet.";
    public const string CanIMakeIt = "Can I make it?";
    public const string HowToBegin = "Find a hat there, then press “Knit this”.";
    public const string WhatItIs = "Each hat here keeps its yarn, so that no other hat takes it.";
    public const string OpenSheet = "open the sheet";
    public const string KeepYarn = "keep its yarn";
    public const string FreeYarn = "free its yarn";
    public const string RenameOrDelete = "rename or delete";
    public const string Rename = "rename";
    public const string DeleteMeans = "This deletes the hat and its sheet. The yarn stays in your bag.";
    public const string Kept = "Its yarn is kept for it.";
    public const string Free = "Its yarn is free for other hats.";
    public const string Gone = "That hat is no longer here.";

    /// <summary>What was done, by the word in the address.</summary>
    public static string? Done(string? what) => what switch
    {
        "kept" => Kept,
        "free" => Free,
        "copied" => "Copied. The copy keeps no yarn: the first hat has it.",
        "renamed" => "Renamed.",
        "deleted" => "Deleted. Its yarn is free again.",
        "gone" => Gone,
        _ => null,
    };

    /// <summary>How far it is knitted.</summary>
    public static string Far(int done, int all, string? ahead) => $"{done} of {all} parts done.{(ahead is null ? "" : $" From here: {ahead}.")}";

    public static string FinishedOn(string day) => $"Finished on {day}.";

    /// <summary>Why its yarn cannot be kept.</summary>
    public static string Clash(PromiseClash clash)
    {
        ArgumentNullException.ThrowIfNull(clash);
        var others = string.Concat(clash.Others.Select(o => $" {Shown.Both(o.Promised)} is kept for {o.Name}."));
        return $"{clash.Name}: {Shown.BothUp(clash.Wanted)} needed, {Shown.Both(clash.Free)} free.{others}";
    }
}
