namespace StashMatch.Knitting.Matching;

/// <summary>
/// Which counts of items the leftovers can bear: over count vectors, the leftover (in a fixed order) and the load on it that are the
/// smallest with which so much is covered. Exact but for the colour rule, which arranging looks after.
/// </summary>
internal sealed class CoverTable
{
    /// <summary>Above this many states no table is made.</summary>
    public const long MostStates = 2_000_000;

    private const ulong Unreached = ulong.MaxValue;
    private readonly Puzzle _puzzle;
    private readonly int _own;
    private readonly int _mostStrands;
    private readonly int _flags;
    private readonly int[] _stride;
    private readonly ulong[] _best;
    private readonly byte[] _by;
    private readonly byte[] _from;

    /// <param name="puzzle">The puzzle.</param>
    /// <param name="capacity">What each leftover may bear.</param>
    /// <param name="mostStrands">The most strands on one leftover; <see cref="int.MaxValue"/> to leave them uncounted, which is quicker.</param>
    /// <param name="cancel">Stops it.</param>
    public CoverTable(Puzzle puzzle, long[] capacity, int mostStrands, CancellationToken cancel)
    {
        _puzzle = puzzle;
        var classes = puzzle.Classes;
        _mostStrands = mostStrands;
        _own = puzzle.OwnColours ? 3 : 1;
        _flags = FlagsOf(puzzle, mostStrands);
        _stride = new int[classes.Length];
        var states = 1;
        for (var c = 0; c < classes.Length; c++)
        {
            _stride[c] = states;
            states *= classes[c].Count + 1;
        }

        States = states;
        _best = new ulong[states * _flags];
        Array.Fill(_best, Unreached);
        _by = new byte[states * _flags];
        _from = new byte[states * _flags];
        Fill(capacity, cancel);
    }

    public int States { get; }

    /// <summary>States and what lies on the leftover in hand: the size of a table.</summary>
    public static long SizeOf(Puzzle puzzle, int mostStrands) =>
        puzzle.States() is var states && states > MostStates ? long.MaxValue : states * FlagsOf(puzzle, mostStrands);

    /// <summary>Whether everything can be covered.</summary>
    public bool CoversAll => Reached(States - 1);

    public bool Reached(int state)
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

    /// <summary>How many of a class are covered in a state.</summary>
    public int CountIn(int state, int c) => state / _stride[c] % (_puzzle.Classes[c].Count + 1);

    /// <summary>How many of each class each leftover takes to reach a state.</summary>
    public Dictionary<int, int[]> PatternsTo(int state)
    {
        var flag = Enumerable.Range(0, _flags).MinBy(f => _best[(state * _flags) + f]);
        var patterns = new Dictionary<int, int[]>();
        while (state > 0)
        {
            var at = (state * _flags) + flag;
            var bin = (int)(_best[at] >> 32);
            if (!patterns.TryGetValue(bin, out var counts))
            {
                patterns[bin] = counts = new int[_puzzle.Classes.Length];
            }

            counts[_by[at]]++;
            (state, flag) = (state - _stride[_by[at]], _from[at]);
        }

        return patterns;
    }

    private void Fill(long[] capacity, CancellationToken cancel)
    {
        var classes = _puzzle.Classes;
        var next = classes.Select(c => NextThatFits(c, capacity)).ToArray();
        var counts = new int[classes.Length];
        _best[0] = 0;
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

                // Leftover 0 with no load stands for none opened yet as well: nothing lies on it.
                var (bin, load) = ((int)(best >> 32), (long)(best & uint.MaxValue));
                for (var c = 0; c < classes.Length; c++)
                {
                    if (counts[c] == classes[c].Count)
                    {
                        continue;
                    }

                    var own = classes[c];
                    var after = After(flag, own);
                    if (after >= 0 && bin < capacity.Length && own.Fits[bin] && load + own.Need <= capacity[bin])
                    {
                        Reach(state, flag, c, after, ((ulong)bin << 32) | (ulong)(load + own.Need));
                    }
                    else if (next[c][bin] is var opened && opened < capacity.Length)
                    {
                        Reach(state, flag, c, After(0, own), ((ulong)opened << 32) | (ulong)own.Need);
                    }
                }
            }

            for (var c = 0; c < counts.Length && ++counts[c] > classes[c].Count; c++)
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
            (_best[at], _by[at], _from[at]) = (value, (byte)c, (byte)flag);
        }
    }

    private static int FlagsOf(Puzzle puzzle, int mostStrands) =>
        (puzzle.OwnColours ? 3 : 1) * (mostStrands == int.MaxValue ? 1 : mostStrands + 1);

    // What lies on the leftover in hand: nothing that excludes (0), a stripe (1), brim or crown (2), and how many strands where they
    // are counted; -1 where the item may not join.
    private int After(int flag, ItemClass item)
    {
        var (own, strands) = (flag % _own, flag / _own);
        if (item.IsStrand && _mostStrands != int.MaxValue && ++strands > _mostStrands)
        {
            return -1;
        }

        own = _own == 1 || item.Role == Role.Free ? own : item.Role switch
        {
            Role.Stripe => own == 0 ? 1 : -1,
            _ => own is 0 or 2 ? 2 : -1,
        };
        return own < 0 ? -1 : (strands * _own) + own;
    }

    private static int[] NextThatFits(ItemClass own, long[] capacity)
    {
        var next = new int[capacity.Length + 1];
        var found = capacity.Length;
        next[capacity.Length] = found;
        for (var j = capacity.Length - 1; j >= 0; j--)
        {
            next[j] = found;
            if (own.Fits[j] && own.Need <= capacity[j])
            {
                found = j;
            }
        }

        return next;
    }
}
