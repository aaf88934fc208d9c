using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>Like items before it is known which leftovers there are: same need, band, role, and the same wishes of the knitter.</summary>
/// <remarks><c>Brim</c>: whether the brim rule says which leftovers may serve it; <c>Locks</c>: those it is kept to; <c>Never</c>: those it must not come from.</remarks>
internal sealed record ItemShape(
    long Need, int Band, Role Role, ColourNeighbours Neighbours, bool Brim, IReadOnlyList<string> Locks, IReadOnlyList<string> Never, int Count)
{
    /// <summary>Whether the knitter said nothing of it.</summary>
    public bool Open => Locks.Count == 0 && Never.Count == 0;
}

/// <summary>A hat under one arrangement in whole millimetres: which parts merge, what each takes, what lies beside what. The same for every bag, so it is kept.</summary>
internal sealed class Layout
{
    private static readonly ConditionalWeakTable<HatNeeds, ConcurrentDictionary<(Arrangement, int), Layout>> Kept = [];

    private Layout? _withSeam;
    private Layout? _seamAlone;

    private Layout(Question question, HatNeeds hat)
        : this(question, hat, Grouping.Of(hat, question.Arrangement, question.InTurn, PinsOf(question), question.Apart))
    {
    }

    private Layout(Question question, HatNeeds hat, Grouping grouping)
    {
        (Hat, Grouping) = (hat, grouping);
        var pins = PinsOf(question);
        OwnColours = question.Arrangement is Arrangement.OwnColours or Arrangement.OneThread;
        var (items, shapes) = (new List<Item>(), new List<ItemShape>());
        var known = new Dictionary<(long, int, Role, ColourNeighbours, bool, string), int>();
        var beside = ColourLimits.KindsOf(Grouping);
        for (var g = 0; g < Grouping.Groups.Count; g++)
        {
            var group = Grouping.Groups[g];
            var need = NeedOf(group);
            var role = group.HasStripe ? Role.Stripe : group.HasHead ? Role.Head : Role.Free;
            var band = Grouping.Band(group.Kind);
            var hasBrim = group.Members.Any(m => hat.Parts[m].Kind == PartKind.Brim);
            foreach (var (strand, locks, never) in Wishes(question, hat, group, pins))
            {
                var (each, brim) = (need * strand, hasBrim && locks.Count == 0);
                var said = locks.Count + never.Count == 0 ? "" : $"{string.Join('\u0001', locks)}\u0002{string.Join('\u0001', never)}";
                var key = (each, band, role, beside[g], brim, said);
                if (!known.TryGetValue(key, out var c))
                {
                    known[key] = c = shapes.Count;
                    shapes.Add(new ItemShape(each, band, role, beside[g], brim, locks, never, 0));
                }

                shapes[c] = shapes[c] with { Count = shapes[c].Count + 1 };
                items.Add(new Item(items.Count, g, each, band, role, hasBrim, c));
            }
        }

        (Items, Shapes) = ([.. items], [.. shapes]);
        Beside = BesideOf(Items, Grouping);
        Limits = ColourLimits.Of(Items, Shapes, Beside);
        AlwaysBeside = new bool[Shapes.Length, Shapes.Length];
        for (var c = 0; c < Shapes.Length; c++)
        {
            for (var d = 0; d < Shapes.Length; d++)
            {
                AlwaysBeside[c, d] = c != d && StandBeside(c, d);
            }
        }

        LongestFirst = [.. Items.OrderByDescending(i => i.Need).ThenBy(i => i.Index)];
        Total = Items.Sum(i => i.Need);
        var stripes = Items.Where(i => i.Role == Role.Stripe).Select(i => i.Need);
        OwnLongest = !OwnColours && question.Arrangement != Arrangement.InTurn ? []
            : [.. stripes.Concat(Items.Where(i => OwnColours && i.Role == Role.Head).Select(i => i.Need).OrderDescending().Take(1)).OrderDescending()];
        (Stripes, ShortestStripe) = (stripes.Count(), stripes.DefaultIfEmpty(0).Min());
        StripesAlone = Items.Count(i => i.Role == Role.Stripe && Shapes[i.Class].Neighbours != ColourNeighbours.Other);
        AtLeast = [.. Shapes.Select(s => s.Need).Distinct().Where(n => n > 0).Select(n => (n, Items.Count(i => i.Need >= n)))];
        HasOpenBrim = Array.Exists(Shapes, s => s.Brim);
        SeamItems = Seam.ItemsOf(hat, grouping, Items);
    }

    public HatNeeds Hat { get; }

    public Grouping Grouping { get; }

    public bool OwnColours { get; }

    public Item[] Items { get; }

    public ItemShape[] Shapes { get; }

    /// <summary>For each item those under the colour rule with it.</summary>
    public int[][] Beside { get; }

    /// <summary>How many items one colour may serve.</summary>
    public ColourLimits Limits { get; }

    /// <summary>Whether every item of one class stands beside every one of another.</summary>
    public bool[,] AlwaysBeside { get; }

    public Item[] LongestFirst { get; }

    /// <summary>What wants a leftover of its own: in own colours each stripe and the longest of brim and crown, in turn each stripe's turn. Their needs, the longest first.</summary>
    public long[] OwnLongest { get; }

    /// <summary>How many items are stripes.</summary>
    public int Stripes { get; }

    /// <summary>How many of them lie beside nothing under the colour rule.</summary>
    public int StripesAlone { get; }

    /// <summary>What the shortest of them takes, millimetres.</summary>
    public long ShortestStripe { get; }

    /// <summary>For each need how many items take so much or more.</summary>
    public (long Need, int Count)[] AtLeast { get; }

    /// <summary>All needs together, millimetres.</summary>
    public long Total { get; }

    /// <summary>Whether there is a brim whose leftover the brim rule chooses.</summary>
    public bool HasOpenBrim { get; }

    /// <summary>The items of the first and the last stripe where they meet at a seam.</summary>
    public (int First, int Last)? SeamItems { get; }

    /// <summary>The same with the seam under the colour rule: as one more place, or as the only one.</summary>
    public Layout WithSeam(Question question, bool alone)
    {
        ref var kept = ref alone ? ref _seamAlone : ref _withSeam;
        if (kept is null)
        {
            var (first, last) = SeamItems!.Value;
            var pair = (Items[first].Group, Items[last].Group);
            kept = new Layout(question, Hat, Grouping with { NextDoor = alone ? [pair] : [.. Grouping.NextDoor.Append(pair).Distinct()] });
        }

        return kept;
    }

    /// <summary>The layout of a hat; kept with the hat where the knitter said nothing of single parts.</summary>
    public static Layout Of(Question question, HatNeeds hat) =>
        question.Locks.Count + question.Never.Count + question.Apart.Count > 0
            ? new Layout(question, hat)
            : Kept.GetOrCreateValue(hat).GetOrAdd(
                (question.Arrangement, question.Arrangement == Arrangement.InTurn ? question.InTurn : 0), static (_, of) => new Layout(of.question, of.hat), (question, hat));

    /// <summary>What a group takes of one strand, millimetres.</summary>
    public long NeedOf(PartGroup group)
    {
        var need = 0L;
        foreach (var m in group.Members)
        {
            need += Hat.Parts[m].Need(Hat.Usage, m == group.EndsAt).Millimetres;
        }

        return need;
    }

    private static int[][] BesideOf(Item[] items, Grouping grouping)
    {
        var (beside, of) = (new List<int>[items.Length], items.ToLookup(i => i.Group));
        for (var i = 0; i < beside.Length; i++)
        {
            beside[i] = [];
        }

        foreach (var (a, b) in grouping.NextDoor)
        {
            foreach (var x in of[a])
            {
                foreach (var y in of[b])
                {
                    beside[x.Index].Add(y.Index);
                    beside[y.Index].Add(x.Index);
                }
            }
        }

        return Array.ConvertAll(beside, b => b.ToArray());
    }

    private bool StandBeside(int c, int d)
    {
        foreach (var item in Items)
        {
            if (item.Class == c)
            {
                foreach (var other in Items)
                {
                    if (other.Class == d && !Beside[item.Index].Contains(other.Index))
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private static Dictionary<string, string> PinsOf(Question question) => question.Locks.Select(p => (p.Part, Pin: "keep " + p.Leftover))
        .Concat(question.Never.Select(p => (p.Part, Pin: "never " + p.Leftover)))
        .GroupBy(p => p.Part, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => string.Join('\n', g.Select(p => p.Pin).Order(StringComparer.Ordinal)), StringComparer.Ordinal);

    // What the knitter wishes for a group: once, or for each of two leftovers it is held double from. The count is how many strands of
    // one leftover run in it.
    private static IEnumerable<(int Strands, IReadOnlyList<string> Locks, IReadOnlyList<string> Never)> Wishes(
        Question question, HatNeeds hat, PartGroup group, Dictionary<string, string> pins)
    {
        if (pins.Count == 0)
        {
            return [(1, [], [])];
        }

        // What is said of a part goes before what is said of its printed letter; a part told apart has left it.
        var pinned = group.Members.Any(m => pins.ContainsKey(hat.Parts[m].Name) || question.Apart.Contains(hat.Parts[m].Name, StringComparer.Ordinal));
        bool Names(Pairing p) => group.Members.Any(m => hat.Parts[m].Name == p.Part || (!pinned && hat.Parts[m].Yarn == p.Part));
        var locks = question.Locks.Where(Names).ToList();
        var never = question.Never.Where(Names).Select(p => p.Leftover).Order(StringComparer.Ordinal).ToList();
        var kept = locks.Select(p => p.Leftover).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return !locks.Exists(l => l.HeldDouble) ? [(1, kept, never)]
            : kept.Count == 1 ? [(2, kept, never)]
            : kept.Select(k => (1, (IReadOnlyList<string>)[k], (IReadOnlyList<string>)never));
    }
}
