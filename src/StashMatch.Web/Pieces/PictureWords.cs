using StashMatch.Knitting.Hats;
using StashMatch.Pictures;

namespace StashMatch.Web.Pieces;

/// <summary>What is said of a drawn hat, and of an order of colours.</summary>
public static class PictureWords
{
    public const string Drawing = "The hat, drawn. The arrow keys go through its parts in knitting order.";
    public const string TapPart = "Tap a part to see its yarn.";
    public const string InWords = "The drawing in words";
    public const string OnTheHead = "On the head.";
    public const string Sketched = "On the head, sketched from the printed lengths.";

    public static string PieceTitle(string title) => $"{title}, the knitted piece";

    public static string WornTitle(string title, bool sketched) => $"{title}, {(sketched ? "a sketch" : "on the head")}";

    /// <summary>The knitted piece in figures.</summary>
    public static string Piece(RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var row = plan.Construction == Construction.BrimUpRound ? "round" : "row";
        var braids = plan.Braids == 0 ? "" : $" It has {Terms.Counted(plan.Braids, "braid")}.";
        return $"The knitted piece: {plan.BodyStitches} stitches × {Terms.Counted(plan.BodyRows, row)}, {Shown.Depth(plan.Circumference)} round; "
            + $"cast on at the {(plan.Construction == Construction.SideToSide ? "left" : "foot")}. "
            + $"It is {Shown.Depth(plan.BodyHeight)} {(plan.BrimStitches > 0 ? $"above a brim of {plan.BrimStitches} stitches" : "high")}.{braids}";
    }

    public static string InOrder(IEnumerable<StripColour> stripes) =>
        $"Stripes in order: {string.Join(", ", stripes.Select(s => s.Code is { Length: > 0 } code ? $"{s.Name} ({code})" : s.Name))}";
}
