namespace StashMatch.Knitting.Matching.Search;

/// <summary>Tier 7: plans that change as few parts of an earlier plan as can be. Looks item by item, first at the leftover it had.</summary>
/// <remarks>
/// <code>
///            had    changes left
/// brim       Oat    2    Oat fits: kept
/// stripe 1   Moss   2    Moss is full: any other, 1 left
/// stripe 2   Plum   1    ...
/// </code>
/// </remarks>
internal sealed class AsItWas
{
    private const int Steps = 60_000;
    private readonly Puzzle _puzzle;
    private readonly CancellationToken _cancel;
    private readonly int[,] _costs;
    private readonly int[] _leastCost;
    private readonly int[] _had;
    private readonly long[] _free;
    private readonly int[] _binOf;
    private readonly int[][] _scratch;
    private Capacity _capacity;
    private (long Worth, bool Seam)? _best;
    private int[]? _found;
    private bool _all;
    private int _steps;

    public AsItWas(Puzzle puzzle, IReadOnlyList<Pairing> like, CancellationToken cancel)
    {
        (_puzzle, _cancel, _capacity) = (puzzle, cancel, new Capacity([]));
        var items = puzzle.Items.Length;
        (_costs, _leastCost, _had) = (new int[items, puzzle.Bins], new int[items], new int[items]);
        (_free, _binOf) = (new long[puzzle.Bins], new int[items]);
        _scratch = [.. puzzle.Items.Select(_ => new int[puzzle.Bins])];
        var there = puzzle.Question.Leftovers.Select(l => l.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var item in puzzle.Items)
        {
            var before = puzzle.Grouping.Groups[item.Group].Members
                .Select(m => like.FirstOrDefault(p => p.Part == puzzle.Hat.Parts[m].Name && there.Contains(p.Leftover))?.Leftover).OfType<string>().ToList();
            (_leastCost[item.Index], _had[item.Index]) = (int.MaxValue, -1);
            for (var bin = 0; bin < puzzle.Bins; bin++)
            {
                var id = before.Count == 0 ? "" : puzzle.Leftover(bin).Id;
                var cost = _costs[item.Index, bin] = before.Count(b => b != id);
                if (cost < _leastCost[item.Index])
                {
                    (_leastCost[item.Index], _had[item.Index]) = (cost, before.Count == 0 ? -1 : bin);
                }
            }
        }
    }

    /// <summary>A plan with so many changes or fewer.</summary>
    public Found Find(Capacity capacity, int changes, out int[] binOf)
    {
        var found = Look(capacity, changes, all: false);
        binOf = _found ?? [];
        return found;
    }

    /// <summary>The tidiest of all plans with so many changes or fewer; of those one whose seam shows two colours.</summary>
    /// <returns>Whether all were looked at.</returns>
    public bool Tidiest(Capacity capacity, int changes, out int[] binOf)
    {
        var found = Look(capacity, changes, all: true);
        binOf = _found ?? [];
        return found != Found.Unknown;
    }

    /// <summary>How many parts a plan changes.</summary>
    public int ChangesOf(int[] binOf)
    {
        var changes = 0;
        for (var i = 0; i < binOf.Length; i++)
        {
            changes += _costs[i, binOf[i]];
        }

        return changes;
    }

    private Found Look(Capacity capacity, int changes, bool all)
    {
        _cancel.ThrowIfCancellationRequested();
        (_capacity, _steps, _best, _found, _all) = (capacity, Steps, null, null, all);
        capacity.Of.CopyTo(_free, 0);
        Array.Fill(_binOf, -1);
        var least = 0;
        foreach (var cost in _leastCost)
        {
            least = cost == int.MaxValue ? int.MaxValue : least + cost;
            if (least > changes)
            {
                return Found.No;
            }
        }

        var found = Place(0, changes - least);
        return found == Found.No && _found is not null ? Found.Yes : found;
    }

    // How many changes are left above the least each item costs.
    private Found Place(int at, int left)
    {
        var order = _puzzle.Layout.LongestFirst;
        if (at == order.Length)
        {
            return Keep();
        }

        if (--_steps < 0)
        {
            return Found.Unknown;
        }

        var item = order[at];
        foreach (var bin in Choices(item, left, _scratch[at]))
        {
            (_binOf[item.Index], _free[bin]) = (bin, _free[bin] - item.Need);
            var found = Place(at + 1, left - _costs[item.Index, bin] + _leastCost[item.Index]);
            if (found == Found.Yes)
            {
                return found;
            }

            (_binOf[item.Index], _free[bin]) = (-1, _free[bin] + item.Need);
            if (found == Found.Unknown)
            {
                return found;
            }
        }

        return Found.No;
    }

    // Of all plans the tidiest is kept, and the search goes on.
    private Found Keep()
    {
        if (!_all)
        {
            _found = (int[])_binOf.Clone();
            return Found.Yes;
        }

        var worth = 0L;
        for (var bin = 0; bin < _free.Length; bin++)
        {
            worth += Worth.Tidiness.Of(_capacity.Of[bin], _capacity.Of[bin] - _free[bin]);
        }

        var stands = (worth, Seam.Shows(_puzzle, _binOf));
        if (_best is not { } best || stands.CompareTo(best) > 0)
        {
            (_best, _found) = (stands, (int[])_binOf.Clone());
        }

        return Found.No;
    }

    // The leftover it had first, then the closest fits.
    private Span<int> Choices(Item item, int left, int[] scratch)
    {
        var (count, had) = (0, _had[item.Index]);
        for (var bin = 0; bin < _free.Length; bin++)
        {
            if (_free[bin] >= item.Need && _costs[item.Index, bin] - _leastCost[item.Index] <= left && _puzzle.Admits(item, bin, _binOf))
            {
                scratch[count++] = bin;
            }
        }

        var choices = scratch.AsSpan(0, count);
        choices.Sort((a, b) => (a == had) != (b == had) ? (b == had).CompareTo(a == had)
            : _free[a] != _free[b] ? _free[a].CompareTo(_free[b]) : a.CompareTo(b));
        return choices;
    }
}
