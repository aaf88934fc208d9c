namespace StashMatch.Knitting.Matching;

/// <summary>
/// Tier 3: of all ways to cover the same counts, the one that finishes leftovers and leaves no awkward stubs. Classes are priced (a
/// Lagrangian bound over what one leftover can take), choices too dear for the gap are struck out, and a sparse table over the
/// leftovers is deepened until its first full path: that path is best.
/// </summary>
internal sealed class Tidy
{
    /// <summary>A leftover with this much or more to spare is still useful, millimetres [ours].</summary>
    public const long Useful = 8_000;

    /// <summary>A leftover with at most this much to spare is finished, millimetres [ours].</summary>
    public const long Finished = 2_000;

    private const int MostPatterns = 250_000;
    private const int MostMoves = 3_000_000;
    private const double Hair = 1e-3;
    private readonly Puzzle _puzzle;
    private readonly int[] _target;
    private readonly long[] _capacity;
    private readonly int[] _stride;
    private readonly int _full;
    private readonly CancellationToken _cancel;
    private readonly List<(int Bin, Choice[] Choices)> _bins = [];

    public Tidy(Puzzle puzzle, long[] capacity, int[] target, CancellationToken cancel)
    {
        (_puzzle, _capacity, _target, _cancel) = (puzzle, capacity, target, cancel);
        _stride = new int[target.Length];
        var states = 1;
        for (var c = 0; c < target.Length; c++)
        {
            _stride[c] = states;
            states *= target[c] + 1;
        }

        _full = states - 1;
    }

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

    /// <summary>The worth of a whole plan.</summary>
    public static long Worth(long[] capacity, IReadOnlyDictionary<int, int[]> patterns, Puzzle puzzle) =>
        patterns.Sum(p => Worth(capacity[p.Key], p.Value.Select((n, c) => n * puzzle.Classes[c].Need).Sum()));

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
        int[] radix = [.. _target.Select(n => n + 1)];
        var widest = bound - atLeast + Hair;
        var gap = Math.Min(widest, Math.Max(500, widest / 64));
        while (true)
        {
            if (new TidyPaths(_bins, dear, radix, _full, MostMoves, _cancel).Try(gap, p => accept(ToPatterns(p))) is { } accepted)
            {
                if (accepted || gap >= widest)
                {
                    return accepted;
                }
            }
            else
            {
                return false;
            }

            gap = Math.Min(widest, gap * 4);
        }
    }

    private Dictionary<int, int[]> ToPatterns(IReadOnlyList<int> path) => path
        .Select((choice, i) => (_bins[i].Bin, _bins[i].Choices[choice].Counts))
        .Where(p => Array.Exists(p.Counts, n => n > 0))
        .ToDictionary(p => p.Bin, p => p.Counts);

    private bool Enumerate()
    {
        var total = 0;
        for (var bin = 0; bin < _capacity.Length; bin++)
        {
            var choices = new List<Choice>();
            Extend(bin, 0, new int[_target.Length], 0, 0, Role.Free, choices, MostPatterns - total);
            total += choices.Count;
            if (total >= MostPatterns)
            {
                return false;
            }

            if (choices.Count > 1)
            {
                _bins.Add((bin, [.. choices]));
            }
        }

        return true;
    }

    private void Extend(int bin, int c, int[] counts, long load, int state, Role role, List<Choice> choices, int room)
    {
        if (choices.Count >= room)
        {
            return;
        }

        if (c == _target.Length)
        {
            choices.Add(new Choice([.. counts], state, Worth(_capacity[bin], load)));
            return;
        }

        var own = _puzzle.Classes[c];
        for (var n = 0; n <= _target[c]; n++)
        {
            var heavier = load + (n * own.Need);
            if (heavier > _capacity[bin] || (n > 0 && !own.Fits[bin]))
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
            Extend(bin, c + 1, counts, heavier, state + (n * _stride[c]), after, choices, room);
        }

        counts[c] = 0;
    }

    // Subgradient steps on the price of each class; the bound is what the leftovers are worth at those prices and the prices of all items.
    private (double Bound, double[][] Dear) Price(long atLeast)
    {
        var price = new double[_target.Length];
        var best = double.MaxValue;
        var bestPrice = price;
        var scale = 1.0;
        var sinceBetter = 0;
        for (var step = 0; step < 80 && best - atLeast > Hair; step++)
        {
            _cancel.ThrowIfCancellationRequested();
            var bound = price.Zip(_target, (p, n) => p * n).Sum();
            var over = _target.Select(n => (double)n).ToArray();
            foreach (var (_, choices) in _bins)
            {
                var (top, at) = (double.MinValue, 0);
                for (var k = 0; k < choices.Length; k++)
                {
                    var worth = choices[k].Worth - Cost(price, choices[k].Counts);
                    if (worth > top)
                    {
                        (top, at) = (worth, k);
                    }
                }

                bound += top;
                for (var c = 0; c < over.Length; c++)
                {
                    over[c] -= choices[at].Counts[c];
                }
            }

            if (bound < best - Hair)
            {
                (best, bestPrice, sinceBetter) = (bound, price, 0);
            }
            else if (++sinceBetter == 5)
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

        var dear = _bins.Select(b =>
        {
            var worth = b.Choices.Select(k => k.Worth - Cost(bestPrice, k.Counts)).ToArray();
            var top = worth.Max();
            return worth.Select(w => top - w).ToArray();
        }).ToArray();
        return (best, dear);
    }

    private static double Cost(double[] price, int[] counts)
    {
        var sum = 0.0;
        for (var c = 0; c < price.Length; c++)
        {
            sum += price[c] * counts[c];
        }

        return sum;
    }

    /// <summary>What one leftover may take.</summary>
    internal sealed record Choice(int[] Counts, int State, long Worth);
}
