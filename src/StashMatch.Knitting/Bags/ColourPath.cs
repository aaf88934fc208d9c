using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Bags;

/// <summary>An order of leftovers in small steps of colour in which no two next-door ones read as one. Up to 12 the smallest steps in all; above, small ones.</summary>
internal static class ColourPath
{
    private const int MostExact = 12;
    private const double Forbidden = 1e6;

    // A colour nobody knows counts as different, and as no small step.
    private const double Unknown = 20;

    /// <summary>Indices in order; null where none was found. <paramref name="first"/> and <paramref name="last"/> may be settled, -1 where not.</summary>
    public static int[]? Find(IReadOnlyList<Leftover> leftovers, int first = -1, int last = -1)
    {
        var count = leftovers.Count;
        var step = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                step[i, j] = StepOf(leftovers[i], leftovers[j]);
            }
        }

        var path = count <= MostExact ? Exact(step, count, first, last) : Improved(step, count, first, last);
        return Length(path, step) < Forbidden ? path : null;
    }

    /// <summary>Every order of so many of the leftovers in which no two next-door ones read as one.</summary>
    public static IEnumerable<IReadOnlyList<Leftover>> All(IReadOnlyList<Leftover> leftovers, int count)
    {
        var order = new List<Leftover>();
        return From();

        IEnumerable<IReadOnlyList<Leftover>> From()
        {
            if (order.Count == count)
            {
                yield return order;
                yield break;
            }

            foreach (var next in leftovers)
            {
                if (order.Contains(next) || (order.Count > 0 && StepOf(order[^1], next) >= Forbidden))
                {
                    continue;
                }

                order.Add(next);
                foreach (var whole in From())
                {
                    yield return whole;
                }

                order.RemoveAt(order.Count - 1);
            }
        }
    }

    private static double StepOf(Leftover a, Leftover b)
    {
        var apart = a.Colour is { } x && b.Colour is { } y ? ColourDifference.Ciede2000(x.Lab, y.Lab) : Unknown;
        return apart < ColourRule.ReadsAsOne ? Forbidden : apart;
    }

    private static double Length(int[] path, double[,] step)
    {
        var sum = 0.0;
        for (var i = 1; i < path.Length; i++)
        {
            sum += step[path[i - 1], path[i]];
        }

        return sum;
    }

    // Over the sets of those placed and the one placed last.
    private static int[] Exact(double[,] step, int count, int first, int last)
    {
        var sets = 1 << count;
        var (best, from) = (new double[sets * count], new int[sets * count]);
        Array.Fill(best, double.MaxValue);
        for (var i = 0; i < count; i++)
        {
            if ((first < 0 || first == i) && (last != i || count == 1))
            {
                best[((1 << i) * count) + i] = 0;
            }
        }

        for (var set = 1; set < sets; set++)
        {
            for (var at = 0; at < count; at++)
            {
                var so = best[(set * count) + at];
                for (var to = 0; so < double.MaxValue && to < count; to++)
                {
                    var after = set | (1 << to);
                    if (after == set || (to == last && after != sets - 1))
                    {
                        continue;
                    }

                    if (so + step[at, to] < best[(after * count) + to])
                    {
                        (best[(after * count) + to], from[(after * count) + to]) = (so + step[at, to], at);
                    }
                }
            }
        }

        var end = Enumerable.Range(0, count).Where(i => last < 0 || i == last).MinBy(i => best[((sets - 1) * count) + i]);
        var path = new int[count];
        for (var (i, set) = (count - 1, sets - 1); i >= 0; i--)
        {
            path[i] = end;
            (set, end) = (set & ~(1 << end), from[(set * count) + end]);
        }

        return path;
    }

    // From every start to the nearest, then stretches turned round as long as it gets shorter.
    private static int[] Improved(double[,] step, int count, int first, int last)
    {
        int[]? best = null;
        for (var start = 0; start < count; start++)
        {
            if ((first >= 0 && start != first) || start == last)
            {
                continue;
            }

            var path = new List<int> { start };
            while (path.Count < count)
            {
                path.Add(Enumerable.Range(0, count).Where(i => !path.Contains(i) && (i != last || path.Count == count - 1)).MinBy(i => step[path[^1], i]));
            }

            var turned = Turned([.. path], step, first >= 0, last >= 0);
            best = best is null || Length(turned, step) < Length(best, step) ? turned : best;
        }

        return best!;
    }

    private static int[] Turned(int[] path, double[,] step, bool keepFirst, bool keepLast)
    {
        for (var again = true; again;)
        {
            again = false;
            for (var i = keepFirst ? 1 : 0; i < path.Length - 1; i++)
            {
                for (var j = i + 1; j < path.Length - (keepLast ? 1 : 0); j++)
                {
                    double Joint(int a, int b) => a < 0 || b >= path.Length ? 0 : step[path[a], path[b]];
                    var (before, after) = (Joint(i - 1, i) + Joint(j, j + 1), (i > 0 ? step[path[i - 1], path[j]] : 0) + (j + 1 < path.Length ? step[path[i], path[j + 1]] : 0));
                    if (after < before - 1e-9)
                    {
                        Array.Reverse(path, i, j - i + 1);
                        again = true;
                    }
                }
            }
        }

        return path;
    }
}
