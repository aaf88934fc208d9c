namespace StashMatch.Knitting.Matching.Search;

/// <summary>Leftovers that may take the same patterns: same fit, and the same rules from what lies on them already.</summary>
internal sealed class BinKind
{
    private BinKind(Patterns patterns, ulong fits, Base on, List<int> bins, long[] capacity, long[] load)
    {
        HasBase = on.Laid;
        var limits = patterns.Puzzle.Limits;
        bool May(int p) => (patterns.Uses[p] & ~fits) == 0
            && (!patterns.Puzzle.OwnColours || patterns.Roles[p] == Role.Free || on.Role == Role.Free || (on.Role == Role.Head && patterns.Roles[p] == Role.Head))
            && patterns.Strands[p] + on.Strands <= limits.Strands && patterns.Others[p] + on.Others <= limits.Others;
        var all = new List<int>(patterns.Count);
        for (var p = 0; p < patterns.Count; p++)
        {
            if (May(p))
            {
                all.Add(p);
            }
        }

        Patterns = [.. all];
        Loads = Array.ConvertAll(Patterns, p => patterns.Loads[p]);
        bins.Sort((a, b) => (capacity[a] - load[a]).CompareTo(capacity[b] - load[b]) is var order and not 0 ? order : a.CompareTo(b));
        var (holds, members) = (new List<long>(bins.Count), new List<int[]>(bins.Count));
        for (var from = 0; from < bins.Count;)
        {
            var (to, held) = (from + 1, capacity[bins[from]] - load[bins[from]]);
            while (to < bins.Count && capacity[bins[to]] - load[bins[to]] == held)
            {
                to++;
            }

            holds.Add(held);
            members.Add([.. bins.GetRange(from, to - from)]);
            from = to;
        }

        (Holds, Members) = ([.. holds], [.. members]);
        (Strands, Others) = (on.Strands, on.Others);
        (Cost, ByCost, Scratch) = (new double[Patterns.Length], new int[Patterns.Length], new int[Patterns.Length]);
    }

    private BinKind(Patterns patterns, int[] taken, long[] holds, int[][] members)
    {
        (Patterns, Holds, Members) = (taken, holds, members);
        Loads = Array.ConvertAll(Patterns, p => patterns.Loads[p]);
        (Cost, ByCost, Scratch) = (new double[Patterns.Length], new int[Patterns.Length], new int[Patterns.Length]);
    }

    /// <summary>Whether something lies on them from the start, so that nothing more is not the same as unused.</summary>
    public bool HasBase { get; }

    /// <summary>What lies on them from the start, as far as the colour rule counts it.</summary>
    public int Strands { get; }

    public int Others { get; }

    public int[] Patterns { get; }

    /// <summary>Millimetres of each pattern, rising.</summary>
    public int[] Loads { get; }

    /// <summary>What each group of equal leftovers can still bear, the least first.</summary>
    public long[] Holds { get; }

    /// <summary>The leftovers of each group: one is as good as another but for its colour.</summary>
    public int[][] Members { get; }

    public double[] Cost { get; }

    /// <summary>Patterns from the cheapest on; sorted when asked for.</summary>
    public int[] ByCost { get; }

    /// <summary>Where the groups of this kind begin among those of all kinds.</summary>
    public int First { get; private set; }

    public int[] Scratch { get; }

    /// <summary>Sorts the leftovers of a puzzle into kinds; null where one cannot bear what only it can serve.</summary>
    public static BinKind[]? Sort(Patterns patterns, long[] capacity)
    {
        var puzzle = patterns.Puzzle;
        var (load, on, fits) = (new long[capacity.Length], new Base[capacity.Length], new ulong[capacity.Length]);
        for (var c = 0; c < puzzle.Classes.Length; c++)
        {
            var own = puzzle.Classes[c];
            for (var n = 0; patterns.SetAside && own.OnlyBin >= 0 && n < patterns.Target[c]; n++)
            {
                var bin = own.OnlyBin;
                load[bin] += own.Need;
                if (load[bin] > capacity[bin] || on[bin].With(own, puzzle.OwnColours) is not { } with)
                {
                    return null;
                }

                on[bin] = with;
            }
        }

        for (var k = 0; k < patterns.Classes.Length; k++)
        {
            var fitting = puzzle.Classes[patterns.Classes[k]].Fits;
            for (var j = 0; j < fits.Length; j++)
            {
                fits[j] |= fitting[j] ? 1UL << k : 0;
            }

            // What stands beside something only one leftover can serve cannot come from one that reads as it.
            for (var c = 0; !puzzle.Question.Blend && c < puzzle.Classes.Length; c++)
            {
                if (patterns.SetAside && patterns.Target[c] > 0 && puzzle.Classes[c].OnlyBin is >= 0 and var only && puzzle.AlwaysBeside(patterns.Classes[k], c))
                {
                    for (var j = 0; j < fits.Length; j++)
                    {
                        fits[j] &= puzzle.MayTouch(j, only) ? ulong.MaxValue : ~(1UL << k);
                    }
                }
            }
        }

        var like = new Dictionary<(ulong, Base), List<int>>();
        for (var j = 0; j < fits.Length; j++)
        {
            if (!like.TryGetValue((fits[j], on[j]), out var bins))
            {
                like[(fits[j], on[j])] = bins = [];
            }

            bins.Add(j);
        }

        List<BinKind> kinds = [.. like.Select(k => new BinKind(patterns, k.Key.Item1, k.Key.Item2, k.Value, capacity, load))];
        if (patterns.Worth.MayOverfill)
        {
            kinds.AddRange(Bare(patterns, capacity.Length));
        }

        var first = 0;
        foreach (var kind in kinds)
        {
            kind.First = first;
            first += kind.Holds.Length;
        }

        return [.. kinds];
    }

    // For each item a leftover that holds nothing and takes just that: the item is left bare. They are numbered after the leftovers there are.
    private static IEnumerable<BinKind> Bare(Patterns patterns, int number)
    {
        for (var k = 0; k < patterns.Classes.Length; k++)
        {
            var many = patterns.Target[patterns.Classes[k]];
            var alone = Array.IndexOf(patterns.Packed, 1UL << patterns.Shifts[k]);
            yield return new BinKind(patterns, [0, alone], [0], [[.. Enumerable.Range(number, many)]]);
            number += many;
        }
    }

    public void SetCosts(Patterns patterns, double[] price)
    {
        for (var i = 0; i < Patterns.Length; i++)
        {
            var cost = 0.0;
            var counts = patterns.CountsOf(Patterns[i]);
            for (var k = 0; k < counts.Length; k++)
            {
                cost += price[k] * counts[k];
            }

            Cost[i] = cost;
        }
    }

    public void SortByCost()
    {
        for (var i = 0; i < ByCost.Length; i++)
        {
            ByCost[i] = i;
        }

        Array.Sort(ByCost, (a, b) => Cost[a] != Cost[b] ? Cost[a].CompareTo(Cost[b]) : a.CompareTo(b));
    }

    /// <summary>The first pattern with a load of at least so much.</summary>
    public int FirstFrom(long load)
    {
        var (low, high) = (0, Loads.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Loads[middle] < load ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>What only one leftover can serve and so lies on it from the start.</summary>
    private readonly record struct Base(bool Laid, Role Role, int Strands, int Others)
    {
        public Base? With(ItemClass own, bool ownColours)
        {
            var clash = ownColours && own.Role != Role.Free && Role != Role.Free && (own.Role == Role.Stripe || Role == Role.Stripe);
            return clash ? null : new(
                true,
                own.Role == Role.Free ? Role : own.Role,
                Strands + (own.Neighbours == ColourNeighbours.Strand ? 1 : 0),
                Others + (own.Neighbours == ColourNeighbours.Other ? 1 : 0));
        }
    }
}
