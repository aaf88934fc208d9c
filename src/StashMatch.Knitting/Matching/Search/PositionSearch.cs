namespace StashMatch.Knitting.Matching.Search;

/// <summary>Looks for a covering position by position, colour rule and all: exact when it ends, honest when its steps run out.</summary>
internal sealed class PositionSearch
{
    private readonly Puzzle _puzzle;
    private readonly int[] _order;
    private readonly long[] _free;
    private readonly int[] _alike;
    private readonly int[] _stripes;
    private readonly int[] _heads;
    private readonly int[] _load;
    private readonly int[][] _scratch;
    private int _steps;

    public PositionSearch(Puzzle puzzle, Capacity capacity, int steps)
    {
        (_puzzle, _steps) = (puzzle, steps);
        _order = [.. puzzle.Items.OrderByDescending(i => i.Role == Role.Head).ThenBy(i => i.Band).ThenBy(i => i.Index).Select(i => i.Index)];
        _free = [.. capacity.Of];
        (_stripes, _heads, _load) = (new int[capacity.Of.Length], new int[capacity.Of.Length], new int[capacity.Of.Length]);
        _scratch = [.. _order.Select(_ => new int[capacity.Of.Length])];
        _alike = Alike(puzzle, capacity.Of);
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

        var item = _puzzle.Items[_order[at]];
        var choices = Choices(item, binOf, _scratch[at]);
        for (var k = 0; k < choices.Length; k++)
        {
            var bin = choices[k];
            if (_load[bin] == 0 && SameTried(choices[..k], bin))
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
        _free[bin] -= sign * item.Need;
        _load[bin] += sign;
        _stripes[bin] += item.Role == Role.Stripe ? sign : 0;
        _heads[bin] += item.Role == Role.Head ? sign : 0;
        binOf[item.Index] = sign > 0 ? bin : -1;
    }

    private bool SameTried(ReadOnlySpan<int> before, int bin)
    {
        foreach (var other in before)
        {
            if (_load[other] == 0 && _alike[other] == _alike[bin])
            {
                return true;
            }
        }

        return false;
    }

    // Leftovers of one length and known colour that no class tells apart are alike while nothing lies on them.
    private static int[] Alike(Puzzle puzzle, long[] capacity)
    {
        var alike = new int[capacity.Length];
        var first = new Dictionary<(long, int), List<int>>();
        for (var bin = 0; bin < alike.Length; bin++)
        {
            alike[bin] = bin;
            var colour = puzzle.ColourOf(bin);
            if (colour < 0)
            {
                continue;
            }

            if (!first.TryGetValue((capacity[bin], colour), out var firsts))
            {
                first[(capacity[bin], colour)] = firsts = [];
            }

            var like = firsts.FindIndex(f => Array.TrueForAll(puzzle.Classes, c => c.Fits[f] == c.Fits[bin]));
            if (like >= 0)
            {
                alike[bin] = firsts[like];
            }
            else
            {
                firsts.Add(bin);
            }
        }

        return alike;
    }
}
