namespace StashMatch.Knitting.Odds;

/// <summary>One of the fixed chances a plan is held to, from "by the label" up to 0.99: how surely each leftover lasts by itself.</summary>
/// <remarks>The rungs and what is asked at them are ours. <c>default</c> is <see cref="ByTheLabel"/>.</remarks>
public readonly record struct Rung : IComparable<Rung>
{
    private static readonly double[] Chances = [0.50, 0.60, 0.70, 0.80, 0.85, 0.90, 0.93, 0.95, 0.97, 0.98, 0.99];

    private Rung(int index) => Index = index;

    /// <summary>All rungs, the lowest first.</summary>
    public static IReadOnlyList<Rung> All { get; } = [.. Enumerable.Range(0, Chances.Length).Select(i => new Rung(i))];

    /// <summary>The lowest: the metres are there by the label, and no more is asked.</summary>
    public static Rung ByTheLabel => default;

    /// <summary>From here on it is "only just": 0.60.</summary>
    public static Rung OnlyJust { get; } = Of(0.60);

    /// <summary>The lowest target a knitter may set: 0.80.</summary>
    public static Rung LeastTarget { get; } = Of(0.80);

    /// <summary>The target unless the knitter sets another: 0.90.</summary>
    public static Rung UsualTarget { get; } = Of(0.90);

    /// <summary>What a leftover in doubt must reach at least: 0.97.</summary>
    public static Rung InDoubt { get; } = Of(0.97);

    /// <summary>The highest: 0.99.</summary>
    public static Rung Highest => All[^1];

    /// <summary>Its place in <see cref="All"/>, from 0.</summary>
    public int Index { get; }

    /// <summary>The chance asked of each leftover, 0.5 to 0.99.</summary>
    public double Chance => Chances[Index];

    /// <summary>The rung above, or the highest itself.</summary>
    public Rung Next => All[Math.Min(Index + 1, All.Count - 1)];

    /// <summary>The rung of a chance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The chance is no rung.</exception>
    public static Rung Of(double chance) =>
        TryOf(chance, out var rung) ? rung : throw new ArgumentOutOfRangeException(nameof(chance), chance, "That chance is no rung.");

    /// <summary>The rung of a chance, where it is one.</summary>
    public static bool TryOf(double chance, out Rung rung)
    {
        var index = Array.IndexOf(Chances, chance);
        rung = new Rung(Math.Max(0, index));
        return index >= 0;
    }

    /// <summary>What a leftover must reach for a "yes": the target; in doubt 0.97, or the rung above the target where that is higher.</summary>
    /// <param name="target">What the knitter asks of every leftover.</param>
    /// <param name="inDoubt">Whether the leftover's own length is in doubt (<see cref="LengthDoubt.IsLarge"/>).</param>
    public static Rung AskedFor(Rung target, bool inDoubt) => !inDoubt ? target : target.Next > InDoubt ? target.Next : InDoubt;

    /// <inheritdoc/>
    public int CompareTo(Rung other) => Index.CompareTo(other.Index);

    /// <summary>Whether one rung is lower than another.</summary>
    public static bool operator <(Rung left, Rung right) => left.Index < right.Index;

    /// <summary>Whether one rung is higher than another.</summary>
    public static bool operator >(Rung left, Rung right) => left.Index > right.Index;

    /// <summary>Whether one rung is no higher than another.</summary>
    public static bool operator <=(Rung left, Rung right) => left.Index <= right.Index;

    /// <summary>Whether one rung is no lower than another.</summary>
    public static bool operator >=(Rung left, Rung right) => left.Index >= right.Index;
}
