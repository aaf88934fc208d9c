using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The steps of colour from each stripe to the next, in hundredths of dE00, each to the nearest [ours].</summary>
internal sealed class ColourSteps
{
    /// <summary>A step from or to a colour that is not known: too large for a gradient, none for a contrast.</summary>
    public const int Unknown = 5_000;

    private readonly Puzzle _puzzle;
    private readonly List<(int A, int B)> _pairs = [];

    public ColourSteps(Puzzle puzzle)
    {
        _puzzle = puzzle;
        var parts = puzzle.Hat.Parts;
        foreach (var (a, b) in Grouping.SideBySide(parts))
        {
            var (x, y) = (puzzle.Grouping.GroupOf[a], puzzle.Grouping.GroupOf[b]);
            if (parts[a].Kind == PartKind.Stripe && x != y)
            {
                _pairs.Add((Array.FindIndex(puzzle.Items, i => i.Group == x), Array.FindIndex(puzzle.Items, i => i.Group == y)));
                Groups.Add(x);
                Groups.Add(y);
            }
        }
    }

    /// <summary>The groups whose colours are ordered.</summary>
    public HashSet<int> Groups { get; } = [];

    /// <summary>The sum of all steps between stripes that are covered.</summary>
    public long Sum(int[] binOf, ColourOrder order)
    {
        var sum = 0L;
        foreach (var (a, b) in _pairs)
        {
            if (binOf[a] >= 0 && binOf[b] >= 0)
            {
                sum += _puzzle.StepBetween(binOf[a], binOf[b]) is >= 0 and var step ? step : order == ColourOrder.Gradient ? Unknown : 0;
            }
        }

        return sum;
    }
}
