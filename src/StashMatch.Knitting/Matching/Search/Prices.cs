namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Prices on the classes, and what each leftover is worth at them: their sum bounds the tidiest plan from above (Lagrange). Leftovers
/// of one kind share one list of patterns by load, so a leftover's best is a sliding window's, and equal leftovers are priced once.
/// </summary>
internal sealed class Prices
{
    private const int MostSteps = 120;
    private const double Enough = 30;
    private const double Hair = 1e-3;
    private readonly Patterns _patterns;
    private readonly double[] _need;
    private readonly double[] _over;
    private readonly double[] _price;
    private readonly double[] _best;
    private readonly double[] _finished;
    private readonly double[] _stub;
    private readonly double[] _useful;
    private readonly int[] _at;

    public Prices(Patterns patterns, BinKind[] kinds)
    {
        (_patterns, Kinds) = (patterns, kinds);
        var (classes, groups) = (patterns.Classes.Length, kinds.Sum(k => k.Holds.Length));
        _need = [.. patterns.Classes.Select(c => (double)patterns.Puzzle.Classes[c].Need)];
        (_over, _price) = (new double[classes], new double[classes]);
        (_best, _finished, _stub, _useful, _at) = (new double[groups], new double[groups], new double[groups], new double[groups], new int[groups]);
    }

    public BinKind[] Kinds { get; }

    /// <summary>No plan that covers the counts is worth more.</summary>
    public double Bound { get; private set; } = double.MaxValue;

    /// <summary>Lowers the bound step by step, until it meets <paramref name="atLeast"/> or hardly moves.</summary>
    public void Lower(double atLeast, CancellationToken cancel)
    {
        Start();
        var bundle = new Bundle(_price, _need);
        for (var step = 0; step < MostSteps; step++)
        {
            cancel.ThrowIfCancellationRequested();
            var bound = Evaluate();
            Bound = Math.Min(Bound, bound);
            bundle.Add(_price, bound, _over);
            if (Bound - atLeast <= Hair || !bundle.Next(atLeast, _price) || bundle.Promise < Enough)
            {
                break;
            }
        }

        bundle.Best.CopyTo(_price, 0);
        Bound = Evaluate();
    }

    /// <summary>What a group of equal leftovers may take for at most <paramref name="gap"/> of worth given away against its best.</summary>
    public void ChoicesWithin(BinKind kind, int g, double gap, bool useful, List<Choice> choices)
    {
        var group = kind.First + g;
        var (best, holds, least) = (_best[group], kind.Holds[g], kind.HasBase ? 0 : 1);
        if (!kind.HasBase && best <= gap)
        {
            choices.Add(new Choice(0, best));
        }

        if (best - _finished[group] <= gap)
        {
            Scan(holds - Tidy.Finished, holds, 10_000 - holds);
        }

        if (best - _stub[group] <= gap)
        {
            Scan(holds - Tidy.Useful + 1, holds - Tidy.Finished - 1, -10_000 - holds);
        }

        if (useful && best - _useful[group] <= gap)
        {
            foreach (var i in kind.ByCost)
            {
                if (best + kind.Cost[i] > gap)
                {
                    break;
                }

                if (i >= least && kind.Loads[i] <= holds - Tidy.Useful)
                {
                    choices.Add(new Choice(kind.Patterns[i], best + kind.Cost[i]));
                }
            }
        }

        void Scan(long from, long to, long worth)
        {
            for (var i = Math.Max(least, kind.FirstFrom(from)); i < kind.Loads.Length && kind.Loads[i] <= to; i++)
            {
                var dear = best - (worth + kind.Loads[i] - kind.Cost[i]);
                if (dear <= gap)
                {
                    choices.Add(new Choice(kind.Patterns[i], dear));
                }
            }
        }
    }

    // By the metre, at what the shortest leftovers that would hold it all are worth.
    private void Start()
    {
        var needed = 0.0;
        for (var k = 0; k < _over.Length; k++)
        {
            needed += _patterns.Target[_patterns.Classes[k]] * _need[k];
        }

        var (sum, last) = (0.0, 1L);
        foreach (var (holds, many) in Kinds.SelectMany(k => k.Holds.Zip(k.Members, (h, m) => (Holds: h, m.Length))).OrderBy(g => g.Holds))
        {
            sum += (double)holds * many;
            last = Math.Max(holds, 1);
            if (sum >= needed)
            {
                break;
            }
        }

        for (var k = 0; k < _price.Length; k++)
        {
            _price[k] = sum < needed ? 0 : _need[k] * 10_000 / last;
        }
    }

    private double Evaluate()
    {
        var bound = 0.0;
        for (var k = 0; k < _over.Length; k++)
        {
            _over[k] = _patterns.Target[_patterns.Classes[k]];
            bound += _price[k] * _over[k];
        }

        foreach (var kind in Kinds)
        {
            kind.SetCosts(_patterns, _price);
            bound += Value(kind);
            for (var g = 0; g < kind.Holds.Length; g++)
            {
                if (_at[kind.First + g] is not 0 and var at)
                {
                    var taken = _patterns.CountsOf(kind.Patterns[at]);
                    for (var k = 0; k < taken.Length; k++)
                    {
                        _over[k] -= taken[k] * kind.Members[g].Length;
                    }
                }
            }
        }

        return bound;
    }

    private double Value(BinKind kind)
    {
        var sum = 0.0;
        var (finished, stub) = (new Window(kind, kind.Scratch), new Window(kind, kind.MoreScratch));
        var (cheapest, at, next) = (double.MaxValue, 0, kind.HasBase ? 0 : 1);
        for (var g = 0; g < kind.Holds.Length; g++)
        {
            var (group, holds) = (kind.First + g, kind.Holds[g]);
            var f = finished.Best(holds - Tidy.Finished, holds);
            var s = stub.Best(holds - Tidy.Useful + 1, holds - Tidy.Finished - 1);
            for (; next < kind.Loads.Length && kind.Loads[next] <= holds - Tidy.Useful; next++)
            {
                if (kind.Cost[next] < cheapest)
                {
                    (cheapest, at) = (kind.Cost[next], next);
                }
            }

            _finished[group] = f < 0 ? double.MinValue : 10_000 - holds + kind.Loads[f] - kind.Cost[f];
            _stub[group] = s < 0 ? double.MinValue : -10_000 - holds + kind.Loads[s] - kind.Cost[s];
            _useful[group] = cheapest == double.MaxValue ? double.MinValue : -cheapest;
            (_best[group], _at[group]) = kind.HasBase ? (double.MinValue, 0) : (0, 0);
            Take(group, _finished[group], f);
            Take(group, _stub[group], s);
            Take(group, _useful[group], at);
            sum += _best[group] * kind.Members[g].Length;
        }

        return sum;
    }

    private void Take(int group, double worth, int at)
    {
        if (worth > _best[group])
        {
            (_best[group], _at[group]) = (worth, at);
        }
    }

    // The best of load less cost among the patterns whose load lies in a range that only moves up.
    private struct Window(BinKind kind, int[] queue)
    {
        private int _head;
        private int _tail;
        private int _next = kind.HasBase ? 0 : 1;

        public int Best(long from, long to)
        {
            for (; _next < kind.Loads.Length && kind.Loads[_next] <= to; _next++)
            {
                var value = kind.Loads[_next] - kind.Cost[_next];
                while (_tail > _head && kind.Loads[queue[_tail - 1]] - kind.Cost[queue[_tail - 1]] <= value)
                {
                    _tail--;
                }

                queue[_tail++] = _next;
            }

            while (_tail > _head && kind.Loads[queue[_head]] < from)
            {
                _head++;
            }

            return _tail > _head ? queue[_head] : -1;
        }
    }
}
