using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.FromThisBag;

/// <summary>What the page shows of the cells, in words; no sums of its own.</summary>
public sealed class BagView
{
    private readonly Dictionary<(string, int, Arrangement), BagCell> _cells;

    public BagView(BagAsked asked, IReadOnlyList<BagCell> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        Asked = asked ?? throw new ArgumentNullException(nameof(asked));
        _cells = cells.ToDictionary(c => (c.Size, c.Stripes, c.Arrangement));
        Counts = [.. cells.Select(c => c.Stripes).Distinct().Order()];
        Best = [.. Knitting.Bags.FromThisBag.BestFirst(cells).Where(c => c.Cannot is null).DistinctBy(c => c.Size, StringComparer.Ordinal)];
    }

    public BagAsked Asked { get; }

    public IReadOnlyList<int> Counts { get; }

    /// <summary>The best of each size, best first.</summary>
    public IReadOnlyList<BagCell> Best { get; }

    public BagCell? Cell(string size, int stripes, Arrangement arrangement) => _cells.GetValueOrDefault((size, stripes, arrangement));

    /// <summary>"6 stripes", "1 stripe".</summary>
    public static string Stripes(int count) => $"{count} {(count == 1 ? "stripe" : "stripes")}";

    /// <summary>A cell in a sentence: "Size F, 8 stripes, own colours: yes, 92 %".</summary>
    public static string Sentence(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return $"Size {cell.Size}, {Stripes(cell.Stripes)}, {Words.Of(cell.Arrangement)}: {Outcome(cell)}";
    }

    /// <summary>"yes, 92 %", "no, short by 3.1 m / 3.4 yd".</summary>
    public static string Outcome(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Cannot is { } cannot ? $"cannot be knitted so. {cannot.Reason}"
            : cell.Verdict == Verdict.No ? $"no, short by {Shown.BothUp(cell.Short)}"
            : $"{Words.Of(cell.Verdict)}, {Shown.Chance(cell.ChanceOfEnough)}";
    }

    /// <summary>What stands behind the word: the weakest part, and what it has to spare or that it lacks.</summary>
    public static string Weakest(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.WeakestPart is not { } part ? ""
            : cell.Verdict == Verdict.No ? $"{Words.The(part)} lacks most{(cell.Why == Why.Colour ? "; colours alone stand in the way" : "")}"
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"weakest: {Words.The(part)}, {cell.MarginPercent:0.0} % to spare");
    }
}
