namespace StashMatch.Knitting.Matching;

/// <summary>Looks for a covering position by position, colour rule and all: exact when it ends, honest when its steps run out.</summary>
internal sealed class PositionSearch(Puzzle puzzle, long[] capacity, int steps)
{
    private readonly int[] _order =
        [.. puzzle.Items.OrderByDescending(i => i.Role == Role.Head).ThenBy(i => i.Band).ThenBy(i => i.Index).Select(i => i.Index)];

    private readonly long[] _free = [.. capacity];
    private readonly int[] _stripes = new int[capacity.Length];
    private readonly int[] _heads = new int[capacity.Length];
    private readonly int[] _load = new int[capacity.Length];
    private int _steps = steps;

    /// <summary>Finds leftovers for all items but <paramref name="bare"/> of each class.</summary>
    public Found Find(int[] bare, out int[] binOf)
    {
        binOf = new int[puzzle.Items.Length];
        Array.Fill(binOf, -1);
        return Place(0, bare, binOf);
    }

    private Found Place(int at, int[] bare, int[] binOf)
    {
        if (at == _order.Length)
        {
            return Found.Yes;
        }

        if (--_steps < 0)
        {
            return Found.Unknown;
        }

        var item = puzzle.Items[_order[at]];
        var own = puzzle.Classes[item.Class];
        var tried = new HashSet<(long, string?)>();
        foreach (var bin in Enumerable.Range(0, _free.Length).Where(b => own.Fits[b] && _free[b] >= item.Need).OrderBy(b => _free[b]).ThenBy(b => b))
        {
            if (!Admits(item, bin)
                || !puzzle.Beside[item.Index].TrueForAll(n => binOf[n] < 0 || puzzle.MayTouch(bin, binOf[n]))
                || (_load[bin] == 0 && puzzle.Bins[bin].Colour is { } colour && !Chosen(bin) && !tried.Add((_free[bin], colour.Hex))))
            {
                continue;
            }

            Take(item, bin, 1, binOf);
            var found = Place(at + 1, bare, binOf);
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

        if (bare[item.Class] == 0)
        {
            return Found.No;
        }

        bare[item.Class]--;
        var without = Place(at + 1, bare, binOf);
        bare[item.Class]++;
        return without;
    }

    private bool Admits(Item item, int bin) => !puzzle.OwnColours || item.Role switch
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

    // An unused leftover is like another of its colour and length only where no class tells them apart.
    private bool Chosen(int bin) => puzzle.Classes.Any(c => c.Fits[bin] != c.Fits[FirstLike(bin)]);

    private int FirstLike(int bin) =>
        Enumerable.Range(0, bin + 1).First(b => capacity[b] == capacity[bin] && puzzle.Bins[b].Colour == puzzle.Bins[bin].Colour);
}
