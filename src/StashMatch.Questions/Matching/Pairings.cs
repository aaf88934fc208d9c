using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>What the knitter decided of parts and leftovers: always this one here, something else there, this part from any of them.</summary>
public static class Pairings
{
    private const int MostOfThem = 500;

    /// <summary>A part's name, or a printed yarn letter.</summary>
    public static readonly Field Part = Field.Text("part");

    /// <summary>A leftover's id; of a lock held double there may be two.</summary>
    public static readonly Field Leftover = Field.Text("leftover", 200).Several(2) with { OrOne = true };

    /// <summary>"double": two strands of it run side by side.</summary>
    public static readonly Field Held = Field.Word("held", "double") with { IsAside = true };

    /// <summary>Always here.</summary>
    public static readonly Field Locks = Field.Of("locks", Part, Leftover, Held).Several(MostOfThem) with { Called = "keep", Before = ["keep"], GoesWith = ["hat"] };

    /// <summary>Something else there.</summary>
    public static readonly Field Never = Field.Of("never", Part, Leftover).Several(MostOfThem) with { GoesWith = ["hat"] };

    /// <summary>The plan seen before: of plans as good the one is taken that changes least of it.</summary>
    public static readonly Field Like = Field.Of("like", Part, Leftover).Several(MostOfThem) with { GoesWith = ["hat", "size", "stripes", "arrangement"] };

    /// <summary>Parts cut out of the letter, thread or stripe they would come from, so that any leftover may serve them.</summary>
    public static readonly Field Apart = Field.Text("apart").Several(MostOfThem) with { GoesWith = ["hat", "stripes"] };

    /// <summary>What is said of a part and a leftover.</summary>
    public static Said Say(string part, string leftover) => Said.Of((Part, Said.Typed(part)), (Leftover, Said.Typed(leftover)));

    /// <summary>What is said of a pairing.</summary>
    internal static Said Say(Pairing pairing) =>
        pairing.HeldDouble ? Say(pairing.Part, pairing.Leftover).With(Held, Held.Words[0]) : Say(pairing.Part, pairing.Leftover);

    /// <summary>The part that is decided on.</summary>
    public static string PartOf(Said pairing)
    {
        ArgumentNullException.ThrowIfNull(pairing);
        return pairing[Part].Words ?? "";
    }

    /// <summary>The first leftover of it.</summary>
    public static string LeftoverOf(Said pairing)
    {
        ArgumentNullException.ThrowIfNull(pairing);
        return All(pairing) is [var first, ..] ? first : "";
    }

    /// <summary>Reads locks, or what is never to be.</summary>
    internal static List<Pairing> Read(Reading asked, Field field, PartsKnown parts, IReadOnlyList<Leftover> bag)
    {
        var list = new List<Pairing>();
        var ids = bag.Select(l => l.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var one in asked.Each(field))
        {
            var (part, leftovers, held) = (one.Text(Part), Named(one), one.Text(Held) is not null);
            if (part is null || !parts.Knows(part))
            {
                one.Wrong(Part, part is null ? "is missing" : $"{Short(part)} is not a part of this hat");
            }

            if (leftovers.Count == 0 || leftovers.Count > 2 || (leftovers.Count == 2 && !held))
            {
                one.Wrong(Leftover, leftovers.Count == 0 ? "is missing" : "must be one, or two held double");
            }
            else if (leftovers.FirstOrDefault(l => !ids.Contains(l)) is { } unknown)
            {
                one.Wrong(Leftover, unknown.Length == 0 ? "is missing" : $"{Short(unknown)} is not among the leftovers here");
            }
            else if (part is not null)
            {
                list.AddRange(leftovers.Distinct(StringComparer.Ordinal).Select(l => new Pairing(part, l) { HeldDouble = held }));
            }
        }

        foreach (var part in list.Where(l => l.HeldDouble).GroupBy(l => l.Part, StringComparer.Ordinal).Where(g => g.DistinctBy(l => l.Leftover, StringComparer.Ordinal).Count() > 2))
        {
            asked.Wrong(field, $"{part.Key} is held double from more than two leftovers");
        }

        return [.. list.Distinct()];
    }

    /// <summary>Reads the plan seen before. What is not there any more is passed over: it was true once and asks nothing.</summary>
    internal static IReadOnlyList<Pairing> ReadLike(Reading asked) =>
        [.. asked.Each(Like).Select(l => (Part: l.Text(Part), Leftover: Named(l) is [var first, ..] ? first : null)).Where(l => !string.IsNullOrEmpty(l.Part) && !string.IsNullOrEmpty(l.Leftover))
            .Select(l => new Pairing(l.Part!, l.Leftover!))];

    internal static IReadOnlyList<string> ReadApart(Reading asked, PartsKnown parts)
    {
        var names = asked.EachText(Apart);
        for (var i = 0; i < names.Count; i++)
        {
            if (!parts.Knows(names[i]))
            {
                asked.Errors.Add(asked.Place(Apart, i), $"{Short(names[i])} is not a part of this hat");
            }
        }

        return [.. names.Distinct(StringComparer.Ordinal)];
    }

    internal static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";

    // Those that are short enough to be ids.
    private static IReadOnlyList<string> Named(Reading one)
    {
        var all = All(one.Said);
        if (all.Any(l => l.Length > Leftover.Longest))
        {
            one.Wrong(Leftover, Leftover.Must);
        }

        return all;
    }

    private static IReadOnlyList<string> All(Said pairing) => pairing[Leftover] switch
    {
        { Each: { } each } => [.. each.Select(e => e.Words ?? "")],
        { Words: { } one } => [one],
        _ => [],
    };
}

/// <summary>The parts that may be named.</summary>
internal sealed class PartsKnown
{
    private readonly HashSet<string>? _names;
    private readonly Hat _hat;

    /// <summary>Every part the hat may have in a size; where somebody typed it, every part a hat can have, for a count is soon changed.</summary>
    public PartsKnown(Hat hat, string size, int? stripes, bool typed)
    {
        _hat = hat;
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var count in typed ? [] : stripes is { } asked ? [asked] : hat.CountsFor(size))
        {
            if (hat.TryNeeds(size, count, out var needs, out _))
            {
                names.UnionWith(needs.Parts.Select(p => p.Name));
                names.UnionWith(needs.Parts.Select(p => p.Yarn).OfType<string>());
            }
        }

        _names = typed ? null : names;
    }

    public bool Knows(string part) => _names is not null
        ? _names.Count == 0 || _names.Contains(part)
        : PartNames.Read(part) is not null || (_hat is PrintedHat printed && printed.Sizes.Any(s => s.Lines.Any(l => l.Yarn == part)));
}
