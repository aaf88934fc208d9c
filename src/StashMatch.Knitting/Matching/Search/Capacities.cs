using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>What a load has to keep besides its rung.</summary>
internal enum Keeping
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>The reserve.</summary>
    Reserve,

    /// <summary>All that a yes asks: the reserve, the target, and more of a leftover in doubt.</summary>
    Yes,
}

/// <summary>How much each leftover may bear at one level.</summary>
internal sealed class Capacity(long[] of)
{
    private int[]? _longestFirst;
    private long[]? _falling;

    /// <summary>Millimetres for each leftover.</summary>
    public long[] Of { get; } = of;

    /// <summary>All together.</summary>
    public long Total { get; } = of.Sum();

    /// <summary>The leftovers, the one that bears most first. Not the order of their metres: a coarse scale or a guess takes some off.</summary>
    public int[] LongestFirst
    {
        get
        {
            if (_longestFirst is null)
            {
                Sort();
            }

            return _longestFirst!;
        }
    }

    /// <summary>What they bear, the most first.</summary>
    public long[] Falling
    {
        get
        {
            if (_falling is null)
            {
                Sort();
            }

            return _falling!;
        }
    }

    /// <summary>How many leftovers bear so much or more.</summary>
    public int CountFrom(long need)
    {
        var falling = Falling;
        var (low, high) = (0, falling.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = falling[middle] >= need ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    // Two threads may sort at once; they come to the same.
    private void Sort()
    {
        var (keys, order) = (new long[Of.Length], new int[Of.Length]);
        for (var bin = 0; bin < order.Length; bin++)
        {
            // Equal ones in the leftovers' own order: each key is its own.
            (keys[bin], order[bin]) = (-Of[bin], bin);
        }

        MemoryExtensions.Sort(keys.AsSpan(), order.AsSpan(), static (a, b) => a.CompareTo(b));
        for (var from = 0; from < keys.Length;)
        {
            var to = from + 1;
            while (to < keys.Length && keys[to] == keys[from])
            {
                to++;
            }

            Array.Sort(order, from, to - from);
            from = to;
        }

        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = -keys[i];
        }

        (_falling, _longestFirst) = (keys, order);
    }
}

/// <summary>What leftovers bear at every level of one question: by the label, at each rung, with the reserve kept, and for a yes.</summary>
internal sealed class Capacities
{
    private readonly long[] _held;
    private readonly LengthDoubt[] _doubt;
    private readonly double _spread;
    private readonly Rung _target;
    private readonly Func<long, long> _withReserve;
    private readonly Capacity?[,] _known = new Capacity?[Enum.GetValues<Keeping>().Length, Rung.All.Count];

    /// <param name="held">What each leftover holds, millimetres.</param>
    /// <param name="doubt">What each one's length may be off.</param>
    /// <param name="spread">The usage's spread.</param>
    /// <param name="target">The rung asked for a yes.</param>
    /// <param name="allowancePercent">The reserve asked.</param>
    public Capacities(long[] held, LengthDoubt[] doubt, double spread, Rung target, decimal allowancePercent) =>
        (_held, _doubt, _spread, _target, _withReserve) = (held, doubt, spread, target, WithReserve(allowancePercent));

    public Capacity At(Rung rung, Keeping keeping) => _known[(int)keeping, rung.Index] ??= Of(rung, keeping);

    private Capacity Of(Rung rung, Keeping keeping)
    {
        var each = new long[_held.Length];
        for (var bin = 0; bin < each.Length; bin++)
        {
            var asked = keeping != Keeping.Yes ? rung : Rung.AskedFor(_target, _doubt[bin].IsLarge) is var least && least > rung ? least : rung;
            var bears = Sureness.Capacity(_held[bin], _doubt[bin], _spread, asked);
            each[bin] = keeping == Keeping.Nothing ? bears : Math.Min(bears, _withReserve(_held[bin]));
        }

        return new Capacity(each);
    }

    // ⌊held / (1 + reserve)⌋ in whole millimetres.
    private static Func<long, long> WithReserve(decimal allowancePercent)
    {
        var thousandths = allowancePercent * 1000;
        if (thousandths != Math.Floor(thousandths))
        {
            return held => (long)Math.Floor(held * 100m / (100m + allowancePercent));
        }

        var over = 100_000 + (long)thousandths;
        return held => held * 100_000 / over;
    }
}
