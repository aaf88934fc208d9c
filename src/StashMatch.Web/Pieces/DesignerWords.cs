namespace StashMatch.Web.Pieces;

/// <summary>What the three pages for designers are called.</summary>
public static class DesignerWords
{
    public const string ForDesigners = "For designers";
    public const string Table = "The table for the pattern";
    public const string Kit = "Will this kit make every size?";
    public const string Testers = "What did testers really use?";
}
