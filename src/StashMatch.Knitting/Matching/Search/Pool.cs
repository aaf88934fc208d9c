using System.Collections.Concurrent;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The leftovers of a bag that may go into a hat: those of its weight class, and those that are kept in a part of it.</summary>
internal sealed class Pool
{
    private readonly ConcurrentDictionary<(double Spread, Rung Target, decimal AllowancePercent), Capacities> _capacities = new();
    private readonly Bag _bag;
    private readonly bool[] _everyone;
    private readonly Fit?[] _brims = new Fit?[BrimSet.Widest + 1];
    private readonly LengthDoubt[] _doubt;

    public Pool(Bag bag, int[] at, Yarns.WeightClass weightClass)
    {
        (_bag, At) = (bag, at);
        Held = Array.ConvertAll(at, b => bag.Held[b]);
        _doubt = Array.ConvertAll(at, bag.DoubtOf);
        _everyone = Array.ConvertAll(at, b => bag.ClassOf(b) == weightClass);
        Everyone = new Fit(_everyone);
    }

    /// <summary>Where they stand in the bag.</summary>
    public int[] At { get; }

    /// <summary>What each holds, millimetres.</summary>
    public long[] Held { get; }

    /// <summary>All that are of the hat's weight class.</summary>
    public Fit Everyone { get; }

    /// <summary>Those the brim may be knitted from.</summary>
    public Fit Brim(int width) => width == BrimSet.Widest ? Everyone : _brims[width] ??= new Fit([.. At.Select((b, j) => _everyone[j] && BrimSet.WidthOf(_bag.BrimOf(b)) <= width)]);

    /// <summary>The narrowest set that lets in just the same leftovers.</summary>
    public int SameAs(int width)
    {
        while (width > 0 && Brim(width - 1).Bins.AsSpan().SequenceEqual(Brim(width).Bins))
        {
            width--;
        }

        return width;
    }

    public Capacities CapacitiesFor(Usage usage, Rung target, decimal allowancePercent) => _capacities.GetOrAdd(
        (usage.Spread, target, allowancePercent),
        static (key, pool) => new Capacities(pool.Held, pool._doubt, key.Spread, key.Target, key.AllowancePercent),
        this);
}
