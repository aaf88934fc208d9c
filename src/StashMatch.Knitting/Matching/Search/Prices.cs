namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Prices on the classes, and what each leftover is worth at them: their sum bounds the tidiest plan from above (Lagrange). Leftovers
/// of one kind share one list of patterns by load, so a leftover's best is a sliding window's, and equal leftovers are priced once.
/// </summary>
internal sealed class Prices
{
    private const int MostSteps = 120;
    private const double Enough = 30;
    private const double Rounding = 1e-3;
    private readonly Patterns _patterns;
    private readonly double[] _need;
    private readonly double[] _over;
    private readonly double[] _price;
    private readonly double[] _best;
    private readonly IReadOnlyList<Stretch> _stretches;
    private readonly double[][] _bestIn;
    private readonly int[] _at;

    public Prices(Patterns patterns, BinKind[] kinds)
    {
        (_patterns, Kinds) = (patterns, kinds);
        var (classes, groups) = (patterns.Classes.Length, kinds.Sum(k => k.Holds.Length));
        _need = [.. patterns.Classes.Select(c => (double)patterns.Puzzle.Classes[c].Need)];
        (_over, _price) = (new double[classes], new double[classes]);
        _stretches = patterns.Worth.Stretches;
        _bestIn = [.. _stretches.Select(_ => new double[groups])];
        (_best, _at) = (new double[groups], new int[groups]);
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
            if (Bound - atLeast <= Rounding || !bundle.Next(atLeast, _price) || bundle.Promise < Enough)
            {
                break;
            }
        }

        bundle.Best.CopyTo(_price, 0);
        Bound = Evaluate();
    }

    /// <summary>What a group of equal leftovers may take for at most <paramref name="gap"/> of worth given away against its best.</summary>
    /// <param name="kind">The kind of the group.</param>
    /// <param name="g">The group.</param>
    /// <param name="gap">Worth that may be given away.</param>
    /// <param name="longest">Whether it is among the longest, which are enough for some loads.</param>
    /// <param name="choices">Gets them.</param>
    public void ChoicesWithin(BinKind kind, int g, double gap, bool longest, List<Choice> choices)
    {
        var group = kind.First + g;
        var (best, holds, least) = (_best[group], kind.Holds[g], kind.HasBase ? 0 : 1);
        if (!kind.HasBase && best <= gap)
        {
            choices.Add(new Choice(0, best));
        }

        for (var s = 0; s < _stretches.Count; s++)
        {
            var stretch = _stretches[s];
            if (best - _bestIn[s][group] > gap || (stretch.LongestDo && !longest))
            {
                continue;
            }

            if (stretch.OfLoad == 0)
            {
                FromCheapest(stretch);
            }
            else
            {
                for (var i = Math.Max(least, kind.FirstFrom(holds + stretch.From)); i < kind.Loads.Length && kind.Loads[i] <= holds + stretch.To; i++)
                {
                    var dear = best - (stretch.Base(holds) + kind.Loads[i] - kind.Cost[i]);
                    if (dear <= gap)
                    {
                        choices.Add(new Choice(kind.Patterns[i], dear));
                    }
                }
            }
        }

        void FromCheapest(Stretch stretch)
        {
            foreach (var i in kind.ByCost)
            {
                var dear = best - (stretch.Base(holds) - kind.Cost[i]);
                if (dear > gap)
                {
                    break;
                }

                // What lies on a full leftover in vain need not lie there.
                if (i >= least && kind.Loads[i] >= holds + stretch.From && kind.Loads[i] <= holds + stretch.To
                    && (!_patterns.Worth.MayOverfill || kind.Loads[i] - _patterns.Smallest[kind.Patterns[i]] < Math.Max(1, holds)))
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
        var groups = kind.Holds.Length;
        for (var g = 0; g < groups; g++)
        {
            (_best[kind.First + g], _at[kind.First + g]) = (kind.HasBase ? double.MinValue : 0, 0);
        }

        for (var s = 0; s < _stretches.Count; s++)
        {
            var (stretch, window) = (_stretches[s], new Window(kind, kind.Scratch, _stretches[s].OfLoad));
            for (var g = 0; g < groups; g++)
            {
                var (group, holds) = (kind.First + g, kind.Holds[g]);
                var at = window.Best(holds + stretch.From, holds + stretch.To);
                _bestIn[s][group] = at < 0 ? double.MinValue : stretch.Base(holds) + (stretch.OfLoad * kind.Loads[at]) - kind.Cost[at];
                Take(group, _bestIn[s][group], at);
            }
        }

        var sum = 0.0;
        for (var g = 0; g < groups; g++)
        {
            sum += _best[kind.First + g] * kind.Members[g].Length;
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

    // The best of load (where it counts) less cost among the patterns whose load lies in a range that only moves up.
    private struct Window(BinKind kind, int[] queue, int ofLoad)
    {
        private int _head;
        private int _tail;
        private int _next = kind.HasBase ? 0 : 1;

        public int Best(long from, long to)
        {
            for (; _next < kind.Loads.Length && kind.Loads[_next] <= to; _next++)
            {
                var value = (ofLoad * kind.Loads[_next]) - kind.Cost[_next];
                while (_tail > _head && (ofLoad * kind.Loads[queue[_tail - 1]]) - kind.Cost[queue[_tail - 1]] <= value)
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
