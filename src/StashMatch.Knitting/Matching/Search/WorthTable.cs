using System.Buffers;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The cheapest full path through the leftovers within a gap, over all count vectors at once: quick, and one path only.</summary>
internal static class WorthTable
{
    /// <summary>Above this many states no table is made.</summary>
    public const int MostStates = 250_000;

    private const int MostNodes = 3_000_000;

    /// <summary>States a table would have; saturates.</summary>
    public static long StatesOf(Patterns patterns)
    {
        var states = 1L;
        foreach (var c in patterns.Classes)
        {
            states = Math.Min(states * (patterns.Target[c] + 1), int.MaxValue);
        }

        return states;
    }

    /// <summary>The cheapest full path as choices by layer; empty and true where there is none, null where the steps ran out.</summary>
    public static List<(LeftoverChoices LeftoverChoices, int Choice)>? Cheapest(AllChoices layers, double gap, ref long moves, out bool none, CancellationToken cancel)
    {
        var patterns = layers.Patterns;
        var states = (int)StatesOf(patterns);
        var cost = ArrayPool<double>.Shared.Rent(states);
        var node = ArrayPool<int>.Shared.Rent(states);
        var packed = ArrayPool<ulong>.Shared.Rent(states);
        var nodes = new List<(int Parent, int LeftoverChoices, int Choice)>();
        try
        {
            Array.Fill(cost, double.MaxValue, 0, states);
            var strides = Pack(patterns, packed, states);
            var least = layers.LeastBefore([.. layers.All.Select(l => (l, l.Copies))]);
            (cost[0], node[0], none) = (0, -1, false);
            var (passed, high) = (layers.Unused, 0);
            for (var i = 0; i < layers.All.Count; i++)
            {
                cancel.ThrowIfCancellationRequested();
                var layer = layers.All[i];
                var empty = layers.Choices.FindIndex(layer.From, layer.To - layer.From, c => c.Pattern == 0);
                var unused = empty < 0 ? 0 : layers.Choices[empty].Dear;
                for (var copy = 0; copy < layer.Copies; copy++)
                {
                    passed += unused;
                    var before = nodes.Count;
                    if (!Pass(layers, i, unused, gap - passed, empty < 0, strides, packed, least[i], cost, node, nodes, ref high, states, ref moves))
                    {
                        return null;
                    }

                    // What one more brings nothing to, more of them bring nothing to either.
                    if (nodes.Count == before)
                    {
                        passed += unused * (layer.Copies - copy - 1);
                        break;
                    }
                }
            }

            none = cost[states - 1] + passed > gap;
            var path = new List<(LeftoverChoices, int)>();
            for (var n = none ? -1 : node[states - 1]; n >= 0; n = nodes[n].Parent)
            {
                path.Add((layers.All[nodes[n].LeftoverChoices], nodes[n].Choice));
            }

            return path;
        }
        finally
        {
            ArrayPool<double>.Shared.Return(cost);
            ArrayPool<int>.Shared.Return(node);
            ArrayPool<ulong>.Shared.Return(packed);
        }
    }

    // One leftover: from the fullest state down, so that it is used once. Where it must be used, states without it are gone.
    private static bool Pass(
        AllChoices layers, int at, double unused, double most, bool mustUse, int[] strides, ulong[] packed, ulong least, double[] cost, int[] node,
        List<(int Parent, int LeftoverChoices, int Choice)> nodes, ref int high, int states, ref long moves)
    {
        var (layer, guards) = (layers.All[at], layers.Patterns.Guards);
        var (count, offsets, adds, deltas) = (0, new int[layer.To - layer.From], new ulong[layer.To - layer.From], new double[layer.To - layer.From]);
        for (var c = layer.From; c < layer.To; c++)
        {
            var pattern = layers.Choices[c].Pattern;
            offsets[count] = Offset(layers.Patterns, pattern, strides);
            (adds[count], deltas[count++]) = (layers.Patterns.Packed[pattern], layers.Choices[c].Dear - unused);
        }

        var room = layers.Patterns.Full | guards;
        var reached = high;
        for (var s = high; s >= 0; s--)
        {
            var from = cost[s];
            if (from == double.MaxValue)
            {
                continue;
            }

            if (((packed[s] | guards) - least & guards) != guards)
            {
                cost[s] = double.MaxValue;
                continue;
            }

            var (left, parent) = (room - packed[s], node[s]);
            if (mustUse)
            {
                cost[s] = double.MaxValue;
            }

            for (var c = 0; c < count; c++)
            {
                var total = from + deltas[c];
                if (total > most)
                {
                    break;
                }

                moves--;
                var to = s + offsets[c];
                if ((left - adds[c] & guards) == guards && total < cost[to])
                {
                    (cost[to], node[to]) = (total, nodes.Count);
                    nodes.Add((parent, at, layer.From + c));
                    reached = Math.Max(reached, to);
                }
            }
        }

        high = Math.Min(reached, states - 1);
        return moves >= 0 && nodes.Count <= MostNodes;
    }

    private static int Offset(Patterns patterns, int pattern, int[] strides)
    {
        var offset = 0;
        var counts = patterns.CountsOf(pattern);
        for (var k = 0; k < counts.Length; k++)
        {
            offset += counts[k] * strides[k];
        }

        return offset;
    }

    private static int[] Pack(Patterns patterns, ulong[] packed, int states)
    {
        var strides = new int[patterns.Classes.Length];
        packed[0] = 0;
        var size = 1;
        for (var k = 0; k < strides.Length; k++)
        {
            strides[k] = size;
            for (var n = 1; n <= patterns.Target[patterns.Classes[k]]; n++)
            {
                for (var s = 0; s < strides[k]; s++)
                {
                    packed[size++] = packed[s] + ((ulong)n << patterns.Shifts[k]);
                }
            }
        }

        return strides;
    }
}
