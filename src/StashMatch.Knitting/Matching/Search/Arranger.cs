using System.Numerics;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>What a search came to.</summary>
internal enum Found
{
    /// <summary>There is one.</summary>
    Yes,

    /// <summary>There is none: every possibility was looked at.</summary>
    No,

    /// <summary>Stopped at the step budget.</summary>
    Unknown,
}

/// <summary>
/// Puts items of like classes into positions so that what lies side by side may touch, once it is settled how many of each class each
/// leftover takes; which of equal leftovers that is, is settled with it.
/// </summary>
internal sealed partial class Arranger
{
    private readonly Puzzle _puzzle;
    private readonly int[] _order;
    private readonly int[][] _of;
    private readonly int[][] _left;
    private readonly int[] _bare;
    private IReadOnlyList<Slot> _slots = [];
    private int[] _binOf = [];
    private int[] _binOfSlot = [];
    private readonly HashSet<(ulong, ulong)> _hopeless = [];
    private readonly int[] _frontier;
    private readonly int _strands;
    private readonly List<(int A, int B)> _pairs;
    private int[] _tint = [];
    private int[] _tinted = [];
    private int _steps;

    public Arranger(Puzzle puzzle)
    {
        _puzzle = puzzle;
        _order = new int[puzzle.Items.Length];
        for (var i = 0; i < _order.Length; i++)
        {
            _order[i] = i;
        }

        // Items under the colour rule first, neighbours together; the others after.
        Array.Sort(_order, (a, b) => Compare(puzzle.Items[a], puzzle.Items[b]));
        _frontier = FrontierAt();
        _strands = Array.FindIndex(_order, i => puzzle.Classes[puzzle.Items[i].Class].Neighbours == ColourNeighbours.Strand);
        var strands = _order.Where(i => puzzle.Classes[puzzle.Items[i].Class].Neighbours == ColourNeighbours.Strand).ToList();
        _pairs = strands.Select(i => puzzle.Items[i].Class).Distinct().Count() != 1 ? []
            : [.. strands.Where(i => i < puzzle.Beside[i][0]).Select(i => (i, puzzle.Beside[i][0]))];
        (_of, _left, _bare) = (new int[puzzle.Classes.Length][], new int[puzzle.Classes.Length][], new int[puzzle.Classes.Length]);
    }

    /// <summary>Steps the last search took.</summary>
    public int StepsTaken { get; private set; }

    /// <summary>Finds positions; <paramref name="binOf"/> gets a leftover for each item, -1 for one left uncovered.</summary>
    public Found Arrange(IReadOnlyList<Slot> slots, int steps, out int[] binOf)
    {
        (_slots, _steps, _binOfSlot) = (slots, steps, new int[slots.Count]);
        Array.Fill(_binOfSlot, -1);
        binOf = _binOf = new int[_puzzle.Items.Length];
        Array.Fill(_binOf, -1);
        for (var c = 0; c < _of.Length; c++)
        {
            var many = 0;
            foreach (var s in slots)
            {
                many += s.Counts[c] > 0 ? 1 : 0;
            }

            (_of[c], _left[c], _bare[c]) = (new int[many], new int[many], _puzzle.Classes[c].Count);
            for (var s = slots.Count - 1; s >= 0; s--)
            {
                if (slots[s].Counts[c] > 0)
                {
                    (_of[c][--many], _left[c][many]) = (s, slots[s].Counts[c]);
                    _bare[c] -= slots[s].Counts[c];
                }
            }
        }

        _hopeless.Clear();
        _tint = new int[slots.Count];
        var tints = 0;
        for (var s = 0; s < _tint.Length; s++)
        {
            var like = slots[s].Members is [var bin] && _puzzle.ColourOf(bin) is >= 0 and var colour
                ? Enumerable.Range(0, s).FirstOrDefault(o => slots[o].Members is [var other] && _puzzle.ColourOf(other) == colour, -1)
                : -1;
            _tint[s] = like >= 0 ? _tint[like] : tints++;
        }

        _tinted = new int[tints];

        // Strands that cannot be paired cannot be paired whatever the stripes do, where it is settled which leftovers these are.
        var found = _pairs.Count > 0 && slots.All(s => s.Members.Length == 1) && PairStrands() == Found.No ? Found.No : Place(0);
        StepsTaken = steps - _steps;
        return found;
    }

    // For each place in the order the first earlier place that still has a neighbour to come; what lies before is settled.
    private int[] FrontierAt()
    {
        var (place, last) = (new int[_order.Length], new int[_order.Length]);
        for (var at = 0; at < _order.Length; at++)
        {
            place[_order[at]] = at;
        }

        for (var at = 0; at < _order.Length; at++)
        {
            foreach (var n in _puzzle.Beside[_order[at]])
            {
                last[at] = Math.Max(last[at], place[n]);
            }
        }

        var first = new int[_order.Length];
        for (var at = 0; at < _order.Length; at++)
        {
            first[at] = at;
            for (var before = at - 1; before >= 0; before--)
            {
                first[at] = last[before] >= at ? before : first[at];
            }
        }

        return first;
    }

    // What is still to be placed and what it will lie beside: if it failed once, it fails again.
    private (ulong, ulong) StateAt(int at)
    {
        var (a, b) = (0x9E3779B97F4A7C15UL + (ulong)at, 0xC2B2AE3D27D4EB4FUL ^ (ulong)at);
        void Mix(int value)
        {
            a = (a ^ (ulong)(uint)value) * 0x9FB21C651E98DF25UL;
            a ^= a >> 29;
            b = (b + (ulong)(uint)value) * 0xD6E8FEB86659FD93UL;
            b ^= b >> 32;
        }

        // Leftovers of one colour stand for each other, so only what they take together counts.
        for (var c = 0; c < _left.Length; c++)
        {
            Array.Clear(_tinted);
            for (var k = 0; k < _left[c].Length; k++)
            {
                _tinted[_tint[_of[c][k]]] += _left[c][k];
            }

            foreach (var n in _tinted)
            {
                Mix(n);
            }

            Mix(_bare[c] + 1_000);
        }

        for (var before = _frontier[at]; before < at; before++)
        {
            var bin = _binOf[_order[before]];
            Mix(bin >= 0 && _puzzle.ColourOf(bin) is >= 0 and var colour ? colour : -2 - bin);
        }

        for (var s = 0; s < _slots.Count; s++)
        {
            if (_slots[s].Members.Length > 1)
            {
                Mix(_binOfSlot[s]);
            }
        }

        return (a, b);
    }

    private int Compare(Item a, Item b)
    {
        var (crowdA, crowdB) = (_puzzle.Classes[a.Class].Neighbours, _puzzle.Classes[b.Class].Neighbours);
        return crowdA != crowdB ? crowdB.CompareTo(crowdA) : a.Band != b.Band ? a.Band.CompareTo(b.Band) : a.Index.CompareTo(b.Index);
    }

    private Found Place(int at)
    {
        if (at == _order.Length)
        {
            return Found.Yes;
        }

        if (--_steps < 0)
        {
            return Found.Unknown;
        }

        if (at == _strands && _pairs.Count > 0)
        {
            var paired = PairStrands();
            if (paired != Found.Unknown)
            {
                return paired == Found.Yes ? Place(at + (2 * _pairs.Count)) : Found.No;
            }
        }

        var state = StateAt(at);
        if (_hopeless.Contains(state))
        {
            return Found.No;
        }

        var item = _puzzle.Items[_order[at]];
        var (of, left, free) = (_of[item.Class], _left[item.Class], _puzzle.Beside[item.Index].Length == 0);
        for (var tried = 0UL; Next(left, tried) is >= 0 and var k; tried |= 1UL << k)
        {
            var slot = of[k];
            if (!free && LikeTried(of, tried, slot))
            {
                continue;
            }

            left[k]--;
            var found = _binOfSlot[slot] >= 0 ? PlaceIn(_binOfSlot[slot], item, at) : Open(slot, item, at, free);
            if (found == Found.Yes)
            {
                return found;
            }

            left[k]++;
            if (found == Found.Unknown)
            {
                return found;
            }

            if (free)
            {
                break;
            }
        }

        if (_bare[item.Class] > 0)
        {
            _bare[item.Class]--;
            var without = Place(at + 1);
            _bare[item.Class]++;
            if (without != Found.No)
            {
                return without;
            }
        }

        _hopeless.Add(state);
        return Found.No;
    }

    private Found PlaceIn(int bin, Item item, int at)
    {
        if (!MayTouch(item.Index, bin))
        {
            return Found.No;
        }

        _binOf[item.Index] = bin;
        var found = Place(at + 1);
        if (found != Found.Yes)
        {
            _binOf[item.Index] = -1;
        }

        return found;
    }

    // Settles which of equal leftovers a slot is; those of one colour are as good as each other, unless their colour is not known.
    private Found Open(int slot, Item item, int at, bool free)
    {
        var members = _slots[slot].Members;
        for (var m = 0; m < members.Length; m++)
        {
            if (Array.IndexOf(_binOfSlot, members[m]) >= 0 || ColourBefore(members, m))
            {
                continue;
            }

            _binOfSlot[slot] = members[m];
            var found = PlaceIn(members[m], item, at);
            if (found == Found.Yes)
            {
                return found;
            }

            _binOfSlot[slot] = -1;
            if (found == Found.Unknown || free)
            {
                return found;
            }
        }

        return Found.No;
    }

    // The one with most still to place.
    private static int Next(int[] left, ulong tried)
    {
        var next = -1;
        for (var k = 0; k < left.Length; k++)
        {
            if (left[k] > 0 && (tried >> k & 1) == 0 && (next < 0 || left[k] > left[next]))
            {
                next = k;
            }
        }

        return next;
    }

    private bool MayTouch(int item, int bin)
    {
        foreach (var n in _puzzle.Beside[item])
        {
            if (_binOf[n] >= 0 && !_puzzle.MayTouch(bin, _binOf[n]))
            {
                return false;
            }
        }

        return true;
    }

    private bool ColourBefore(int[] members, int m)
    {
        var colour = _puzzle.ColourOf(members[m]);
        for (var before = 0; colour >= 0 && before < m; before++)
        {
            if (_puzzle.ColourOf(members[before]) == colour && Array.IndexOf(_binOfSlot, members[before]) < 0)
            {
                return true;
            }
        }

        return false;
    }

    // Leftovers of one known colour are as good as each other here, and so are slots not settled yet that take the same.
    private bool LikeTried(int[] of, ulong tried, int slot)
    {
        for (; tried != 0; tried &= tried - 1)
        {
            var other = of[BitOperations.TrailingZeroCount(tried)];
            var (a, b) = (_binOfSlot[slot], _binOfSlot[other]);
            if (a >= 0 && b >= 0 ? _puzzle.ColourOf(a) is >= 0 and var colour && _puzzle.ColourOf(b) == colour
                : a < 0 && b < 0 && ReferenceEquals(_slots[slot].Members, _slots[other].Members) && _slots[slot].Counts.AsSpan().SequenceEqual(_slots[other].Counts))
            {
                return true;
            }
        }

        return false;
    }
}
