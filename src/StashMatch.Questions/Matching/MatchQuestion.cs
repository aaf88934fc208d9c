using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>"Can I make size C from these?" as it is said on the page, in an address, over the open interface and in a kept plan.</summary>
public static class MatchQuestion
{
    /// <summary>The most leftovers in a question.</summary>
    public const int MostLeftovers = 10_000;

    /// <summary>A hat's id, or its description.</summary>
    public static readonly Field Hat = Field.Of("hat", HatFields.All) with { OrText = true, Says = "A hat's id, or its description." };

    /// <summary>One of its sizes.</summary>
    public static readonly Field Size = Field.Text("size", 20);

    /// <summary>How many stripes; nothing said is the best of every count.</summary>
    public static readonly Field Stripes = Field.Whole("stripes", 1, 24) with { GoesWith = ["hat"], Says = "Left out: every count the hat may have is tried." };

    /// <summary>How the leftovers are spread; nothing said is own colours.</summary>
    public static readonly Field Arrangement = Field.Word<Arrangement>("arrangement");

    /// <summary>How many leftovers take turns.</summary>
    public static readonly Field InTurn = Field.Whole("inTurn", 2, 23) with { GoesWith = ["hat", "stripes", "arrangement"], Says = "From 2 to the stripes less one." };

    /// <summary>What is kept in reserve on top of the need.</summary>
    public static readonly Field AllowancePercent = Field.Number("allowancePercent", 0, 100) with { Called = "allowance", Before = ["allowance"] };

    /// <summary>How surely each leftover must last by itself for a yes; nothing said is 0.90.</summary>
    public static readonly Field Target = Field.Number("target", 0.80m, 0.99m) with { Says = "One of 0.80, 0.85, 0.90, 0.93, 0.95, 0.97, 0.98, 0.99. Left out: 0.90." };

    /// <summary>How the stripes are ordered by colour.</summary>
    public static readonly Field ColourOrder = Field.Word<ColourOrder>("colourOrder") with { Called = "colours", Before = ["colours"] };

    /// <summary>Whether neighbouring stripes may look the same.</summary>
    public static readonly Field NextDoor = Field.Word("nextDoor", "differ", "blend");

    /// <summary>One bag of leftovers; nothing said is all.</summary>
    public static readonly Field Bag = Field.Text("bag") with { Says = "One bag of the logged leftovers." };

    /// <summary>Which fibres may go in.</summary>
    public static readonly Field Fibres = Field.Word<FibreChoice>("fibres");

    /// <summary>The plan whose own yarn counts as free.</summary>
    public static readonly Field Plan = Field.Text("plan") with { Says = "The plan that is changed: its own yarn counts as free." };

    /// <summary>Leftovers: ids of logged ones, or each with its fields; nothing said is all that are logged.</summary>
    public static readonly Field Leftovers = Field.Of("leftovers", LeftoverText.Fields).Several(MostLeftovers) with
    {
        OrText = true,
        Called = "leftover",
        Before = ["leftover"],
        Says = "Ids of logged leftovers, or leftovers. Left out: all that are logged.",
    };

    /// <summary>Ids of leftovers that do not go into this hat.</summary>
    public static readonly Field Back = Field.Text("back").Several(MostLeftovers);

    /// <summary>All fields, in the order an address names them.</summary>
    public static IReadOnlyList<Field> Fields { get; } =
    [
        Hat, Size, Stripes, Arrangement, AllowancePercent, Target, NextDoor, .. ChangedHat.Fields, InTurn, ColourOrder, Bag, Fibres, Plan,
        Together.Held, Together.Joined, Pairings.Apart, Back, Leftovers, Pairings.Locks, Pairings.Never, Pairings.Like,
    ];

    /// <summary>What falls away where another field is changed, name by name: the page's script goes by it.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Gone { get; } = Fields.SelectMany(f => f.GoesWith.Select(w => (With: w, f.Name)))
        .GroupBy(g => g.With, g => g.Name, StringComparer.Ordinal).ToDictionary(g => g.Key, g => (IReadOnlyList<string>)[.. g], StringComparer.Ordinal);

    /// <summary>What an address asks.</summary>
    public static Said InAddress(IEnumerable<(string Name, string Value)> pairs)
    {
        List<(string Name, string Value)> all = [.. pairs];
        var said = SaidInAddress.Read(all, Fields);

        // A page's two lists, and addresses of before, name the two that are held together each by itself.
        var (first, second) = (all.Find(p => p.Name == "hold").Value, all.Find(p => p.Name == "holdWith").Value);
        return string.IsNullOrEmpty(first) ? said : said.With(Together.Held, Said.Several([Together.Say(first, string.IsNullOrEmpty(second) ? first : second)]));
    }

    /// <summary>The question; null with a message to each field that cannot be read.</summary>
    /// <param name="asked">What is said.</param>
    /// <param name="hat">The hat that is meant; null where it cannot be read, which has been told.</param>
    /// <param name="logged">The logged leftovers that may go into a hat.</param>
    /// <param name="usualAllowance">The reserve where nothing is said, 0 to 100 %.</param>
    public static Question? Read(Reading asked, Hat? hat, IReadOnlyList<Leftover> logged, decimal usualAllowance = 10)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(logged);
        var size = ReadSize(asked, Size, hat);
        var stripes = asked.Whole(Stripes);
        var arrangement = asked.Word<Arrangement>(Arrangement) ?? Knitting.Matching.Arrangement.OwnColours;
        var inTurn = asked.Whole(InTurn) ?? Math.Clamp((stripes ?? 4) - 1, 2, 3);
        var allowance = asked.Number(AllowancePercent) ?? usualAllowance;
        var target = ReadTarget(asked);
        var order = asked.Word<ColourOrder>(ColourOrder) ?? Knitting.Matching.ColourOrder.Any;
        var blend = asked.Text(NextDoor) == "blend";
        var fibres = asked.Word<FibreChoice>(Fibres) ?? FibreChoice.Any;
        asked.Text(Plan);
        var (there, chosen) = AskedLeftovers.Read(asked, Leftovers, logged);
        var bag = Together.Put(asked, there);
        var typed = !asked.Said[Size].IsExact;
        hat = hat is null ? null : ChangedHat.Read(asked, hat, size, stripes);
        if (hat is null || size is null)
        {
            return null;
        }

        var parts = new PartsKnown(hat, size, stripes, typed);
        var (locks, never, apart) = (Pairings.Read(asked, Pairings.Locks, parts, bag), Pairings.Read(asked, Pairings.Never, parts, bag), Pairings.ReadApart(asked, parts));
        if (asked.Errors.Any)
        {
            return null;
        }

        // What is kept in a part is asked with, chosen or not, whatever it is spun of; so are leftovers taken as one.
        var (held, back) = (locks.Select(l => l.Leftover).ToHashSet(StringComparer.Ordinal), asked.EachText(Back).ToHashSet(StringComparer.Ordinal));
        chosen?.UnionWith(Together.Named(asked.Said).Select(t => t.Id));
        return new Question(hat, size, [.. bag.Where(l => held.Contains(l.Id) || (chosen?.Contains(l.Id) != false && !back.Contains(l.Id) && fibres.Allows(l)))])
        {
            Stripes = typed && hat is PrintedHat ? null : stripes,
            Arrangement = arrangement,
            InTurn = inTurn,
            AllowancePercent = allowance,
            Target = target.Chance,
            Blend = blend,
            ColourOrder = order,
            Locks = locks,
            Never = never,
            Apart = apart,
            Like = Pairings.ReadLike(asked),
        };
    }

    /// <summary>What must be said to ask another question in place of the one that was asked, such as a repair's.</summary>
    public static Said Changed(Said asked, Question from, Question to)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var said = ChangedHat.Say(asked, from.Hat, to.Hat);
        Said Put<T>(Said all, Field field, T before, T now, Func<T, Said> say) => EqualityComparer<T>.Default.Equals(before, now) ? all : all.With(field, say(now));
        said = Put(said, Size, from.Size, to.Size, Said.Exact);
        said = Put(said, Stripes, from.Stripes, to.Stripes, s => s is { } count ? Said.Exact(Said.Number(count)) : Said.Nothing);
        said = Put(said, Arrangement, from.Arrangement, to.Arrangement, a => Said.Exact(Names.Of(a)));
        said = Put(said, InTurn, from.InTurn, to.InTurn, n => Said.Exact(Said.Number(n)));
        said = Put(said, AllowancePercent, from.AllowancePercent, to.AllowancePercent, a => Said.Exact(Said.Number(a)));
        said = Put(said, Target, from.Target, to.Target, t => Said.Exact(Said.Number((decimal)t)));
        said = Put(said, NextDoor, from.Blend, to.Blend, b => Said.Exact(b ? "blend" : "differ"));
        said = Put(said, ColourOrder, from.ColourOrder, to.ColourOrder, o => Said.Exact(Names.Of(o)));
        var gone = from.Leftovers.Select(l => l.Id).Except(to.Leftovers.Select(l => l.Id), StringComparer.Ordinal).ToList();
        said = gone.Count == 0 ? said : said.With(Back, Said.Several((said[Back].Each ?? []).Concat(gone.Select(Said.Exact))));
        said = from.Apart.SequenceEqual(to.Apart, StringComparer.Ordinal) ? said : said.With(Pairings.Apart, Said.Several(to.Apart));
        said = from.Locks.SequenceEqual(to.Locks) ? said : said.With(Pairings.Locks, Said.Several(to.Locks.Select(Pairings.Say)));
        return from.Never.SequenceEqual(to.Never) ? said : said.With(Pairings.Never, Said.Several(to.Never.Select(Pairings.Say)));
    }

    private static Rung ReadTarget(Reading asked)
    {
        if (asked.Number(Target) is not { } target)
        {
            return Rung.UsualTarget;
        }

        if (Rung.TryOf((double)target, out var rung))
        {
            return rung;
        }

        var rungs = string.Join(", ", Rung.All.Where(r => r >= Rung.LeastTarget).Select(r => r.Chance.ToString("0.00", CultureInfo.InvariantCulture)));
        asked.Wrong(Target, $"must be one of {rungs}");
        return Rung.UsualTarget;
    }

    /// <summary>One of a hat's sizes, which must be named.</summary>
    internal static string? ReadSize(Reading asked, Field field, Hat? hat)
    {
        var size = asked.Said[field].Words;
        if (string.IsNullOrWhiteSpace(size))
        {
            asked.Wrong(field, hat is null ? "is missing" : $"is missing: it must be one of {string.Join(", ", hat.SizeNames)}");
            return null;
        }

        if (hat is null || hat.SizeNames.Contains(size, StringComparer.Ordinal))
        {
            return size;
        }

        asked.Wrong(field, $"must be one of {string.Join(", ", hat.SizeNames)}");
        return null;
    }
}
