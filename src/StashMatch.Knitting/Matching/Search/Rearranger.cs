namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Looks through plans that are as good as the one in hand: moves an item, swaps two, or exchanges two leftovers with all that lies on
/// them, by simulated annealing with a fixed seed and a fixed number of steps. Proves nothing; never lets an earlier tier fall.
/// </summary>
internal sealed class Rearranger
{
    private const int Steps = 100_000;
    private const long SameSeam = 10_000_000;
    private readonly Puzzle _puzzle;
    private readonly long[] _capacity;
    private readonly int[] _binOf;
    private readonly long[] _load;
    private readonly Item[] _placed;
    private readonly List<(int Item, int From)> _changed = [];
    private ulong _seed = 0x9E3779B97F4A7C15UL;

    public Rearranger(Puzzle puzzle, long[] capacity, int[] binOf)
    {
        (_puzzle, _capacity, _binOf, _load) = (puzzle, capacity, (int[])binOf.Clone(), new long[capacity.Length]);
        _placed = [.. puzzle.Items.Where(i => _binOf[i.Index] >= 0 && puzzle.Classes[i.Class].OnlyBin < 0)];
        foreach (var item in puzzle.Items.Where(i => _binOf[i.Index] >= 0))
        {
            _load[_binOf[item.Index]] += item.Need;
        }
    }

    /// <summary>A tidier plan if one turns up.</summary>
    public int[] Tidier() => _placed.Length == 0 ? _binOf : Anneal(_placed, 6_000, 60, 0, (_, change) => -change);

    /// <summary>The stripes in a better order of colours, as tidy as before.</summary>
    public int[] InOrder(ColourOrder order)
    {
        var steps = new ColourSteps(_puzzle);
        Item[] stripes = [.. _placed.Where(i => steps.Groups.Contains(i.Group))];
        if (order == ColourOrder.Any || stripes.Length == 0)
        {
            return _binOf;
        }

        var sign = order == ColourOrder.Gradient ? 1 : -1;
        return Anneal(stripes, 1_500, 20, Length(), (before, change) => change != 0 ? null : Length() - before);

        // A seam that shows one colour counts more than any order.
        long Length() => (sign * steps.Sum(_binOf, order)) + (Seam.Shows(_puzzle, _binOf) ? 0 : SameSeam);
    }

    // Lower is better. What a step changes is told by the second function: from the value before it and the change of worth; null
    // where it must not be.
    private int[] Anneal(Item[] movable, double hot, double cold, long value, Func<long, long, long?> changeOf)
    {
        var (best, bestBinOf) = (value, (int[])_binOf.Clone());
        for (var step = 0; step < Steps; step++)
        {
            var heat = hot * Math.Pow(cold / hot, step / (double)Steps);
            if (!Change(movable, out var worth))
            {
                continue;
            }

            if (changeOf(value, worth) is not { } change || (change > 0 && Math.Exp(-change / heat) * 1_000_000 < Next(1_000_000)))
            {
                Undo();
                continue;
            }

            value += change;
            if (value < best)
            {
                best = value;
                _binOf.CopyTo(bestBinOf, 0);
            }
        }

        return bestBinOf;
    }

    private bool Change(Item[] movable, out long worth)
    {
        _changed.Clear();
        var item = movable[Next(movable.Length)];
        var here = _binOf[item.Index];
        var (there, before) = (here, 0L);
        switch (Next(3))
        {
            case 0:
                there = Next(_capacity.Length);
                Put(item, there);
                break;
            case 1:
                var other = movable[Next(movable.Length)];
                there = _binOf[other.Index];
                Put(item, there);
                Put(other, here);
                break;
            default:
                there = Next(_capacity.Length);
                foreach (var i in _puzzle.Items)
                {
                    if (_binOf[i.Index] == here || _binOf[i.Index] == there)
                    {
                        Put(i, _binOf[i.Index] == here ? there : here);
                    }
                }

                break;
        }

        worth = 0;
        if (here != there)
        {
            worth = Worth.Tidiness.Of(_capacity[here], _load[here]) + Worth.Tidiness.Of(_capacity[there], _load[there]);
            foreach (var (i, from) in _changed)
            {
                before += from == here ? _puzzle.Items[i].Need : -_puzzle.Items[i].Need;
            }

            worth -= Worth.Tidiness.Of(_capacity[here], _load[here] + before) + Worth.Tidiness.Of(_capacity[there], _load[there] - before);
        }

        if (here == there || _load[here] > _capacity[here] || _load[there] > _capacity[there] || !Keeps())
        {
            Undo();
            return false;
        }

        return true;
    }

    private bool Keeps()
    {
        foreach (var (item, _) in _changed)
        {
            if (!_puzzle.Admits(_puzzle.Items[item], _binOf[item], _binOf))
            {
                return false;
            }
        }

        return true;
    }

    private void Put(Item item, int bin)
    {
        _changed.Add((item.Index, _binOf[item.Index]));
        _load[_binOf[item.Index]] -= item.Need;
        _load[bin] += item.Need;
        _binOf[item.Index] = bin;
    }

    private void Undo()
    {
        for (var i = _changed.Count - 1; i >= 0; i--)
        {
            var (item, from) = _changed[i];
            _load[_binOf[item]] -= _puzzle.Items[item].Need;
            _load[from] += _puzzle.Items[item].Need;
            _binOf[item] = from;
        }

        _changed.Clear();
    }

    private int Next(int below)
    {
        _seed ^= _seed << 13;
        _seed ^= _seed >> 7;
        _seed ^= _seed << 17;
        return (int)((_seed >> 33) % (ulong)below);
    }
}
