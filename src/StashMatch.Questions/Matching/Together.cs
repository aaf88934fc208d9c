using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>Leftovers asked about as one: two held together, or several knitted one after the other.</summary>
public static class Together
{
    private const int MostCharacters = 200;

    /// <summary>What they are known by together; in an address, made of their own ids.</summary>
    public static readonly Field Id = Field.Text("id", MostCharacters) with { IsAside = true };

    /// <summary>Which they are.</summary>
    public static readonly Field Of = Field.Text("of").Several(10);

    /// <summary>Two held together; one named twice is held double with itself.</summary>
    public static readonly Field Held = Field.Of("heldTogether", Id, Of).Several(100);

    /// <summary>Two to ten knitted one after the other.</summary>
    public static readonly Field Joined = Field.Of("joined", Id, Of).Several(100) with { Before = ["join"] };

    /// <summary>What is said of leftovers to be taken as one.</summary>
    public static Said Say(params IEnumerable<string> ids) => Said.Of((Of, Said.Several(ids.Select(Said.Typed))));

    /// <summary>The ids each is known by, and which they are.</summary>
    public static IEnumerable<(string Id, IReadOnlyList<string> Of)> Named(Said asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return NamedHeld(asked).Concat(NamedJoined(asked)).Select(n => (n.Key, n.Value));
    }

    /// <summary>Those held together.</summary>
    public static IEnumerable<KeyValuePair<string, IReadOnlyList<string>>> NamedHeld(Said asked) => NamedBy(asked, Held, '+');

    /// <summary>Those knitted one after the other.</summary>
    public static IEnumerable<KeyValuePair<string, IReadOnlyList<string>>> NamedJoined(Said asked) => NamedBy(asked, Joined, '~');

    /// <summary>Puts each in the place of its leftovers; what stays of a longer one held stays under its own id.</summary>
    public static IReadOnlyList<Leftover> Put(Reading asked, IReadOnlyList<Leftover> leftovers)
    {
        ArgumentNullException.ThrowIfNull(asked);
        List<Leftover> bag = [.. leftovers];
        foreach (var (one, i) in asked.Each(Held).Select((o, i) => (o, i)))
        {
            if (KnownBy(asked, Held, i, one, '+', bag) is not { } id)
            {
                continue;
            }

            var found = Members(one.Said).Select(o => bag.Find(l => l.Id == o)).OfType<Leftover>().ToList();
            if (Members(one.Said).Count != 2 || found.Count != 2 || found.Exists(l => l.Held.Value < 1))
            {
                one.Wrong(Of, "must be the ids of two leftovers of a metre or more, or of one twice");
                continue;
            }

            var (together, rest) = HeldTogether.AsOne(id, found[0], found[1]);
            bag.RemoveAll(found.Contains);
            bag.Add(together);
            bag.AddRange(rest);
        }

        foreach (var (one, i) in asked.Each(Joined).Select((o, i) => (o, i)))
        {
            if (KnownBy(asked, Joined, i, one, '~', bag) is not { } id)
            {
                continue;
            }

            var of = Members(one.Said);
            var found = of.Distinct(StringComparer.Ordinal).Select(o => bag.Find(l => l.Id == o)).OfType<Leftover>().ToList();
            if (of is not { Count: >= 2 and <= 10 } || found.Count != of.Count || !found.TrueForAll(Knitting.Yarns.Joined.CanJoin)
                || found.Sum(l => l.Weighing.Net.Value) > Weighing.MostGrams)
            {
                one.Wrong(Of, $"must be the ids of 2 to 10 different leftovers, each longer than {Knitting.Yarns.Joined.Tails} m");
                continue;
            }

            bag.RemoveAll(found.Contains);
            bag.Add(Knitting.Yarns.Joined.AsOne(id, found));
        }

        return bag;
    }

    private static IEnumerable<KeyValuePair<string, IReadOnlyList<string>>> NamedBy(Said asked, Field field, char sign)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return (asked[field].Each ?? []).Select(one => KeyValuePair.Create(Known(one, sign), Members(one))).DistinctBy(n => n.Key, StringComparer.Ordinal);
    }

    private static IReadOnlyList<string> Members(Said one) => [.. (one[Of].Each ?? []).Select(o => o.Words ?? "")];

    private static string Known(Said one, char sign) => one[Id].Words ?? string.Join(sign, Members(one));

    private static string? KnownBy(Reading asked, Field field, int index, Reading one, char sign, List<Leftover> bag)
    {
        var id = Known(one.Said, sign);
        if (!string.IsNullOrWhiteSpace(id) && id.Length <= MostCharacters && !bag.Exists(l => l.Id == id))
        {
            return id;
        }

        asked.Errors.Add($"{asked.Place(field, index)}.{Id.Name}", $"is missing, over {MostCharacters} characters, or there already");
        return null;
    }
}
