namespace StashMatch.Knitting.Matching.Search;

/// <summary>Everything one leftover could take, by rising load: counts of each class that keep the rules within one leftover.</summary>
/// <remarks>
/// A state is the counts packed into one number, each class in a field of its own with a guard bit above, so that one subtraction tells
/// whether all fit. Pattern 0 is "nothing". Classes only one leftover can serve are not in it: they lie on that leftover from the start.
/// </remarks>
internal sealed class Patterns
{
    private const int Most = 60_000;
    private readonly List<byte> _growing = [];
    private readonly List<int> _growingLoads = [];
    private readonly Dictionary<ulong, bool> _apart = [];
    private readonly byte[] _counts;

    private Patterns(Puzzle puzzle, int[] target, long mostLoad, Worth worth)
    {
        (Puzzle, Target, Worth, SetAside) = (puzzle, target, worth, !worth.MayOverfill);
        Classes = [.. Enumerable.Range(0, target.Length).Where(c => target[c] > 0 && !(SetAside && puzzle.Classes[c].OnlyBin >= 0)).OrderByDescending(c => puzzle.Classes[c].Need).ThenBy(c => c)];
        Shifts = new int[Classes.Length];
        for (var k = 0; k < Classes.Length; k++)
        {
            Shifts[k] = Bits;
            Bits += System.Numerics.BitOperations.Log2((uint)target[Classes[k]]) + 2;
            if (Bits <= 62)
            {
                Guards |= 1UL << (Bits - 1);
                Full |= (ulong)target[Classes[k]] << Shifts[k];
            }
        }

        Complete = Bits <= 62 && Classes.Length <= 64 && Grow(0, new byte[Classes.Length], 0, mostLoad, Role.Free, 0, 0);
        var order = new int[_growingLoads.Count];
        for (var p = 0; p < order.Length; p++)
        {
            order[p] = p;
        }

        Loads = [.. _growingLoads];
        Array.Sort(Loads, order);
        _counts = new byte[_growing.Count];
        (Packed, Uses, Roles) = (new ulong[order.Length], new ulong[order.Length], new Role[order.Length]);
        (Strands, Others, Smallest) = (new byte[order.Length], new byte[order.Length], new int[order.Length]);
        for (var p = 0; p < order.Length; p++)
        {
            for (var k = 0; k < Classes.Length; k++)
            {
                var n = _growing[(order[p] * Classes.Length) + k];
                if (n == 0)
                {
                    continue;
                }

                var own = puzzle.Classes[Classes[k]];
                _counts[(p * Classes.Length) + k] = n;
                Smallest[p] = (int)own.Need;
                Packed[p] |= (ulong)n << Shifts[k];
                Uses[p] |= 1UL << k;
                Roles[p] = own.Role == Role.Free ? Roles[p] : own.Role;
                Strands[p] += own.Neighbours == ColourNeighbours.Strand ? n : (byte)0;
                Others[p] += own.Neighbours == ColourNeighbours.Other ? n : (byte)0;
            }
        }
    }

    public Puzzle Puzzle { get; }

    /// <summary>What a plan is worth.</summary>
    public Worth Worth { get; }

    /// <summary>Whether classes only one leftover can serve lie on it from the start; where it may be asked for too much they need not.</summary>
    public bool SetAside { get; }

    /// <summary>The shortest item of each pattern, millimetres.</summary>
    public int[] Smallest { get; }

    /// <summary>How many of each class of the puzzle are to be covered.</summary>
    public int[] Target { get; }

    /// <summary>Classes of the puzzle in the patterns' order.</summary>
    public int[] Classes { get; }

    /// <summary>Whether these are all there are; false where there are too many.</summary>
    public bool Complete { get; }

    public int Count => Loads.Length;

    /// <summary>Millimetres, rising.</summary>
    public int[] Loads { get; }

    public ulong[] Packed { get; }

    /// <summary>A bit for each class it uses.</summary>
    public ulong[] Uses { get; }

    public Role[] Roles { get; }

    public byte[] Strands { get; }

    public byte[] Others { get; }

    public int[] Shifts { get; }

    public int Bits { get; }

    public ulong Guards { get; }

    /// <summary>Everything covered, packed.</summary>
    public ulong Full { get; }

    public static Patterns Of(Puzzle puzzle, int[] target, long[] capacity, Worth worth) => new(puzzle, target, capacity.Length == 0 ? 0 : capacity.Max(), worth);

    public ReadOnlySpan<byte> CountsOf(int pattern) => _counts.AsSpan(pattern * Classes.Length, Classes.Length);

    /// <summary>How many leftovers could take this pattern at once, at most.</summary>
    public int CopiesOf(int pattern)
    {
        var copies = int.MaxValue;
        var counts = CountsOf(pattern);
        for (var k = 0; k < counts.Length; k++)
        {
            copies = counts[k] == 0 ? copies : Math.Min(copies, Target[Classes[k]] / counts[k]);
        }

        return copies == int.MaxValue ? 0 : copies;
    }

    // Whether so many of each class can be found no two of which stand side by side: one leftover beside itself reads as one.
    private bool StandApart(byte[] counts)
    {
        var key = 0UL;
        for (var k = 0; k < counts.Length; k++)
        {
            key |= Puzzle.Classes[Classes[k]].Neighbours == ColourNeighbours.Other ? (ulong)counts[k] << Shifts[k] : 0;
        }

        if (!_apart.TryGetValue(key, out var stands))
        {
            var wanted = new int[Target.Length];
            for (var k = 0; k < counts.Length; k++)
            {
                wanted[Classes[k]] = Puzzle.Classes[Classes[k]].Neighbours == ColourNeighbours.Other ? counts[k] : 0;
            }

            _apart[key] = stands = Puzzle.Limits.Others == int.MaxValue || Choose(0, wanted, wanted.Sum(), new bool[Puzzle.Items.Length]);
        }

        return stands;
    }

    private bool Choose(int from, int[] wanted, int left, bool[] chosen)
    {
        for (var i = from; left > 0 && i < chosen.Length; i++)
        {
            var c = Puzzle.Items[i].Class;
            if (wanted[c] == 0 || Puzzle.Beside[i].Any(n => chosen[n]))
            {
                continue;
            }

            (chosen[i], wanted[c]) = (true, wanted[c] - 1);
            if (Choose(i + 1, wanted, left - 1, chosen))
            {
                return true;
            }

            (chosen[i], wanted[c]) = (false, wanted[c] + 1);
        }

        return left == 0;
    }

    private bool Grow(int k, byte[] counts, long load, long mostLoad, Role role, int strands, int others)
    {
        if (k == Classes.Length)
        {
            _growing.AddRange(counts);
            _growingLoads.Add((int)load);
            return _growingLoads.Count <= Most;
        }

        var own = Puzzle.Classes[Classes[k]];
        var limits = Puzzle.Limits;
        for (var n = 0; n <= Target[Classes[k]]; n++)
        {
            var (heavier, s, o) = (
                load + (n * own.Need), strands + (own.Neighbours == ColourNeighbours.Strand ? n : 0), others + (own.Neighbours == ColourNeighbours.Other ? n : 0));
            // The last item laid on a leftover that may be overfilled is the shortest; before it there must be room.
            if ((Worth.MayOverfill ? n > 0 && heavier - own.Need >= mostLoad : heavier > mostLoad) || s > limits.Strands || o > limits.Others)
            {
                break;
            }

            var after = role;
            if (n > 0 && Puzzle.OwnColours && own.Role != Role.Free)
            {
                if ((role != Role.Free && (role != own.Role || own.Role == Role.Stripe)) || (own.Role == Role.Stripe && n > 1))
                {
                    break;
                }

                after = own.Role;
            }

            counts[k] = (byte)n;
            if (n > 0 && o > 1 && own.Neighbours == ColourNeighbours.Other && !StandApart(counts))
            {
                break;
            }

            if (!Grow(k + 1, counts, heavier, mostLoad, after, s, o))
            {
                return false;
            }
        }

        counts[k] = 0;
        return true;
    }
}
