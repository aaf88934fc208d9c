namespace StashMatch.Knitting.Matching;

/// <summary>Full paths through the leftovers, one choice each, cheapest first within a gap.</summary>
internal sealed class TidyPaths
{
    private const int MostPaths = 400;
    private const long MostCells = 4_000_000;
    private const double Hair = 1e-6;
    private readonly BinChoices[] _bins;
    private readonly double[][] _dear;
    private readonly int[] _target;
    private readonly int _mostMoves;
    private readonly CancellationToken _cancel;
    private readonly int _states = 1;
    private readonly ulong _guards;
    private readonly int _bits;
    private readonly int[] _path;
    private ulong[] _packed = [];
    private double[][] _layers = [];
    private int _moves;
    private int _paths;

    /// <param name="bins">The leftovers and what each may take.</param>
    /// <param name="dear">How much worth each choice gives away against the leftover's best at the prices found.</param>
    /// <param name="target">How many of each class are to be covered.</param>
    /// <param name="mostMoves">The step budget.</param>
    /// <param name="cancel">Stops it.</param>
    public TidyPaths(BinChoices[] bins, double[][] dear, int[] target, int mostMoves, CancellationToken cancel)
    {
        (_bins, _dear, _target, _mostMoves, _cancel) = (bins, dear, target, mostMoves, cancel);
        _path = new int[bins.Length];
        foreach (var n in target)
        {
            _states *= n + 1;
            _bits += BitsOf(n);
            if (_bits <= 63)
            {
                _guards |= 1UL << (_bits - 1);
            }
        }
    }

    private int Full => _states - 1;

    /// <summary>Tries the full paths whose summed dearness is within <paramref name="gap"/>. Null where the budget ran out; false where none was accepted.</summary>
    public bool? Try(double gap, Func<IReadOnlyList<int>, bool> accept)
    {
        if (_bits > 63 || (long)_states * (_bins.Length + 1) > MostCells || !Fill(gap))
        {
            return null;
        }

        var best = _layers[^1][Full];
        if (best > gap)
        {
            return false;
        }

        // Paths that cost the same come in a fixed order; dearer ones only after all cheaper ones were refused.
        for (var (above, reach) = (double.MinValue, best + Hair); above < gap;)
        {
            var dearer = double.MaxValue;
            switch (Walk(_bins.Length, Full, 0, above, reach, accept, ref dearer))
            {
                case Walked.Accepted:
                    return true;
                case Walked.OutOfBudget:
                    return null;
            }

            if (dearer > gap)
            {
                return false;
            }

            (above, reach) = (reach, dearer + Hair);
        }

        return false;
    }

    private static int BitsOf(int n) => System.Numerics.BitOperations.Log2((uint)n) + 2;

    private bool Fill(double gap)
    {
        if (_packed.Length == 0)
        {
            _packed = [.. Enumerable.Range(0, _states).Select(Pack)];
            _layers = [.. Enumerable.Range(0, _bins.Length + 1).Select(_ => new double[_states])];
        }

        var room = _packed[Full] | _guards;
        var reached = new List<int> { 0 };
        Array.ForEach(_layers, l => Array.Fill(l, double.MaxValue));
        _layers[0][0] = 0;
        for (var i = 0; i < _bins.Length; i++)
        {
            _cancel.ThrowIfCancellationRequested();
            var (from, to, states, dear) = (_layers[i], _layers[i + 1], _bins[i].States, _dear[i]);
            var cheap = Enumerable.Range(0, states.Length).Where(k => dear[k] <= gap).OrderBy(k => dear[k]).ThenBy(k => k).ToArray();
            var next = new List<int>();
            foreach (var state in reached)
            {
                var cost = from[state];
                foreach (var k in cheap)
                {
                    var total = cost + dear[k];
                    if (total > gap)
                    {
                        break;
                    }

                    if (++_moves > _mostMoves)
                    {
                        return false;
                    }

                    if (((room - _packed[state] - _packed[states[k]]) & _guards) != _guards)
                    {
                        continue;
                    }

                    var after = state + states[k];
                    if (to[after] == double.MaxValue)
                    {
                        next.Add(after);
                    }

                    to[after] = Math.Min(to[after], total);
                }
            }

            reached = next;
        }

        return true;
    }

    // Each class in a field of its own with a guard bit above, so that one subtraction tells whether all fit.
    private ulong Pack(int state)
    {
        var (packed, shift) = (0UL, 0);
        foreach (var n in _target)
        {
            packed |= (ulong)(state % (n + 1)) << shift;
            (state, shift) = (state / (n + 1), shift + BitsOf(n));
        }

        return packed;
    }

    // Walks back from the full state over paths dearer than above and within reach; notes the cheapest one beyond.
    private Walked Walk(int layer, int state, double spent, double above, double reach, Func<IReadOnlyList<int>, bool> accept, ref double dearer)
    {
        if (layer == 0)
        {
            return spent <= above ? Walked.Refused
                : ++_paths > MostPaths ? Walked.OutOfBudget
                : accept(_path) ? Walked.Accepted : Walked.Refused;
        }

        var states = _bins[layer - 1].States;
        for (var k = 0; k < states.Length; k++)
        {
            if (((_packed[state] | _guards) - _packed[states[k]] & _guards) != _guards)
            {
                continue;
            }

            if (++_moves > 2 * _mostMoves)
            {
                return Walked.OutOfBudget;
            }

            var cost = _layers[layer - 1][state - states[k]];
            if (cost == double.MaxValue)
            {
                continue;
            }

            var cheapest = spent + _dear[layer - 1][k] + cost;
            if (cheapest > reach)
            {
                dearer = Math.Min(dearer, cheapest);
                continue;
            }

            _path[layer - 1] = k;
            var walked = Walk(layer - 1, state - states[k], spent + _dear[layer - 1][k], above, reach, accept, ref dearer);
            if (walked != Walked.Refused)
            {
                return walked;
            }
        }

        return Walked.Refused;
    }

    private enum Walked
    {
        Refused,
        Accepted,
        OutOfBudget,
    }
}
