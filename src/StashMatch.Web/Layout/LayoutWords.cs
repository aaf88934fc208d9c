namespace StashMatch.Web.Layout;

/// <summary>What stands round every page, and on the pages for what went wrong.</summary>
public static class LayoutWords
{
    public const string Description = "Weigh your leftover yarn, and see whether it makes a striped, braided hat.";
    public const string SkipToContent = "Skip to content";
    public const string Menu = "Menu";

    // The menu.
    public const string CanIMakeIt = "Can I make it?";
    public const string MyLeftovers = "My leftovers";
    public const string WhatWillItMake = "What will it make?";
    public const string KnittingNow = "Knitting now";
    public const string Hats = "Hats";
    public const string ForDesigners = "For designers";
    public const string Settings = "Settings";
    public const string Help = "Help with words";

    // The foot.
    public const string StaysHere = "Everything stays on this computer.";
    public const string OpenInterface = "For programs: the open interface";

    // Without scripts.
    public const string NoScripts = "This page needs scripts to change anything, and they are blocked. You can still read it.";
    public const string WorkWithout = "These pages work without scripts:";
    public const string Tags = "tags";
    public const string Tables = "tables";

    // When the page has lost the program, or something broke.
    public const string LostContact = "Lost contact with StashMatch. Trying again…";
    public const string TypedIsKept = "What you typed is kept.";
    public const string StillLost = "Still no contact, so buttons do nothing yet. Trying again every few seconds.";
    public const string Broke = "Something went wrong. What you saved is safe.";
    public const string LoadAgain = "Load the page again";

    // Error pages.
    public const string NotFoundTitle = "Page not found";
    public const string NotFoundHeading = "There is no page here";
    public const string NotFoundWhy = "The address may be mistyped.";
    public const string WeighOne = "Weigh a leftover";
    public const string SorryTitle = "Something went wrong";
    public const string SorryHeading = "Something went wrong here";
    public const string SorryWhy = "The fault is ours. What you saved is safe.";
    public const string StartAgain = "Start again";
}
