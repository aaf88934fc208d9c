namespace StashMatch.Knitting.Matching.Search;

/// <summary>What an item stands beside, as far as one colour serving several matters.</summary>
internal enum ColourNeighbours
{
    /// <summary>Nothing under the colour rule.</summary>
    None,

    /// <summary>Only the other strand of its braid.</summary>
    Strand,

    /// <summary>Stripes, or whatever is merged with them.</summary>
    Other,
}

/// <summary>How many items leftovers of one colour may serve at most, since side by side they would read as one.</summary>
/// <param name="Strands">Braid strands: one of each braid.</param>
/// <param name="Others">Stripes, and whatever is merged with them.</param>
internal readonly record struct ColourLimits(int Strands, int Others)
{
    /// <summary>Where colours may blend.</summary>
    public static ColourLimits NoLimit { get; } = new(int.MaxValue, int.MaxValue);

    public int Of(ColourNeighbours crowd) => crowd switch { ColourNeighbours.Strand => Strands, ColourNeighbours.Other => Others, _ => int.MaxValue };

    /// <summary>What each group stands beside.</summary>
    public static ColourNeighbours[] KindsOf(Grouping grouping)
    {
        var beside = new List<int>[grouping.Groups.Count];
        for (var g = 0; g < beside.Length; g++)
        {
            beside[g] = [];
        }

        foreach (var (a, b) in grouping.NextDoor)
        {
            beside[a].Add(b);
            beside[b].Add(a);
        }

        bool IsStrand(int g) => grouping.Groups[g].Kind == Hats.PartKind.Strand && beside[g].Count == 1;
        return [.. beside.Select((near, g) => near.Count == 0 ? ColourNeighbours.None : IsStrand(g) && IsStrand(near[0]) ? ColourNeighbours.Strand : ColourNeighbours.Other)];
    }

    public static ColourLimits Of(Item[] items, ItemShape[] classes, int[][] beside)
    {
        var strands = items.Count(i => classes[i.Class].Neighbours == ColourNeighbours.Strand);
        var others = items.Where(i => classes[i.Class].Neighbours == ColourNeighbours.Other).Select(i => i.Index).ToHashSet();
        return new ColourLimits(strands / 2, MostApart(others, beside));
    }

    // The most items no two of which stand side by side: a path or ring at once, else with and without the one with most neighbours.
    private static int MostApart(HashSet<int> those, int[][] beside)
    {
        if (those.Count == 0)
        {
            return 0;
        }

        var most = those.MaxBy(i => (beside[i].Count(those.Contains), -i));
        if (beside[most].Count(those.Contains) <= 2)
        {
            return Paths(those, beside);
        }

        var without = new HashSet<int>(those);
        without.Remove(most);
        var with = new HashSet<int>(without);
        with.ExceptWith(beside[most]);
        return Math.Max(MostApart(without, beside), 1 + MostApart(with, beside));
    }

    private static int Paths(HashSet<int> those, int[][] beside)
    {
        var (sum, seen) = (0, new HashSet<int>());
        foreach (var start in those)
        {
            if (!seen.Add(start))
            {
                continue;
            }

            var (length, ends) = (0, 0);
            var open = new Stack<int>([start]);
            while (open.TryPop(out var at))
            {
                length++;
                ends += 2;
                foreach (var near in beside[at])
                {
                    if (those.Contains(near))
                    {
                        ends--;
                        if (seen.Add(near))
                        {
                            open.Push(near);
                        }
                    }
                }
            }

            sum += ends == 0 ? length / 2 : (length + 1) / 2;
        }

        return sum;
    }
}
