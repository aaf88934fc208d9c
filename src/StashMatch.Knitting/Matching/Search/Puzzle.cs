using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The question in integers: items, leftovers, and the rules between them. Leftovers stand in a fixed order, so the order asked changes nothing.</summary>
internal sealed class Puzzle
{
    private readonly Bag _bag;
    private readonly int[] _at;

    private Puzzle(Question question, HatNeeds hat, Grouping grouping, Bag bag, int[] at, Item[] items, ItemClass[] classes)
    {
        (Question, Hat, Grouping, _bag, _at, Items, Classes) = (question, hat, grouping, bag, at, items, classes);
        Held = [.. at.Select(b => bag.Held[b])];
        Beside = [.. items.Select(_ => new List<int>())];
        foreach (var (a, b) in grouping.NextDoor)
        {
            foreach (var x in items.Where(i => i.Group == a))
            {
                foreach (var y in items.Where(i => i.Group == b))
                {
                    Beside[x.Index].Add(y.Index);
                    Beside[y.Index].Add(x.Index);
                }
            }
        }

        Crowds = question.Blend ? Crowds.NoLimit : Crowds.Of(items, classes, Beside);
    }

    public Question Question { get; }

    public HatNeeds Hat { get; }

    public Grouping Grouping { get; }

    public int Bins => _at.Length;

    public long[] Held { get; }

    public Item[] Items { get; }

    public ItemClass[] Classes { get; }

    /// <summary>For each item those under the colour rule with it.</summary>
    public List<int>[] Beside { get; }

    /// <summary>How many items one colour may serve.</summary>
    public Crowds Crowds { get; }

    public bool OwnColours => Question.Arrangement is Arrangement.OwnColours or Arrangement.OneThread;

    public Leftover Leftover(int bin) => _bag.Leftovers[_at[bin]];

    /// <summary>An index for each colour, -1 for one not known.</summary>
    public int ColourOf(int bin) => _bag.ColourOf(_at[bin]);

    public Colours.Lab LabOf(int colour) => _bag.LabOf(colour);

    /// <summary>Whether two leftovers may lie side by side: different ones, dE00 of 5 or more; a missing colour counts as different.</summary>
    public bool MayTouch(int a, int b) => Question.Blend || (a != b && _bag.Apart(_at[a], _at[b]));

    /// <summary>Whether an item may come from a leftover, everything placed so far considered, metres aside.</summary>
    public bool Admits(Item item, int bin, int[] binOf)
    {
        if (!Classes[item.Class].Fits[bin])
        {
            return false;
        }

        foreach (var n in Beside[item.Index])
        {
            if (binOf[n] >= 0 && !MayTouch(bin, binOf[n]))
            {
                return false;
            }
        }

        if (!OwnColours || item.Role == Role.Free)
        {
            return true;
        }

        for (var i = 0; i < Items.Length; i++)
        {
            if (i != item.Index && binOf[i] == bin && (Items[i].Role == Role.Stripe || (Items[i].Role == Role.Head && item.Role == Role.Stripe)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether every item of one class stands beside every one of another.</summary>
    public bool AlwaysBeside(int c, int d)
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

        return c != d;
    }

    /// <summary>dE00 between two leftovers in hundredths, to the nearest; -1 where a colour is not known.</summary>
    public int StepBetween(int a, int b) => _bag.Step(_at[a], _at[b]);

    /// <summary>What each leftover may bear at a rung: ⌊held / (1 + rung)⌋.</summary>
    public long[] CapacityAt(decimal rungPercent)
    {
        var thousandths = rungPercent * 1000;
        if (thousandths != Math.Floor(thousandths))
        {
            return [.. Held.Select(h => (long)Math.Floor(h * 100m / (100m + rungPercent)))];
        }

        var over = 100_000 + (long)thousandths;
        return rungPercent == 0 ? Held : [.. Held.Select(h => h * 100_000 / over)];
    }

    /// <summary>Lays a question out. <paramref name="brimSet"/> limits the brim's leftovers; null lets all in.</summary>
    public static Puzzle Of(Question question, HatNeeds hat, BrimSet? brimSet)
    {
        var bag = question.Bag();
        var pins = PinsOf(question);
        var grouping = Grouping.Of(hat, question.Arrangement, question.InTurn, pins, question.Apart);
        var at = question.Locks.Count == 0 ? bag.OfClass(hat.WeightClass) : WithLocked(bag, hat, question.Locks);
        var everyone = Array.ConvertAll(at, b => bag.ClassOf(b) == hat.WeightClass);
        var items = new List<Item>();
        var classes = new List<ItemClass>();
        var known = new Dictionary<(long, int, Role, Crowd, int, string), int>();
        var crowds = Crowds.KindsOf(grouping);
        for (var g = 0; g < grouping.Groups.Count; g++)
        {
            var group = grouping.Groups[g];
            var need = NeedOf(hat, group);
            var role = group.HasStripe ? Role.Stripe : group.HasHead ? Role.Head : Role.Free;
            var band = Grouping.Band(group.Kind);
            var hasBrim = group.Members.Any(m => hat.Parts[m].Kind == PartKind.Brim);
            foreach (var (strand, locks, never) in Wishes(question, hat, group, pins))
            {
                var brimRule = hasBrim && locks.Count == 0 ? brimSet : null;
                var each = need * strand;
                var key = (each, band, role, crowds[g], brimRule?.Width ?? -1, $"{string.Join('\u0001', locks)}\u0002{string.Join('\u0001', never)}");
                if (!known.TryGetValue(key, out var c))
                {
                    known[key] = c = classes.Count;
                    classes.Add(new ItemClass(each, band, role, crowds[g], FitsOf(bag, at, everyone, brimRule, locks, never), 0));
                }

                classes[c] = classes[c] with { Count = classes[c].Count + 1 };
                items.Add(new Item(items.Count, g, each, band, role, hasBrim, c));
            }
        }

        return new Puzzle(question, hat, grouping, bag, at, [.. items], [.. classes]);
    }

    /// <summary>What a group takes of one strand, millimetres.</summary>
    public long NeedOf(PartGroup group) => NeedOf(Hat, group);

    private static long NeedOf(HatNeeds hat, PartGroup group)
    {
        var need = 0L;
        foreach (var m in group.Members)
        {
            need += hat.Parts[m].Need(hat.Usage, m == group.EndsAt).Millimetres;
        }

        return need;
    }

    private static Dictionary<string, string> PinsOf(Question question) => question.Locks.Select(p => (p.Part, Pin: "keep " + p.Leftover))
        .Concat(question.Never.Select(p => (p.Part, Pin: "never " + p.Leftover)))
        .GroupBy(p => p.Part, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => string.Join('\n', g.Select(p => p.Pin).Order(StringComparer.Ordinal)), StringComparer.Ordinal);

    private static int[] WithLocked(Bag bag, HatNeeds hat, IReadOnlyList<Pairing> locks)
    {
        var locked = locks.Select(l => bag.At(l.Leftover)).ToHashSet();
        return [.. Enumerable.Range(0, bag.Leftovers.Length).Where(b => bag.ClassOf(b) == hat.WeightClass || locked.Contains(b))];
    }

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

    private static bool[] FitsOf(Bag bag, int[] at, bool[] everyone, BrimSet? brimRule, IReadOnlyList<string> locks, IReadOnlyList<string> never)
    {
        if (brimRule is null && locks.Count == 0 && never.Count == 0)
        {
            return everyone;
        }

        var fits = new bool[at.Length];
        for (var j = 0; j < at.Length; j++)
        {
            var id = bag.Leftovers[at[j]].Id;
            fits[j] = (locks.Count > 0 ? locks.All(l => l == id) : everyone[j])
                && !never.Contains(id, StringComparer.Ordinal)
                && (brimRule is null || brimRule.Holds(bag.BrimOf(at[j])));
        }

        return fits;
    }
}
