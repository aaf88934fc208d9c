namespace StashMatch.Knitting.Matching.Search;

/// <summary>Leftovers whose colours read as one, which may serve only so many items under the colour rule together.</summary>
internal sealed record Cluster(HashSet<int> Bins, int Strands, int Others)
{
    /// <summary>Whether equal leftovers are all among them, so that any one is.</summary>
    public bool Holds(int[] members) => Array.TrueForAll(members, Bins.Contains);
}

/// <summary>Full paths through the leftovers, one choice each, cheapest first within a gap.</summary>
internal sealed class WorthPaths : IDisposable
{
    private const int MostPaths = 400;
    private const double Rounding = 1e-6;
    private readonly Patterns _patterns;
    private readonly AllChoices _all;
    private readonly List<LeftoverChoices> _layers;
    private readonly ulong[] _adds;
    private readonly ulong[] _least;
    private readonly List<StateMap> _maps = [];
    private readonly int[] _path;
    private readonly ulong _guards;
    private readonly ulong _room;
    private readonly ulong _start;
    private readonly ulong _counts;
    private readonly ulong[] _refuses;
    private readonly Dictionary<(int, int), int> _mayTouch = [];
    private long _moves;
    private int _paths;

    /// <param name="layers">The leftovers with a choice.</param>
    /// <param name="kinds">All leftovers.</param>
    /// <param name="clusters">Colours that crowd.</param>
    /// <param name="mostMoves">The step budget.</param>
    public WorthPaths(AllChoices layers, BinKind[] kinds, IReadOnlyList<Cluster> clusters, long mostMoves)
    {
        (_patterns, _all, _moves) = (layers.Patterns, layers, mostMoves);
        (_guards, _room, _counts) = (_patterns.Guards, _patterns.Full | _patterns.Guards, (1UL << _patterns.Bits) - 1);
        _layers = [.. layers.All.SelectMany(l => Enumerable.Repeat(l, l.Copies))];

        // Those that stand beside most come last, so that walking back settles them first.
        _refuses = RefusalsOf();
        _layers = [.. _layers.OrderBy(l => l.Most(i => System.Numerics.BitOperations.PopCount(Refuses(layers.Choices[i].Pattern))))];
        (_path, _adds) = (new int[_layers.Count], new ulong[layers.Choices.Count]);
        for (var i = 0; i < _adds.Length; i++)
        {
            _adds[i] = _patterns.Packed[layers.Choices[i].Pattern];
        }

        var bits = _patterns.Bits;
        foreach (var cluster in clusters)
        {
            AddField(cluster.Strands, p => _patterns.Strands[p], k => k.Strands, cluster, kinds, ref bits, ref _guards, ref _room, ref _start);
            AddField(cluster.Others, p => _patterns.Others[p], k => k.Others, cluster, kinds, ref bits, ref _guards, ref _room, ref _start);
        }

        Fits = bits <= 63 && ((_room | _guards) - _start & _guards) == _guards;
        _least = layers.LeastBefore(_layers.ConvertAll(l => (l, 1)));
    }

    /// <summary>Whether the states fit the numbers they are packed into.</summary>
    public bool Fits { get; }

    /// <summary>Steps left of the budget.</summary>
    public long MovesLeft => Math.Max(0, _moves);

    public void Dispose() => _maps.ForEach(m => m.Dispose());

    /// <summary>Tries the full paths whose summed dearness is within <paramref name="gap"/>. Null where the budget ran out; false where none was accepted.</summary>
    public bool? Try(double gap, Func<IEnumerable<(LeftoverChoices LeftoverChoices, int Choice)>, bool> accept, CancellationToken cancel)
    {
        if (!Fits || !Fill(gap, cancel))
        {
            return null;
        }

        var last = _maps[^1];
        var finals = Enumerable.Range(0, last.Count).Where(i => (last.StateAt(i) & _counts) == _patterns.Full)
            .Select(i => (State: last.StateAt(i), Cost: last.CostAt(i))).OrderBy(f => f.Cost).ThenBy(f => f.State).ToList();
        if (finals.Count == 0)
        {
            return false;
        }

        // Paths that cost the same come in a fixed order; dearer ones only after all cheaper ones were refused.
        for (var (above, reach) = (double.MinValue, finals[0].Cost + Rounding); above < gap;)
        {
            var dearer = double.MaxValue;
            foreach (var (state, cost) in finals)
            {
                if (cost > reach)
                {
                    dearer = Math.Min(dearer, cost);
                    break;
                }

                switch (Walk(_layers.Count, state, 0, above, reach, accept, ref dearer))
                {
                    case Walked.Accepted:
                        return true;
                    case Walked.OutOfBudget:
                        return null;
                }
            }

            if (dearer > gap)
            {
                return false;
            }

            (above, reach) = (reach, dearer + Rounding);
        }

        return false;
    }

    private void AddField(
        int limit, Func<int, int> take, Func<BinKind, int> on, Cluster cluster, BinKind[] kinds, ref int bits, ref ulong guards, ref ulong room, ref ulong start)
    {
        if (limit is <= 0 or int.MaxValue)
        {
            return;
        }

        var shift = bits;
        bits += System.Numerics.BitOperations.Log2((uint)limit) + 2;
        if (bits > 63)
        {
            return;
        }

        guards |= 1UL << (bits - 1);
        room |= ((ulong)limit << shift) | (1UL << (bits - 1));
        start += (ulong)kinds.Sum(k => on(k) * k.Members.Count(m => cluster.Holds(m))) << shift;
        foreach (var layer in _all.All.Where(l => cluster.Holds(l.Members)))
        {
            for (var i = layer.From; i < layer.To; i++)
            {
                _adds[i] += (ulong)take(_all.Choices[i].Pattern) << shift;
            }
        }
    }

    private bool Fill(double gap, CancellationToken cancel)
    {
        _maps.Add(new StateMap());
        if (_least[0] != 0)
        {
            return true;
        }

        _maps[0].Reach(_start, _all.Unused);
        for (var i = 0; i < _layers.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var (from, to) = (_maps[i], new StateMap());
            _maps.Add(to);
            var (layer, least) = (_layers[i], _least[i + 1]);
            for (var at = 0; at < from.Count; at++)
            {
                var (state, cost) = (from.StateAt(at), from.CostAt(at));
                for (var c = layer.From; c < layer.To; c++)
                {
                    var total = cost + _all.Choices[c].Dear;
                    if (total > gap)
                    {
                        break;
                    }

                    if (--_moves < 0)
                    {
                        return false;
                    }

                    var after = state + _adds[c];
                    if ((_room - after & _guards) == _guards && ((after & _counts | _patterns.Guards) - least & _patterns.Guards) == _patterns.Guards)
                    {
                        to.Reach(after, total);
                    }
                }
            }
        }

        return true;
    }

    // Walks back from a full state over paths dearer than above and within reach; notes the cheapest one beyond.
    private Walked Walk(int layer, ulong state, double spent, double above, double reach, Func<IEnumerable<(LeftoverChoices LeftoverChoices, int Choice)>, bool> accept, ref double dearer)
    {
        if (layer == 0)
        {
            return spent <= above ? Walked.Refused
                : ++_paths > MostPaths ? Walked.OutOfBudget
                : accept(_layers.Zip(_path)) ? Walked.Accepted : Walked.Refused;
        }

        for (var c = _layers[layer - 1].From; c < _layers[layer - 1].To; c++)
        {
            // Equal leftovers take their choices in falling order, so that each way is seen once.
            if (layer < _layers.Count && ReferenceEquals(_layers[layer], _layers[layer - 1]) && c > _path[layer])
            {
                break;
            }

            if (((state | _guards) - _adds[c] & _guards) != _guards)
            {
                continue;
            }

            if (--_moves < 0)
            {
                return Walked.OutOfBudget;
            }

            var cost = _maps[layer - 1].CostOf(state - _adds[c]);
            if (cost == double.MaxValue)
            {
                continue;
            }

            var cheapest = spent + _all.Choices[c].Dear + cost;
            if (cheapest > reach)
            {
                dearer = Math.Min(dearer, cheapest);
                continue;
            }

            _path[layer - 1] = c;
            if (Clashes(layer - 1))
            {
                continue;
            }

            var walked = Walk(layer - 1, state - _adds[c], spent + _all.Choices[c].Dear, above, reach, accept, ref dearer);
            if (walked != Walked.Refused)
            {
                return walked;
            }
        }

        return Walked.Refused;
    }

    // For each class those of which every item stands beside every one of its own.
    private ulong[] RefusalsOf()
    {
        var (puzzle, classes) = (_patterns.Puzzle, _patterns.Classes);
        var refuses = new ulong[classes.Length];
        for (var k = 0; !puzzle.Question.Blend && k < refuses.Length; k++)
        {
            for (var l = 0; l < refuses.Length; l++)
            {
                refuses[k] |= puzzle.AlwaysBeside(classes[k], classes[l]) ? 1UL << l : 0;
            }
        }

        return refuses;
    }

    private ulong Refuses(int pattern)
    {
        var all = 0UL;
        for (var uses = _patterns.Uses[pattern]; uses != 0; uses &= uses - 1)
        {
            all |= _refuses[System.Numerics.BitOperations.TrailingZeroCount(uses)];
        }

        return all;
    }

    // Whether what was just chosen stands beside something chosen before it in every place, and too few of the leftovers may touch.
    private bool Clashes(int at)
    {
        var refuses = Refuses(_all.Choices[_path[at]].Pattern);
        for (var later = at + 1; refuses != 0 && later < _path.Length; later++)
        {
            var uses = _patterns.Uses[_all.Choices[_path[later]].Pattern];
            if ((uses & refuses) == 0 || ReferenceEquals(_layers[at], _layers[later]))
            {
                continue;
            }

            var alike = 0;
            for (var copy = at; copy < later && ReferenceEquals(_layers[copy], _layers[at]); copy++)
            {
                alike += (Refuses(_all.Choices[_path[copy]].Pattern) & uses) != 0 ? 1 : 0;
            }

            if (alike > MayTouch(at, later))
            {
                return true;
            }
        }

        return false;
    }

    // How many of the equal leftovers of one layer may touch any of another's.
    private int MayTouch(int a, int b)
    {
        if (!_mayTouch.TryGetValue((a, b), out var may))
        {
            _mayTouch[(a, b)] = may = _layers[a].Members.Count(m => Array.Exists(_layers[b].Members, n => _patterns.Puzzle.MayTouch(m, n)));
        }

        return may;
    }

    private enum Walked
    {
        Refused,
        Accepted,
        OutOfBudget,
    }
}
