namespace StashMatch.Web.Layout;

/// <summary>Every word of the frame round all pages: menu, skip link, footer.</summary>
public static class FrameWords
{
    public const string Skip = "Skip to content";
    public const string Pages = "Pages";
    public const string MainPages = "Main pages";
    public const string MorePages = "More pages";
    public const string CanIMakeIt = "Can I make it?";
    public const string MyLeftovers = "My leftovers";
    public const string WhatWillItMake = "What will it make?";
    public const string KnittingNow = "Knitting now";
    public const string Hats = "Hats";
    public const string ForDesigners = "For designers";
    public const string Settings = "Settings";
    public const string DemoBag = "demo bag";
    public const string AllInvented = ", all invented";
    public const string Stays = "Everything stays on this computer.";
    public const string Help = "Help with words";
    public const string ForPrograms = "For programs: the open interface";
    public const string NoScripts = "The fields of this page need scripts, and scripts are blocked here. You can still read it.";
}
