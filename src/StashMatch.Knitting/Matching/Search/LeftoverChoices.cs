namespace StashMatch.Knitting.Matching.Search;

/// <summary>A pattern a leftover may take, and how much worth it gives away against the leftover's best.</summary>
internal readonly record struct Choice(int Pattern, double Dear);

/// <summary>Equal leftovers with a choice: what they may take, the least dear first, and how many of them can be used at all.</summary>
internal sealed record LeftoverChoices(BinKind Kind, int Group, int From, int To, int Copies)
{
    /// <summary>The leftovers.</summary>
    public int[] Members => Kind.Members[Group];

    /// <summary>The most of something over all choices.</summary>
    public int Most(Func<int, int> of)
    {
        var most = 0;
        for (var i = From; i < To; i++)
        {
            most = Math.Max(most, of(i));
        }

        return most;
    }
}

/// <summary>All leftovers with a choice within a gap, the likeliest to be used first.</summary>
internal sealed class AllChoices
{
    private const int MostChoices = 60_000;
    private static readonly Comparer<Choice> LeastDearFirst = Comparer<Choice>.Create((x, y) => x.Dear != y.Dear ? x.Dear.CompareTo(y.Dear) : x.Pattern.CompareTo(y.Pattern));

    private AllChoices(Patterns patterns) => Patterns = patterns;

    public Patterns Patterns { get; }

    public List<LeftoverChoices> All { get; } = [];

    public List<Choice> Choices { get; } = [];

    /// <summary>What leftovers that cannot be used at all give away by that.</summary>
    public double Unused { get; private set; }

    /// <summary>Null where there are too many choices; <paramref name="none"/> where some leftover has none within the gap.</summary>
    /// <param name="patterns">What a leftover may take.</param>
    /// <param name="prices">The prices.</param>
    /// <param name="gap">Worth that may be given away.</param>
    /// <param name="none">Whether some leftover has no choice.</param>
    /// <param name="anyColour">Where colours do not matter, what leaves a leftover useful need be tried only on as many of the longest as there are items: any other may change with one of those that is not used.</param>
    public static AllChoices? Within(Patterns patterns, Prices prices, double gap, out bool none, bool anyColour = false)
    {
        var (layers, choices, items) = (new AllChoices(patterns), new List<Choice>(), patterns.Target.Sum());
        none = false;
        foreach (var kind in prices.Kinds)
        {
            var longer = 0;
            for (var g = kind.Holds.Length - 1; g >= 0; g--)
            {
                choices = layers.Choices;
                var from = choices.Count;
                prices.ChoicesWithin(kind, g, gap, !anyColour || longer < items, choices);
                longer += kind.Members[g].Length;
                if (choices.Count == from)
                {
                    none = true;
                    return layers;
                }

                if (choices.Count == from + 1 && choices[from].Pattern == 0)
                {
                    layers.Unused += choices[from].Dear * kind.Members[g].Length;
                    choices.RemoveAt(from);
                    continue;
                }

                if (choices.Count > MostChoices)
                {
                    return null;
                }

                choices.Sort(from, choices.Count - from, LeastDearFirst);
                var (many, copies) = (kind.Members[g].Length, 0);
                for (var c = from; copies < many && c < choices.Count; c++)
                {
                    copies += patterns.CopiesOf(choices[c].Pattern);
                }

                if (many > copies)
                {
                    var empty = choices.FindIndex(from, c => c.Pattern == 0);
                    none |= empty < 0;
                    layers.Unused += (many - copies) * (empty < 0 ? 0 : choices[empty].Dear);
                }

                layers.All.Add(new LeftoverChoices(kind, g, from, choices.Count, Math.Clamp(copies, 1, many)));
            }
        }

        double Reluctance(LeftoverChoices l) => choices[l.From].Pattern != 0 ? choices[l.From].Dear - 1 : choices[l.From + 1].Dear;
        layers.All.Sort((x, y) => Reluctance(x) is var a && Reluctance(y) is var b && a != b ? a.CompareTo(b) : x.Members[0].CompareTo(y.Members[0]));
        return layers;
    }

    /// <summary>The least of each class that must be covered before each layer, packed, since those after it cannot bear more; at the end everything.</summary>
    /// <param name="order">AllChoices in the order they are gone through, and how many of each one's leftovers at that place.</param>
    public ulong[] LeastBefore(IReadOnlyList<(LeftoverChoices LeftoverChoices, int Copies)> order)
    {
        var least = new ulong[order.Count + 1];
        least[^1] = Patterns.Full;
        Span<int> wanted = stackalloc int[Patterns.Classes.Length];
        for (var k = 0; k < wanted.Length; k++)
        {
            wanted[k] = Patterns.Target[Patterns.Classes[k]];
        }

        for (var i = order.Count - 1; i >= 0; i--)
        {
            var (layer, copies) = order[i];
            for (var k = 0; k < wanted.Length; k++)
            {
                var most = 0;
                for (var c = layer.From; c < layer.To; c++)
                {
                    most = Math.Max(most, Patterns.CountsOf(Choices[c].Pattern)[k]);
                }

                wanted[k] = Math.Max(0, wanted[k] - (most * copies));
                least[i] |= (ulong)wanted[k] << Patterns.Shifts[k];
            }
        }

        return least;
    }

    /// <summary>What only one leftover can serve lies on it; the rest as chosen, the first of equal leftovers first.</summary>
    public List<Slot> ToSlots(IEnumerable<(LeftoverChoices LeftoverChoices, int Choice)> path)
    {
        var (slots, target, classes) = (new List<Slot>(), Patterns.Target, Patterns.Puzzle.Classes);
        foreach (var (layer, choice) in path.OrderBy(p => p.LeftoverChoices.Members[0]).ThenBy(p => p.Choice))
        {
            var pattern = Choices[choice].Pattern;
            if (pattern == 0 || layer.Members[0] >= Patterns.Puzzle.Bins)
            {
                continue;
            }

            var counts = new int[target.Length];
            var taken = Patterns.CountsOf(pattern);
            for (var k = 0; k < taken.Length; k++)
            {
                counts[Patterns.Classes[k]] = taken[k];
            }

            slots.Add(new Slot(layer.Members, counts));
        }

        for (var c = 0; c < target.Length; c++)
        {
            if (Patterns.SetAside && classes[c].OnlyBin is >= 0 and var only && target[c] > 0)
            {
                if (slots.Find(s => s.Members is [var one] && one == only) is not { } slot)
                {
                    slot = new Slot([only], new int[target.Length]);
                    slots.Add(slot);
                }

                slot.Counts[c] = target[c];
            }
        }

        return slots;
    }
}
