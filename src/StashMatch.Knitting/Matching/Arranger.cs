using System.Numerics;

namespace StashMatch.Knitting.Matching;

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
internal sealed class Arranger
{
    private readonly Puzzle _puzzle;
    private readonly int[] _order;
    private readonly int[][] _of;
    private readonly int[][] _left;
    private readonly int[] _bare;
    private IReadOnlyList<Slot> _slots = [];
    private int[] _binOf = [];
    private int[] _binOfSlot = [];
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
        (_of, _left, _bare) = (new int[puzzle.Classes.Length][], new int[puzzle.Classes.Length][], new int[puzzle.Classes.Length]);
    }

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

        return Place(0);
    }

    private int Compare(Item a, Item b)
    {
        var (freeA, freeB) = (_puzzle.Beside[a.Index].Count == 0, _puzzle.Beside[b.Index].Count == 0);
        return freeA != freeB ? freeA.CompareTo(freeB) : a.Band != b.Band ? a.Band.CompareTo(b.Band) : a.Index.CompareTo(b.Index);
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

        var item = _puzzle.Items[_order[at]];
        var (of, left, free) = (_of[item.Class], _left[item.Class], _puzzle.Beside[item.Index].Count == 0);
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
            if (found == Found.Unknown || free)
            {
                return found;
            }
        }

        if (_bare[item.Class] == 0)
        {
            return Found.No;
        }

        _bare[item.Class]--;
        var without = Place(at + 1);
        _bare[item.Class]++;
        return without;
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
