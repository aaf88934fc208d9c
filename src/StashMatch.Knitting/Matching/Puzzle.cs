using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>What a group may share a leftover with under own colours.</summary>
internal enum Role
{
    /// <summary>Strands and seam: anything.</summary>
    Free,

    /// <summary>A stripe: no other stripe, brim or crown.</summary>
    Stripe,

    /// <summary>Brim or crown: no stripe.</summary>
    Head,
}

/// <summary>A group of parts to be covered, in whole millimetres.</summary>
internal sealed record Item(int Index, long Need, int Band, Role Role, bool HasBrim, int Class);

/// <summary>Like items: same need, band, role and choice of leftovers.</summary>
internal sealed record ItemClass(long Need, int Band, Role Role, bool IsStrand, bool[] Fits, int Count);

/// <summary>The question in integers: items, leftovers, and the rules between them. Leftovers stand in a fixed order, so the order asked changes nothing.</summary>
internal sealed class Puzzle
{
    private readonly Dictionary<(int, int), bool> _apart = [];
    private readonly Lab?[] _labs;

    private Puzzle(Question question, HatNeeds hat, Grouping grouping, Leftover[] bins, Item[] items, ItemClass[] classes)
    {
        (Question, Hat, Grouping, Bins, Items, Classes) = (question, hat, grouping, bins, items, classes);
        Held = [.. bins.Select(b => b.Held.Millimetres)];
        _labs = [.. bins.Select(b => b.Colour?.Lab)];
        Beside = [.. items.Select(_ => new List<int>())];
        foreach (var (a, b) in grouping.NextDoor)
        {
            Beside[a].Add(b);
            Beside[b].Add(a);
        }
    }

    public Question Question { get; }

    public HatNeeds Hat { get; }

    public Grouping Grouping { get; }

    public Leftover[] Bins { get; }

    public long[] Held { get; }

    public Item[] Items { get; }

    public ItemClass[] Classes { get; }

    /// <summary>For each item those under the colour rule with it.</summary>
    public List<int>[] Beside { get; }

    public bool OwnColours => Question.Arrangement is Arrangement.OwnColours or Arrangement.OneThread;

    /// <summary>Whether two leftovers may lie side by side: different ones, dE00 of 5 or more; a missing colour counts as different.</summary>
    public bool MayTouch(int a, int b)
    {
        if (Question.Blend)
        {
            return true;
        }

        if (a == b)
        {
            return false;
        }

        if (_labs[a] is not { } x || _labs[b] is not { } y)
        {
            return true;
        }

        var key = a < b ? (a, b) : (b, a);
        if (!_apart.TryGetValue(key, out var apart))
        {
            _apart[key] = apart = ColourDifference.Ciede2000(x, y) >= ColourRule.ReadsAsOne;
        }

        return apart;
    }

    /// <summary>The most strands one leftover may serve: one of each braid, since a braid's two strands differ. No limit where colours may blend.</summary>
    public int MostStrands => Question.Blend ? int.MaxValue : Grouping.NextDoor.Count(p => Items[p.A].Band == 2 && Items[p.B].Band == 2) is var pairs and > 0
        ? Items.Count(i => i.Band == 2) - pairs
        : int.MaxValue;

    /// <summary>What each leftover may bear at a rung: ⌊held / (1 + rung)⌋.</summary>
    public long[] CapacityAt(decimal rungPercent) =>
        rungPercent == 0 ? Held : [.. Held.Select(h => (long)Math.Floor(h * 100m / (100m + rungPercent)))];

    /// <summary>States a count-vector table of this puzzle would have; saturates.</summary>
    public long States()
    {
        var states = 1L;
        foreach (var c in Classes)
        {
            states *= c.Count + 1;
            if (states > int.MaxValue)
            {
                return long.MaxValue;
            }
        }

        return states;
    }

    /// <summary>Lays a question out. <paramref name="brimSet"/> limits the brim's leftovers; null lets all in.</summary>
    public static Puzzle Of(Question question, HatNeeds hat, BrimSet? brimSet)
    {
        var pins = question.Locks.Select(p => (p.Part, Pin: "keep " + p.Leftover))
            .Concat(question.Never.Select(p => (p.Part, Pin: "never " + p.Leftover)))
            .GroupBy(p => p.Part, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => string.Join('\n', g.Select(p => p.Pin).Order(StringComparer.Ordinal)), StringComparer.Ordinal);
        var grouping = Grouping.Of(hat, question.Arrangement, question.InTurn, pins);
        var locked = question.Locks.Select(l => l.Leftover).ToHashSet(StringComparer.Ordinal);
        var bins = question.Leftovers
            .Where(l => l.ClassOrGuess == hat.WeightClass || locked.Contains(l.Id))
            .Where(l => l.Held.Millimetres > 0)
            .OrderByDescending(l => l.Held)
            .ThenBy(l => l.Colour?.Hex, StringComparer.Ordinal)
            .ThenBy(l => l.Id, StringComparer.Ordinal)
            .ToArray();
        var usual = bins.Select(b => b.ClassOrGuess == hat.WeightClass).ToArray();
        var items = new List<Item>();
        var classes = new List<ItemClass>();
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (group, index) in grouping.Groups.Select((g, i) => (g, i)))
        {
            var need = group.Members.Sum(m => hat.Parts[m].Need(hat.Usage, m == group.EndsAt).Millimetres);
            var role = group.HasStripe ? Role.Stripe : group.HasHead ? Role.Head : Role.Free;
            var band = Grouping.Band(group.Kind);
            var hasBrim = group.Members.Any(m => hat.Parts[m].Kind == PartKind.Brim);
            // What is said of a part goes before what is said of its printed letter.
            var pinned = group.Members.Any(m => pins.ContainsKey(hat.Parts[m].Name));
            bool Names(Pairing p) => group.Members.Any(m => hat.Parts[m].Name == p.Part || (!pinned && hat.Parts[m].Yarn == p.Part));
            var locks = question.Locks.Where(Names).Select(p => p.Leftover).Order(StringComparer.Ordinal).ToList();
            var never = question.Never.Where(Names).Select(p => p.Leftover).Order(StringComparer.Ordinal).ToList();
            var brimRule = hasBrim && locks.Count == 0 ? brimSet : null;
            var key = $"{need}|{band}|{role}|{brimRule}|{string.Join('\u0001', locks)}|{string.Join('\u0001', never)}";
            if (!known.TryGetValue(key, out var at))
            {
                var fits = new bool[bins.Length];
                for (var j = 0; j < bins.Length; j++)
                {
                    fits[j] = locks.Count > 0 ? locks.TrueForAll(l => l == bins[j].Id) : usual[j];
                    fits[j] &= !never.Contains(bins[j].Id, StringComparer.Ordinal);
                    fits[j] &= brimRule is not { } set || set.Holds(bins[j].Brim);
                }

                known[key] = at = classes.Count;
                classes.Add(new ItemClass(need, band, role, band == 2, fits, 0));
            }

            classes[at] = classes[at] with { Count = classes[at].Count + 1 };
            items.Add(new Item(index, need, band, role, hasBrim, at));
        }

        return new Puzzle(question, hat, grouping, bins, [.. items], [.. classes]);
    }
}
