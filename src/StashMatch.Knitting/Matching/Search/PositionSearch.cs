namespace StashMatch.Knitting.Matching.Search;

/// <summary>Looks for a covering position by position, colour rule and all: exact when it ends, honest when its steps run out.</summary>
/// <remarks>
/// <code>
/// brim -> stripe 1 -> stripe 2 -> ...     each from every leftover that has room and may lie beside what is placed, the closest fit first.
///                      |                  Where nothing goes on, what is left of the leftovers (colour by colour, whichever they are) and the
///                      +-- dead end       colours that still lie open are noted: the same state is not looked into again.
/// </code>
/// </remarks>
internal sealed class PositionSearch
{
    private const int MostNoted = 400_000;
    private readonly Puzzle _puzzle;
    private readonly int[] _order;
    private readonly int[] _openFrom;
    private readonly long[] _free;
    private readonly ulong[] _kind;
    private readonly int[] _stripes;
    private readonly int[] _heads;
    private readonly int[][] _scratch;
    private readonly HashSet<(ulong, ulong)> _deadEnds = [];
    private (ulong A, ulong B) _state;
    private int _steps;

    public PositionSearch(Puzzle puzzle, Capacity capacity, int steps)
    {
        (_puzzle, _steps) = (puzzle, steps);
        _order = [.. puzzle.Items.OrderByDescending(i => i.Role == Role.Head).ThenBy(i => i.Band).ThenBy(i => i.Index).Select(i => i.Index)];
        _openFrom = OpenFrom();
        _free = [.. capacity.Of];
        (_stripes, _heads) = (new int[_free.Length], new int[_free.Length]);
        _scratch = [.. _order.Select(_ => new int[_free.Length])];
        _kind = KindsOf(puzzle);
        for (var bin = 0; bin < _free.Length; bin++)
        {
            Count(bin, 1);
        }
    }

    /// <summary>Finds a leftover for every item.</summary>
    public Found Find(out int[] binOf)
    {
        binOf = new int[_puzzle.Items.Length];
        Array.Fill(binOf, -1);
        return Place(0, binOf);
    }

    private Found Place(int at, int[] binOf)
    {
        if (at == _order.Length)
        {
            return Found.Yes;
        }

        if (--_steps < 0)
        {
            return Found.Unknown;
        }

        var state = StateAt(at, binOf);
        if (_deadEnds.Contains(state))
        {
            return Found.No;
        }

        var item = _puzzle.Items[_order[at]];
        var choices = Choices(item, binOf, _scratch[at]);
        for (var k = 0; k < choices.Length; k++)
        {
            var bin = choices[k];
            if (SameTried(choices[..k], bin))
            {
                continue;
            }

            Take(item, bin, 1, binOf);
            var found = Place(at + 1, binOf);
            if (found == Found.Yes)
            {
                return found;
            }

            Take(item, bin, -1, binOf);
            if (found == Found.Unknown)
            {
                return found;
            }
        }

        if (_deadEnds.Count < MostNoted)
        {
            _deadEnds.Add(state);
        }

        return Found.No;
    }

    // Those every rule admits, the closest fit first.
    private Span<int> Choices(Item item, int[] binOf, int[] scratch)
    {
        var count = 0;
        var fits = _puzzle.Classes[item.Class].Fits;
        for (var bin = 0; bin < _free.Length; bin++)
        {
            if (fits[bin] && _free[bin] >= item.Need && Admits(item, bin) && MayTouch(item, bin, binOf))
            {
                scratch[count++] = bin;
            }
        }

        var choices = scratch.AsSpan(0, count);
        choices.Sort((a, b) => _free[a] != _free[b] ? _free[a].CompareTo(_free[b]) : a.CompareTo(b));
        return choices;
    }

    private bool MayTouch(Item item, int bin, int[] binOf)
    {
        foreach (var n in _puzzle.Beside[item.Index])
        {
            if (binOf[n] >= 0 && !_puzzle.MayTouch(bin, binOf[n]))
            {
                return false;
            }
        }

        return true;
    }

    private bool Admits(Item item, int bin) => !_puzzle.OwnColours || item.Role switch
    {
        Role.Stripe => _stripes[bin] == 0 && _heads[bin] == 0,
        Role.Head => _stripes[bin] == 0,
        _ => true,
    };

    private void Take(Item item, int bin, int sign, int[] binOf)
    {
        Count(bin, -1);
        _free[bin] -= sign * item.Need;
        _stripes[bin] += item.Role == Role.Stripe ? sign : 0;
        _heads[bin] += item.Role == Role.Head ? sign : 0;
        binOf[item.Index] = sign > 0 ? bin : -1;
        Count(bin, 1);
    }

    // Leftovers of one kind in one state are as good as each other.
    private bool SameTried(ReadOnlySpan<int> before, int bin)
    {
        foreach (var other in before)
        {
            if (_kind[other] == _kind[bin] && _free[other] == _free[bin] && HashOf(other) == HashOf(bin))
            {
                return true;
            }
        }

        return false;
    }

    // What is left on all leftovers, kind by kind, whichever it is; kept up to date leftover by leftover.
    private void Count(int bin, int sign)
    {
        var (a, b) = HashOf(bin);
        _state = sign > 0 ? (_state.A + a, _state.B + b) : (_state.A - a, _state.B - b);
    }

    private (ulong A, ulong B) HashOf(int bin)
    {
        var flags = !_puzzle.OwnColours ? 0UL : _stripes[bin] > 0 ? 1UL : _heads[bin] > 0 ? 2UL : 0UL;
        var value = (_kind[bin] * 0x9E3779B97F4A7C15UL) ^ ((ulong)_free[bin] * 4) ^ flags;
        return (Mixed(value), Mixed(value ^ 0xD6E8FEB86659FD93UL));
    }

    // And the colours of what is placed and still has a neighbour to come.
    private (ulong, ulong) StateAt(int at, int[] binOf)
    {
        var (a, b) = (_state.A + Mixed((ulong)at + 1), _state.B + Mixed((ulong)at + 77));
        for (var before = _openFrom[at]; before < at; before++)
        {
            if (HasOpen(before, at))
            {
                var colour = ColourKind(binOf[_order[before]]);
                a = Mixed(a ^ colour);
                b = Mixed(b + colour);
            }
        }

        return (a, b);
    }

    private bool HasOpen(int before, int at)
    {
        foreach (var n in _puzzle.Beside[_order[before]])
        {
            if (Array.IndexOf(_order, n, at) >= 0)
            {
                return true;
            }
        }

        return false;
    }

    // For each place the first one before it that still has a neighbour to come.
    private int[] OpenFrom()
    {
        var first = new int[_order.Length];
        for (var at = 0; at < first.Length; at++)
        {
            first[at] = at;
            for (var before = at - 1; before >= 0; before--)
            {
                first[at] = HasOpen(before, at) ? before : first[at];
            }
        }

        return first;
    }

    private ulong ColourKind(int bin) => _puzzle.ColourOf(bin) is >= 0 and var colour ? (ulong)colour : 1_000_000UL + (ulong)bin;

    // Leftovers of one known colour that no class tells apart are of one kind.
    private ulong[] KindsOf(Puzzle puzzle)
    {
        var kinds = new ulong[puzzle.Bins];
        for (var bin = 0; bin < kinds.Length; bin++)
        {
            var kind = Mixed(ColourKind(bin) + 1);
            foreach (var c in puzzle.Classes)
            {
                kind = Mixed(kind + (c.Fits[bin] ? 3UL : 5UL));
            }

            kinds[bin] = kind;
        }

        return kinds;
    }

    private static ulong Mixed(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
