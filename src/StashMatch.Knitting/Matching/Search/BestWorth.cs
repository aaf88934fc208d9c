namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Of all ways to share out the same items, the one of most worth. Classes are priced (a Lagrangian bound over what one leftover can take),
/// choices too dear for the gap are struck out, and a table over the leftovers is deepened until its first full path: that path is best.
/// </summary>
/// <remarks>
/// <code>
///  prices -> bound     gap 300: choices within -> table -> no full path
///                      gap 600: choices within -> table -> the cheapest full path -> its colours can be arranged: best
///                                                                                -> they cannot: the next paths in turn
/// </code>
/// </remarks>
internal sealed class BestWorth
{
    private const long MostMoves = 10_000_000;
    private const long MostPathMoves = 600_000;
    private const int ArrangeSteps = 5_000;
    private const int MostArrangeSteps = 60_000;

    // Least short is asked of every cell of a table, so it takes fewer steps.
    private const int ShareOfLeastShort = 6;
    private const int MostClusters = 4;
    private const double Rounding = 1e-3;
    private readonly Puzzle _puzzle;
    private readonly int[] _target;
    private readonly long[] _capacity;
    private readonly Worth _worth;
    private readonly CancellationToken _cancel;
    private readonly List<Cluster> _clusters = [];
    private Arranger? _arranger;
    private readonly int _share;
    private int _arrangeSteps;

    public BestWorth(Puzzle puzzle, long[] capacity, Worth worth, CancellationToken cancel) =>
        (_puzzle, _capacity, _worth, _target, _cancel, _share, _arrangeSteps) = (
            puzzle, capacity, worth, Array.ConvertAll(puzzle.Classes, c => c.Count), cancel,
            worth.MayOverfill ? ShareOfLeastShort : 1, MostArrangeSteps / (worth.MayOverfill ? ShareOfLeastShort : 1));

    /// <summary>The leftover of each item in the best plan, where one was found.</summary>
    public int[]? BinOf { get; private set; }

    /// <summary>Looks for the plan of most worth. True where <see cref="BinOf"/> is proven so, or, with none, where the plan in hand is.</summary>
    /// <param name="atLeast">The worth of a plan already in hand.</param>
    public bool Search(long atLeast)
    {
        var patterns = Patterns.Of(_puzzle, _target, _capacity, _worth);
        if (!patterns.Complete || BinKind.Sort(patterns, _capacity) is not { } kinds)
        {
            return false;
        }

        var prices = new Prices(patterns, kinds);
        prices.Lower(atLeast, _cancel);
        Array.ForEach(kinds, k => k.SortByCost());
        var widest = prices.Bound - atLeast + Rounding;
        if (widest < 1)
        {
            return true;
        }

        var (gap, moves, pathMoves) = (Math.Min(widest, Math.Max(300, widest / 64)), MostMoves / _share, MostPathMoves / _share);
        while (true)
        {
            switch (Try(patterns, prices, gap, ref moves, ref pathMoves))
            {
                case true:
                    return true;
                case null:
                    return false;
                default:
                    if (gap >= widest)
                    {
                        return true;
                    }

                    break;
            }

            gap = Math.Min(widest, gap * (gap < 2_000 ? 2 : 1.5));
        }
    }

    // True where a path was accepted; false where all within the gap were refused for good; null where steps ran out.
    private bool? Try(Patterns patterns, Prices prices, double gap, ref long moves, ref long pathMoves)
    {
        if (_clusters.Count == 0 && WorthTable.StatesOf(patterns) <= WorthTable.MostStates)
        {
            if (AllChoices.Within(patterns, prices, gap, out var no, anyColour: true) is not { } few)
            {
                return null;
            }

            var path = no ? [] : WorthTable.Cheapest(few, gap, ref moves, out no, _cancel);
            if (path is null || no)
            {
                return path is null ? null : false;
            }

            if (Accepts(few.ToSlots(path)) == Found.Yes)
            {
                return true;
            }
        }

        if (AllChoices.Within(patterns, prices, gap, out var none) is not { } layers)
        {
            return null;
        }

        if (none)
        {
            return false;
        }

        // The cheapest cannot be arranged so that its colours show: all others in turn.
        while (true)
        {
            var certain = true;
            Cluster? overfull = null;
            using var paths = new WorthPaths(layers, prices.Kinds, _clusters, pathMoves);
            var tried = paths.Try(
                gap,
                path =>
                {
                    var slots = layers.ToSlots(path);
                    var found = Accepts(slots);
                    certain &= found != Found.Unknown;
                    overfull = found == Found.Yes || _clusters.Count == MostClusters ? null : Overfull(slots);
                    return found == Found.Yes || overfull is not null;
                },
                _cancel);
            pathMoves = paths.MovesLeft;
            if (overfull is not null)
            {
                _clusters.Add(overfull);
                continue;
            }

            return certain ? tried : null;
        }
    }

    private Found Accepts(List<Slot> slots)
    {
        _arranger ??= new Arranger(_puzzle);
        var found = _arranger.Arrange(slots, Math.Min(ArrangeSteps, _arrangeSteps), out var binOf);
        _arrangeSteps -= _arranger.StepsTaken;
        BinOf = found == Found.Yes ? binOf : BinOf;
        return found;
    }

    // Leftovers that all read as one colour and serve more items together than may stand apart.
    private Cluster? Overfull(List<Slot> slots)
    {
        var limits = _puzzle.Limits;
        foreach (var first in slots)
        {
            var (alike, all) = (new List<Slot>(), new List<int>());
            foreach (var slot in slots.Where(s => ReferenceEquals(s, first)).Concat(slots.Where(s => !ReferenceEquals(s, first))))
            {
                if (Array.TrueForAll(slot.Members, m => all.TrueForAll(a => a == m || !_puzzle.MayTouch(a, m))) && AllAlike(slot.Members))
                {
                    alike.Add(slot);
                    all.AddRange(slot.Members.Except(all));
                }
            }

            var (strands, others) = (Sum(alike, ColourNeighbours.Strand), Sum(alike, ColourNeighbours.Other));
            if (strands <= limits.Strands && others <= limits.Others)
            {
                continue;
            }

            for (var bin = 0; bin < _capacity.Length; bin++)
            {
                if (!all.Contains(bin) && all.TrueForAll(a => !_puzzle.MayTouch(a, bin)))
                {
                    all.Add(bin);
                }
            }

            return new Cluster([.. all], strands > limits.Strands ? limits.Strands : 0, others > limits.Others ? limits.Others : 0);
        }

        return null;
    }

    private bool AllAlike(int[] members) => Array.TrueForAll(members, m => m == members[0] || !_puzzle.MayTouch(m, members[0]));

    private int Sum(List<Slot> slots, ColourNeighbours crowd)
    {
        var sum = 0;
        for (var c = 0; c < _target.Length; c++)
        {
            sum += _puzzle.Classes[c].Neighbours == crowd ? slots.Sum(s => s.Counts[c]) : 0;
        }

        return sum;
    }
}
