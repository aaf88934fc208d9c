using Google.OrTools.Sat;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>One yes-or-no for each leftover and each way of loading it with counts of like lots; only lots under the colour rule are told apart.</summary>
internal sealed class PatternModel
{
    private readonly Sheet _sheet;
    private readonly long[] _bears;
    private readonly bool _coverAll;
    private readonly List<List<int>> _classes;
    private readonly List<Way>[] _ways;
    private readonly CpModel _model = new();
    private readonly BoolVar?[,] _from;

    private PatternModel(Sheet sheet, long[] bears, int width, bool colours, int most, bool coverAll = true)
    {
        (_sheet, _bears, _coverAll) = (sheet, bears, coverAll);
        var apart = colours ? sheet.Apart.SelectMany(p => new[] { p.A, p.B }).ToHashSet() : [];
        _classes = [.. Enumerable.Range(0, sheet.Lots.Length)
            .GroupBy(i => (sheet.Lots[i].Need, sheet.Lots[i].Stripe, sheet.Lots[i].Head, apart.Contains(i),
                string.Concat(Enumerable.Range(0, _bears.Length).Select(b => sheet.Fits(i, b, width) ? '1' : '0'))))
            .Select(g => g.ToList())];
        _from = new BoolVar?[sheet.Lots.Length, _bears.Length];
        _ways = new List<Way>[_bears.Length];
        for (var b = 0; b < _bears.Length; b++)
        {
            _ways[b] = [];
            Enumerate(b, width, 0, new int[_classes.Count], 0, most);
            most -= _ways[b].Count;
            if (most < 0)
            {
                Fits = false;
                return;
            }
        }

        Write(apart);
    }

    private bool Fits { get; } = true;

    /// <summary>The tidiest way to cover everything; open where there are too many ways to load a leftover.</summary>
    /// <param name="sheet">The question.</param>
    /// <param name="bears">What each leftover may bear, millimetres.</param>
    /// <param name="width">How wide the brim's choice is, 0 to 3.</param>
    /// <param name="tidy">Whether the tidiest is wanted, or anything.</param>
    /// <param name="colours">Whether the colour rule is written down too.</param>
    /// <param name="most">The most ways to load leftovers in all.</param>
    public static Settled Solve(Sheet sheet, long[] bears, int width, bool tidy = true, bool colours = true, int most = 60_000)
    {
        var model = new PatternModel(sheet, bears, width, colours, most);
        if (!model.Fits)
        {
            return new Settled(Proof.Open, 0, []);
        }

        if (tidy)
        {
            var ways = model._ways.SelectMany(w => w).Where(w => w.Worth != 0).ToList();
            model._model.Maximize(LinearExpr.WeightedSum(ways.Select(w => w.Taken), ways.Select(w => w.Worth)));
        }

        return CompactModel.Settle(model._model, model.Read);
    }

    /// <summary>The most that can go in where not everything can: a leftover may be asked for more than it holds, by its last lot.</summary>
    public static Settled MostIn(Sheet sheet, int most = 60_000)
    {
        var model = new PatternModel(sheet, sheet.Held, 3, colours: true, most, coverAll: false);
        if (!model.Fits)
        {
            return new Settled(Proof.Open, 0, []);
        }

        var ways = model._ways.SelectMany(w => w).Where(w => w.Worth != 0).ToList();
        model._model.Maximize(LinearExpr.WeightedSum(ways.Select(w => w.Taken), ways.Select(w => w.Worth)));
        return CompactModel.Settle(model._model, model.Read);
    }

    private void Enumerate(int ball, int width, int c, int[] counts, long load, int most)
    {
        if (_ways[ball].Count > most)
        {
            return;
        }

        if (c == _classes.Count)
        {
            // A load over what there is, one lot of which could go without any metre less going in, is never needed.
            if (load <= _bears[ball] || !Enumerable.Range(0, counts.Length).Any(k => counts[k] > 0 && load - _sheet.Lots[_classes[k][0]].Need >= _bears[ball]))
            {
                _ways[ball].Add(new Way([.. counts], _coverAll ? Sheet.Worth(_bears[ball], load) : Math.Min(load, _bears[ball]), _model.NewBoolVar("")));
            }

            return;
        }

        var lot = _sheet.Lots[_classes[c][0]];
        for (var n = 0; n <= _classes[c].Count && (n == 0 || load + ((_coverAll ? n : n - 1) * lot.Need) <= _bears[ball]); n++)
        {
            if (n == 1 && !_sheet.Fits(_classes[c][0], ball, width))
            {
                break;
            }

            if (_sheet.Own && n > 0 && ((n > 1 && lot.Stripe) || Enumerable.Range(0, c).Any(o => counts[o] > 0
                && Sheet.Excludes(lot, _sheet.Lots[_classes[o][0]]))))
            {
                break;
            }

            counts[c] = n;
            Enumerate(ball, width, c + 1, counts, load + (n * lot.Need), most);
        }

        counts[c] = 0;
    }

    private void Write(HashSet<int> apart)
    {
        foreach (var ways in _ways)
        {
            _model.AddExactlyOne(ways.Select(w => w.Taken));
        }

        for (var c = 0; c < _classes.Count; c++)
        {
            var all = _ways.SelectMany(w => w).Where(w => w.Counts[c] > 0).ToList();
            _model.AddLinearConstraint(LinearExpr.WeightedSum(all.Select(w => w.Taken), all.Select(w => (long)w.Counts[c])), _coverAll
                ? _classes[c].Count : 0, _classes[c].Count);
            if (!apart.Contains(_classes[c][0]))
            {
                continue;
            }

            for (var b = 0; b < _bears.Length; b++)
            {
                var here = _ways[b].Where(w => w.Counts[c] > 0).ToList();
                if (here.Count > 0)
                {
                    foreach (var i in _classes[c])
                    {
                        _from[i, b] = _model.NewBoolVar("");
                    }

                    _model.Add(LinearExpr.Sum(_classes[c].Select(i => _from[i, b]!)) == LinearExpr.WeightedSum(here.Select(w => w.Taken),
                        here.Select(w => (long)w.Counts[c])));
                }
            }

            foreach (var i in _classes[c])
            {
                var own = Enumerable.Range(0, _bears.Length).Select(b => _from[i, b]).OfType<BoolVar>();
                if (_coverAll)
                {
                    _model.AddExactlyOne(own);
                }
                else
                {
                    _model.AddAtMostOne(own);
                }
            }
        }

        if (apart.Count > 0)
        {
            CompactModel.WriteColourRule(_model, _sheet, _from);
        }
    }

    private int[] Read(Func<BoolVar, bool> isTrue)
    {
        var ballOf = new int[_sheet.Lots.Length];
        Array.Fill(ballOf, -1);
        for (var c = 0; c < _classes.Count; c++)
        {
            var waiting = new Queue<int>(_classes[c]);
            for (var b = 0; b < _bears.Length; b++)
            {
                var own = _classes[c].Where(i => _from[i, b] is { } from && isTrue(from)).ToList();
                own.ForEach(i => ballOf[i] = b);
                for (var n = own.Count; n < _ways[b].Find(w => isTrue(w.Taken))!.Counts[c]; n++)
                {
                    ballOf[waiting.Dequeue()] = b;
                }
            }
        }

        return ballOf;
    }

    private sealed record Way(int[] Counts, long Worth, BoolVar Taken);
}
