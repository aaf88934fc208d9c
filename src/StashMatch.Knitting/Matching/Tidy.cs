namespace StashMatch.Knitting.Matching;

/// <summary>
/// Tier 3: of all ways to cover the same counts, the one that finishes leftovers and leaves no awkward stubs. Classes are priced (a
/// Lagrangian bound over what one leftover can take), choices too dear for the gap are struck out, and a table over the leftovers is
/// deepened until its first full path: that path is best.
/// </summary>
internal sealed class Tidy
{
    /// <summary>A leftover with this much or more to spare is still useful, millimetres [ours].</summary>
    public const long Useful = 8_000;

    /// <summary>A leftover with at most this much to spare is finished, millimetres [ours].</summary>
    public const long Finished = 2_000;

    private const int MostChoices = 20_000;
    private const int MostMoves = 400_000;
    private const int MostSteps = 40;
    private const double Hair = 1e-3;
    private readonly Puzzle _puzzle;
    private readonly int[] _target;
    private readonly long[] _capacity;
    private readonly CancellationToken _cancel;
    private readonly List<BinChoices> _bins = [];

    public Tidy(Puzzle puzzle, long[] capacity, int[] target, CancellationToken cancel) =>
        (_puzzle, _capacity, _target, _cancel) = (puzzle, capacity, target, cancel);

    /// <summary>The worth of what lies on a leftover: 100 and what is spare in dm, here in millimetres; higher is tidier.</summary>
    public static long Worth(long capacity, long load)
    {
        if (load == 0)
        {
            return 0;
        }

        var spare = capacity - load;
        return spare >= Useful ? 0 : spare <= Finished ? 10_000 - spare : -10_000 - spare;
    }

    /// <summary>
    /// Tries ways from the tidiest down until one is accepted. Returns whether the accepted one is proven tidiest;
    /// false as well where none was accepted within the budget.
    /// </summary>
    /// <param name="atLeast">The worth of a plan already in hand.</param>
    /// <param name="accept">Takes counts of each class by leftover; true to stop.</param>
    public bool Search(long atLeast, Func<Dictionary<int, int[]>, bool> accept)
    {
        if (!Enumerate())
        {
            return false;
        }

        var (bound, dear) = Price(atLeast);
        var widest = bound - atLeast + Hair;
        var gap = Math.Min(widest, Math.Max(500, widest / 64));
        var paths = new TidyPaths([.. _bins], dear, _target, MostMoves, _cancel);
        while (true)
        {
            switch (paths.Try(gap, p => accept(ToPatterns(p))))
            {
                case true:
                    return true;
                case null:
                    return false;
                default:
                    if (gap >= widest)
                    {
                        return false;
                    }

                    break;
            }

            gap = Math.Min(widest, gap * 4);
        }
    }

    private Dictionary<int, int[]> ToPatterns(IReadOnlyList<int> path)
    {
        var patterns = new Dictionary<int, int[]>();
        for (var i = 0; i < _bins.Count; i++)
        {
            if (_bins[i].States[path[i]] > 0)
            {
                patterns[_bins[i].Bin] = _bins[i].CountsOf(path[i]);
            }
        }

        return patterns;
    }

    private bool Enumerate()
    {
        var strides = new int[_target.Length];
        var states = 1;
        for (var c = 0; c < strides.Length; c++)
        {
            strides[c] = states;
            states *= _target[c] + 1;
        }

        var room = MostChoices;
        for (var bin = 0; bin < _capacity.Length; bin++)
        {
            var choices = new BinChoices(bin, _target.Length);
            if (!Extend(choices, 0, new int[_target.Length], 0, 0, Role.Free, _puzzle.MostStrands, strides, room))
            {
                return false;
            }

            room -= choices.Count;
            if (choices.Count > 1)
            {
                _bins.Add(choices.Packed());
            }
        }

        return true;
    }

    private bool Extend(BinChoices choices, int c, int[] counts, long load, int state, Role role, int strands, int[] strides, int room)
    {
        if (c == _target.Length)
        {
            choices.Add(counts, state, Worth(_capacity[choices.Bin], load));
            return choices.Count <= room;
        }

        var own = _puzzle.Classes[c];
        for (var n = 0; n <= _target[c]; n++)
        {
            var heavier = load + (n * own.Need);
            if (heavier > _capacity[choices.Bin] || (n > 0 && !own.Fits[choices.Bin]) || (own.IsStrand && n > strands))
            {
                break;
            }

            var after = role;
            if (n > 0 && _puzzle.OwnColours && own.Role != Role.Free)
            {
                if ((role != Role.Free && (role != own.Role || own.Role == Role.Stripe)) || (own.Role == Role.Stripe && n > 1))
                {
                    break;
                }

                after = own.Role;
            }

            counts[c] = n;
            if (!Extend(choices, c + 1, counts, heavier, state + (n * strides[c]), after, own.IsStrand ? strands - n : strands, strides, room))
            {
                return false;
            }
        }

        counts[c] = 0;
        return true;
    }

    // Subgradient steps on the price of each class; the bound is what the leftovers are worth at those prices and the prices of all items.
    private (double Bound, double[][] Dear) Price(long atLeast)
    {
        var price = new double[_target.Length];
        var over = new double[_target.Length];
        var (best, bestPrice, scale, sinceBetter) = (double.MaxValue, price, 1.0, 0);
        for (var step = 0; step < MostSteps && best - atLeast > Hair; step++)
        {
            _cancel.ThrowIfCancellationRequested();
            var bound = 0.0;
            for (var c = 0; c < over.Length; c++)
            {
                over[c] = _target[c];
                bound += price[c] * _target[c];
            }

            foreach (var bin in _bins)
            {
                bound += bin.Best(price, out var at);
                bin.TakeFrom(over, at);
            }

            if (bound < best - Hair)
            {
                (best, bestPrice, sinceBetter) = (bound, price, 0);
            }
            else if (++sinceBetter == 4)
            {
                (scale, sinceBetter) = (scale / 2, 0);
            }

            var norm = over.Sum(o => o * o);
            if (norm == 0)
            {
                break;
            }

            var stride = scale * Math.Max(bound - atLeast, 1) / norm;
            price = [.. price.Zip(over, (p, o) => p - (stride * o))];
        }

        return (best, [.. _bins.Select(b => b.DearAt(bestPrice))]);
    }
}
