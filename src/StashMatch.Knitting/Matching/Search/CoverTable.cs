using System.Buffers;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Which counts of items the leftovers can bear: over count vectors, the leftover (in a fixed order) and the load on it that are the
/// smallest with which so much is covered. Exact but for the colour rule between leftovers, which arranging looks after.
/// </summary>
internal sealed class CoverTable : IDisposable
{
    /// <summary>Above this many states no table is made.</summary>
    public const long MostStates = 2_000_000;

    private const ulong Unreached = ulong.MaxValue;
    private readonly Puzzle _puzzle;
    private readonly int[] _bins;
    private readonly long[] _capacity;
    private readonly int[] _only;
    private readonly int _own;
    private readonly int _strands;
    private readonly int _others;
    private readonly int _flags;
    private readonly int[] _stride;
    private readonly int[] _most;
    private readonly long[] _base;
    private readonly int[] _baseFlag;
    private readonly ulong[] _best;
    private readonly byte[] _by;
    private readonly ushort[] _from;

    /// <param name="puzzle">The puzzle.</param>
    /// <param name="capacity">What each leftover may bear.</param>
    /// <param name="bins">The leftovers that are filled, in this order.</param>
    /// <param name="counted">Whether items that read as one colour side by side are counted on each leftover; not counting is quicker.</param>
    /// <param name="cancel">Stops it.</param>
    public CoverTable(Puzzle puzzle, Capacity capacity, int[] bins, bool counted, CancellationToken cancel)
    {
        (_puzzle, _bins) = (puzzle, bins);
        _capacity = Array.ConvertAll(bins, b => capacity.Of[b]);
        _only = Array.ConvertAll(puzzle.Classes, c => c.OnlyBin < 0 ? -1 : Array.IndexOf(bins, c.OnlyBin));
        var classes = puzzle.Classes;
        _own = puzzle.OwnColours ? 3 : 1;
        (_strands, _others) = Counted(puzzle, counted);
        _flags = _own * (_strands + 1) * (_others + 1);
        (_stride, _most) = (new int[classes.Length], new int[classes.Length]);
        var states = 1;
        for (var c = 0; c < classes.Length; c++)
        {
            _stride[c] = states;
            _most[c] = classes[c].OnlyBin >= 0 ? 0 : classes[c].Count;
            states *= _most[c] + 1;
        }

        States = states;
        _best = ArrayPool<ulong>.Shared.Rent(states * _flags);
        _by = ArrayPool<byte>.Shared.Rent(states * _flags);
        _from = ArrayPool<ushort>.Shared.Rent(states * _flags);
        Array.Fill(_best, Unreached, 0, states * _flags);
        (_base, _baseFlag) = ([], []);
        if (LayAside(ref _base, ref _baseFlag))
        {
            Fill(cancel);
        }
    }

    private int States { get; }

    /// <summary>Entries such a table would have; saturates.</summary>
    public static long SizeOf(Puzzle puzzle, bool counted)
    {
        var (strands, others) = Counted(puzzle, counted);
        var size = (puzzle.OwnColours ? 3L : 1L) * (strands + 1) * (others + 1);
        foreach (var c in puzzle.Classes)
        {
            size *= c.OnlyBin >= 0 ? 1 : c.Count + 1;
            if (size > int.MaxValue)
            {
                return long.MaxValue;
            }
        }

        return size;
    }

    public void Dispose()
    {
        ArrayPool<ulong>.Shared.Return(_best);
        ArrayPool<byte>.Shared.Return(_by);
        ArrayPool<ushort>.Shared.Return(_from);
    }

    /// <summary>Whether everything can be covered.</summary>
    public bool CoversAll => Reached(States - 1);

    private bool Reached(int state)
    {
        for (var f = 0; f < _flags; f++)
        {
            if (_best[(state * _flags) + f] != Unreached)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How many of each class each leftover takes, where everything is covered.</summary>
    public List<Slot> Slots()
    {
        var (state, flag) = (States - 1, 0);
        for (var f = 1; f < _flags; f++)
        {
            flag = _best[(state * _flags) + f] < _best[(state * _flags) + flag] ? f : flag;
        }

        var shares = new SortedDictionary<int, int[]>();
        int[] Of(int bin)
        {
            if (!shares.TryGetValue(bin, out var counts))
            {
                shares[bin] = counts = new int[_stride.Length];
            }

            return counts;
        }

        while (state > 0)
        {
            var at = (state * _flags) + flag;
            Of((int)(_best[at] >> 32))[_by[at]]++;
            (state, flag) = (state - _stride[_by[at]], _from[at]);
        }

        for (var c = 0; c < _stride.Length; c++)
        {
            if (_only[c] >= 0)
            {
                Of(_only[c])[c] = _puzzle.Classes[c].Count;
            }
        }

        return [.. shares.Select(s => new Slot([_bins[s.Key]], s.Value))];
    }

    private static (int Strands, int Others) Counted(Puzzle puzzle, bool counted)
    {
        if (!counted || puzzle.Question.Blend)
        {
            return (0, 0);
        }

        int InAll(ColourNeighbours crowd) => puzzle.Classes.Where(c => c.Neighbours == crowd).Sum(c => c.Count);
        return (
            InAll(ColourNeighbours.Strand) > puzzle.Limits.Strands ? puzzle.Limits.Strands : 0,
            !puzzle.OwnColours && InAll(ColourNeighbours.Other) > puzzle.Limits.Others ? puzzle.Limits.Others : 0);
    }

    // What only one leftover can serve lies on it from the start; false where it bears that not.
    private bool LayAside(ref long[] loads, ref int[] flags)
    {
        (loads, flags) = (new long[_capacity.Length], new int[_capacity.Length]);
        for (var c = 0; c < _stride.Length; c++)
        {
            var (own, only) = (_puzzle.Classes[c], _only[c]);
            for (var n = 0; only >= 0 && n < own.Count; n++)
            {
                var after = After(flags[only], own);
                loads[only] += own.Need;
                if (after < 0 || loads[only] > _capacity[only])
                {
                    return false;
                }

                flags[only] = after;
            }
        }

        return true;
    }

    private void Fill(CancellationToken cancel)
    {
        var classes = _puzzle.Classes;
        var bins = _capacity.Length;
        if (bins == 0)
        {
            _best[0] = 0;
            return;
        }

        var next = Array.ConvertAll(classes, NextThatFits);
        Span<int> counts = stackalloc int[classes.Length];
        _best[_baseFlag[0]] = (ulong)_base[0];
        for (var state = 0; state < States; state++)
        {
            if ((state & 0xFFFF) == 0)
            {
                cancel.ThrowIfCancellationRequested();
            }

            for (var flag = 0; flag < _flags; flag++)
            {
                var best = _best[(state * _flags) + flag];
                if (best == Unreached || (flag > 0 && _best[state * _flags] <= best))
                {
                    continue;
                }

                var (bin, load) = ((int)(best >> 32), (long)(best & uint.MaxValue));
                for (var c = 0; c < classes.Length; c++)
                {
                    if (counts[c] == _most[c])
                    {
                        continue;
                    }

                    var own = classes[c];
                    var after = After(flag, own);
                    if (after >= 0 && load + own.Need <= _capacity[bin] && own.Fits[_bins[bin]])
                    {
                        Reach(state, flag, c, after, ((ulong)bin << 32) | (ulong)(load + own.Need));
                    }
                    else if (next[c][bin] is var opened && opened < bins)
                    {
                        Reach(state, flag, c, After(_baseFlag[opened], own), ((ulong)opened << 32) | (ulong)(_base[opened] + own.Need));
                    }
                }
            }

            for (var c = 0; c < counts.Length && ++counts[c] > _most[c]; c++)
            {
                counts[c] = 0;
            }
        }
    }

    private void Reach(int state, int flag, int c, int after, ulong value)
    {
        var at = ((state + _stride[c]) * _flags) + after;
        if (value < _best[at])
        {
            (_best[at], _by[at], _from[at]) = (value, (byte)c, (ushort)flag);
        }
    }

    // What lies on the leftover in hand: nothing that excludes (0), a stripe (1), brim or crown (2), and how many items that read as
    // one colour side by side, where they are counted; -1 where the item may not join.
    private int After(int flag, ItemClass item)
    {
        var (own, strands, others) = (flag % _own, flag / _own % (_strands + 1), flag / _own / (_strands + 1));
        if ((_strands > 0 && item.Neighbours == ColourNeighbours.Strand && ++strands > _strands) || (_others > 0 && item.Neighbours == ColourNeighbours.Other && ++others > _others))
        {
            return -1;
        }

        own = _own == 1 || item.Role == Role.Free ? own : item.Role switch
        {
            Role.Stripe => own == 0 ? 1 : -1,
            _ => own is 0 or 2 ? 2 : -1,
        };
        return own < 0 ? -1 : (((others * (_strands + 1)) + strands) * _own) + own;
    }

    // For each leftover the next one after it that can be opened with such an item; what is laid on it beforehand considered.
    private int[] NextThatFits(ItemClass own)
    {
        var next = new int[_capacity.Length];
        var found = _capacity.Length;
        for (var j = _capacity.Length - 1; j >= 0; j--)
        {
            next[j] = found;
            if (own.Fits[_bins[j]] && _base[j] + own.Need <= _capacity[j] && After(_baseFlag[j], own) >= 0)
            {
                found = j;
            }
        }

        return next;
    }
}
