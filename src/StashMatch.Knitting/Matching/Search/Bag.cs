using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The leftovers of a question made ready once, for every stripe count, rung and repair asked of them: in a fixed order, so the order asked changes nothing.</summary>
internal sealed class Bag
{
    private const int MostColoursTabled = 1_500;
    private readonly Dictionary<string, int> _at = new(StringComparer.Ordinal);
    private readonly Dictionary<WeightClass, Pool> _pools = [];
    private readonly WeightClass[] _class;
    private readonly int[] _colour;
    private readonly List<Lab> _labs = [];
    private readonly sbyte[]? _apart;
    private readonly BrimRating?[] _brim;
    private ushort[]? _steps;

    private Bag(IReadOnlyList<Leftover> source)
    {
        var order = new List<(long Held, int Colour, Leftover Leftover)>(source.Count);
        foreach (var leftover in source)
        {
            if (leftover.Held.Millimetres is > 0 and var held)
            {
                order.Add((held, leftover.Colour is { } c ? (c.Red << 16) + (c.Green << 8) + c.Blue : -1, leftover));
            }
        }

        order.Sort(static (a, b) => a.Held != b.Held ? b.Held.CompareTo(a.Held)
            : a.Colour != b.Colour ? a.Colour.CompareTo(b.Colour)
            : string.CompareOrdinal(a.Leftover.Id, b.Leftover.Id));
        var count = order.Count;
        (Leftovers, Held, _class, _colour, _brim) = (new Leftover[count], new long[count], new WeightClass[count], new int[count], new BrimRating?[count]);
        var colours = new Dictionary<int, int>(count);
        for (var j = 0; j < count; j++)
        {
            var (held, rgb, leftover) = order[j];
            (Leftovers[j], Held[j], _class[j], _colour[j]) = (leftover, held, leftover.ClassOrGuess, -1);
            _at[leftover.Id] = j;
            if (rgb >= 0 && !colours.TryGetValue(rgb, out _colour[j]))
            {
                colours[rgb] = _colour[j] = _labs.Count;
                _labs.Add(leftover.Colour!.Value.Lab);
            }
        }

        _apart = _labs.Count <= MostColoursTabled ? new sbyte[_labs.Count * _labs.Count] : null;
    }

    /// <summary>Those that hold anything: the longest first, then by colour, then by id.</summary>
    public Leftover[] Leftovers { get; }

    /// <summary>What each holds, millimetres.</summary>
    public long[] Held { get; }

    public static Bag Of(IReadOnlyList<Leftover> source) => new(source);

    /// <summary>Where a leftover stands, or -1.</summary>
    public int At(string id) => _at.GetValueOrDefault(id, -1);

    public WeightClass ClassOf(int at) => _class[at];

    /// <summary>An index for each colour, -1 for one not known.</summary>
    public int ColourOf(int at) => _colour[at];

    public BrimRating BrimOf(int at) => _brim[at] ??= Leftovers[at].Brim;

    /// <summary>What a leftover's length may be off.</summary>
    public LengthDoubt DoubtOf(int at) => LengthDoubt.Of(Leftovers[at]);

    /// <summary>The leftovers of a weight class, in order.</summary>
    public Pool PoolOf(WeightClass weightClass)
    {
        lock (_pools)
        {
            if (!_pools.TryGetValue(weightClass, out var pool))
            {
                var those = Enumerable.Range(0, Leftovers.Length).Where(j => _class[j] == weightClass);
                _pools[weightClass] = pool = new Pool(this, [.. those], weightClass);
            }

            return pool;
        }
    }

    /// <summary>Whether two leftovers can be told apart: dE00 of 5 or more; a missing colour counts as different.</summary>
    public bool Apart(int a, int b)
    {
        var (x, y) = (_colour[a], _colour[b]);
        if (x < 0 || y < 0)
        {
            return true;
        }

        if (x == y)
        {
            return false;
        }

        if (_apart is null)
        {
            return Differ(x, y);
        }

        ref var known = ref _apart[(Math.Min(x, y) * _labs.Count) + Math.Max(x, y)];
        if (known == 0)
        {
            known = Differ(x, y) ? (sbyte)1 : (sbyte)-1;
        }

        return known > 0;
    }

    /// <summary>dE00 between two leftovers in hundredths, to the nearest; -1 where a colour is not known.</summary>
    public int Step(int a, int b)
    {
        var (x, y) = (Math.Min(_colour[a], _colour[b]), Math.Max(_colour[a], _colour[b]));
        if (x < 0 || x == y)
        {
            return x < 0 ? -1 : 0;
        }

        if (_apart is null)
        {
            return StepOf(x, y);
        }

        _steps ??= new ushort[_apart.Length];
        ref var known = ref _steps[(x * _labs.Count) + y];
        known = known == 0 ? (ushort)(StepOf(x, y) + 1) : known;
        return known - 1;
    }

    private int StepOf(int x, int y) => (int)Math.Round(100 * ColourDifference.Ciede2000(_labs[x], _labs[y]));

    private bool Differ(int x, int y) => ColourDifference.Ciede2000(_labs[x], _labs[y]) >= ColourRule.ReadsAsOne;
}
