using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Matching;

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
        Best = [.. asked.Sizes.Select(s => cells.Where(c => c.Size == s && c.Cannot is null).MaxBy(Standing)).OfType<BagCell>()];
    }

    public BagAsked Asked { get; }

    public IReadOnlyList<int> Counts { get; }

    /// <summary>The best of each size, in the order of the sizes.</summary>
    public IReadOnlyList<BagCell> Best { get; }

    // Of cells that reach as far the one whose yarn is likelier to last is the better hat to show, and only then the one with more stripes.
    private static (Verdict, double, long, double, int) Standing(BagCell cell) =>
        (cell.Verdict, cell.Reach, -cell.Short.Millimetres, Math.Floor(cell.ChanceOfEnough * 100), cell.Stripes);

    public BagCell? Cell(string size, int stripes, Arrangement arrangement) => _cells.GetValueOrDefault((size, stripes, arrangement));
}
