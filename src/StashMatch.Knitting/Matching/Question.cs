using System.Runtime.CompilerServices;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>How the leftovers are spread over the hat.</summary>
public enum Arrangement
{
    /// <summary>Each stripe has a leftover of its own, which may serve strands too but no other stripe, brim or crown.</summary>
    OwnColours,

    /// <summary>Brim, stripes and crown are one part; the strands are scraps.</summary>
    OneGround,

    /// <summary>Brim and the first strand of every braid are one part; stripes as in own colours and never the thread.</summary>
    OneThread,

    /// <summary>A few leftovers take the stripes in turn.</summary>
    InTurn,

    /// <summary>Nothing but the colour rule.</summary>
    AsItFalls,
}

/// <summary>How the stripes are ordered by colour.</summary>
public enum ColourOrder
{
    /// <summary>However they fall.</summary>
    Any,

    /// <summary>In small steps from one stripe to the next.</summary>
    Gradient,

    /// <summary>In big ones.</summary>
    Contrast,
}

/// <summary>A part and a leftover the knitter has put together, or kept apart.</summary>
/// <param name="Part">A part's name, or a printed yarn letter.</param>
/// <param name="Leftover">A leftover's id.</param>
public sealed record Pairing(string Part, string Leftover)
{
    /// <summary>Two strands of it run side by side; two such locks on one part hold their leftovers together.</summary>
    public bool HeldDouble { get; init; }
}

/// <summary>"Can I make size C from these?"</summary>
/// <param name="Hat">The hat.</param>
/// <param name="Size">One of its sizes.</param>
/// <param name="Leftovers">What may go in; ids are unique, 0 to 10,000 of them.</param>
public sealed record Question(Hat Hat, string Size, IReadOnlyList<Leftover> Leftovers)
{
    /// <summary>1 to 24, or null for the best of every count the hat may have.</summary>
    public int? Stripes { get; init; }

    /// <summary>How the leftovers are spread.</summary>
    public Arrangement Arrangement { get; init; } = Arrangement.OwnColours;

    /// <summary>How many leftovers take turns, 2 to stripes − 1.</summary>
    public int InTurn { get; init; } = 3;

    /// <summary>Spare on top of the need, 0 to 100 %.</summary>
    public decimal AllowancePercent { get; init; } = 10;

    /// <summary>What every leftover used must reach by itself for a yes: a rung from 0.80 to 0.99 (0.80, 0.85, 0.90, 0.93, 0.95, 0.97, 0.98, 0.99).</summary>
    public double Target { get; init; } = 0.90;

    /// <summary>Parts of an earlier plan with their leftovers: of plans as good the one is taken that changes fewest of them. Names that are not there any more are passed over.</summary>
    public IReadOnlyList<Pairing> Like { get; init; } = [];

    /// <summary>Whether neighbouring colours may be alike.</summary>
    public bool Blend { get; init; }

    /// <summary>How the stripes are ordered by colour, among plans that are as good.</summary>
    public ColourOrder ColourOrder { get; init; }

    /// <summary>"Keep it here."</summary>
    public IReadOnlyList<Pairing> Locks { get; init; } = [];

    /// <summary>"Not this one."</summary>
    public IReadOnlyList<Pairing> Never { get; init; } = [];

    /// <summary>Parts cut out of the letter, thread or stripe they would come from, so that any leftover may serve them; each pays its own ends.</summary>
    public IReadOnlyList<string> Apart { get; init; } = [];

    private static readonly ConditionalWeakTable<IReadOnlyList<Leftover>, Bag> Ready = [];

    /// <summary>The leftovers made ready, once for all questions about the same list, which is not changed meanwhile.</summary>
    internal Bag Bag() => Ready.GetValue(Leftovers, Search.Bag.Of);
}
