namespace StashMatch.Knitting.Matching;

/// <summary>Full paths through the leftovers, one choice each, cheapest first within a gap.</summary>
/// <param name="bins">The leftovers and what each may take.</param>
/// <param name="dear">How much worth each choice gives away against the leftover's best at the prices found.</param>
/// <param name="radix">Size of each digit of a state: the class's count and one.</param>
/// <param name="full">The state in which all counts are covered.</param>
/// <param name="mostMoves">The step budget.</param>
/// <param name="cancel">Stops it.</param>
internal sealed class TidyPaths(
    IReadOnlyList<(int Bin, Tidy.Choice[] Choices)> bins, double[][] dear, int[] radix, int full, int mostMoves, CancellationToken cancel)
{
    private const int MostPaths = 2_000;
    private const double Hair = 1e-6;
    private readonly Dictionary<int, double>[] _layers = new Dictionary<int, double>[bins.Count + 1];
    private readonly int[] _path = new int[bins.Count];
    private int _moves;
    private int _paths;

    /// <summary>Tries the full paths whose summed dearness is within <paramref name="gap"/>. Null where the budget ran out; false where none was accepted.</summary>
    public bool? Try(double gap, Func<IReadOnlyList<int>, bool> accept)
    {
        _layers[0] = new() { [0] = 0 };
        for (var i = 0; i < bins.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var layer = _layers[i + 1] = [];
            var cheap = Cheap(i, gap);
            foreach (var (state, cost) in _layers[i])
            {
                foreach (var k in cheap)
                {
                    if (cost + dear[i][k] > gap)
                    {
                        break;
                    }

                    if (++_moves > mostMoves)
                    {
                        return null;
                    }

                    var choice = bins[i].Choices[k];
                    if (Fits(state, choice.State) && (!layer.TryGetValue(state + choice.State, out var known) || cost + dear[i][k] < known))
                    {
                        layer[state + choice.State] = cost + dear[i][k];
                    }
                }
            }
        }

        if (!_layers[^1].TryGetValue(full, out var best))
        {
            return false;
        }

        // Paths that cost the same come in a fixed order; dearer ones only after all cheaper ones were refused.
        for (var (above, reach) = (double.MinValue, best + Hair); above < gap;)
        {
            var dearer = double.MaxValue;
            switch (Walk(bins.Count, full, 0, above, reach, accept, ref dearer))
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

    private int[] Cheap(int i, double gap) =>
        [.. Enumerable.Range(0, bins[i].Choices.Length).Where(k => dear[i][k] <= gap).OrderBy(k => dear[i][k]).ThenBy(k => k)];

    private bool Fits(int state, int more)
    {
        foreach (var size in radix)
        {
            if ((state % size) + (more % size) >= size)
            {
                return false;
            }

            (state, more) = (state / size, more / size);
        }

        return true;
    }

    private bool Holds(int state, int part)
    {
        foreach (var size in radix)
        {
            if (part % size > state % size)
            {
                return false;
            }

            (state, part) = (state / size, part / size);
        }

        return true;
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

        var (_, choices) = bins[layer - 1];
        for (var k = 0; k < choices.Length; k++)
        {
            if (!Holds(state, choices[k].State) || !_layers[layer - 1].TryGetValue(state - choices[k].State, out var cost))
            {
                continue;
            }

            if (++_moves > mostMoves)
            {
                return Walked.OutOfBudget;
            }

            var cheapest = spent + dear[layer - 1][k] + cost;
            if (cheapest > reach)
            {
                dearer = Math.Min(dearer, cheapest);
                continue;
            }

            _path[layer - 1] = k;
            var walked = Walk(layer - 1, state - choices[k].State, spent + dear[layer - 1][k], above, reach, accept, ref dearer);
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
