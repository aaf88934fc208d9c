using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.PrintTags;

/// <summary>What the page of tags says, and what stands on a tag.</summary>
public static class TagWords
{
    public const string Title = "Tags to tie on";
    public const string None = "No leftover matches, so there is no tag to print.";
    public const string Back = "Back to my leftovers";
    public const string HowToPrint = "Print this page at its own size. Cut along the dotted lines, punch the hole and tie the tag on.";
    public const string Frames = "The frame tells where the length comes from. Whole is the label, notched is measured, dashed is a guess.";
    public const string Print = "Print the tags";
    public const string NoLength = "length unknown";

    public static string HowMany(int shown, int all) =>
        all > shown ? $"The first {shown} of {all} tags." : $"{Terms.Counted(shown, "tag")}.";

    public static string KeptFor(string what) => $"kept for {what}";

    public static string Weighed(string day) => $"weighed {day}";

    public static string DyeLot(string lot) => $"dye lot {lot}";
}
