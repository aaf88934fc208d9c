using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Bags;

/// <summary>
/// Rows for the stripes of a side-to-side panel, where a stripe takes the same wherever it lies but first or last: a table over the
/// leftovers, how many are in, the rows spoken for, and whether the first and the last stripe are. Exact but for the colour rule.
/// </summary>
internal sealed class FlatDepths
{
    private const int FirstIn = 1;
    private const int LastIn = 2;
    private readonly StripeRounds _rounds;
    private readonly long[] _held;
    private readonly long[] _bears;
    private readonly int _least;
    private readonly int _most;
    private readonly int _rows;

    public FlatDepths(StripeRounds rounds, long[] held, long[] bears, int least, int most)
    {
        (_rounds, _held, _bears, _least, _most) = (rounds, held, bears, least, most);
        var braids = rounds.BraidAt(0) ? rounds.Stripes - 1 : 0;
        _rows = rounds.Rounds - (braids * Hats.BraidRows.Rows);
    }

    /// <summary>Rows for each leftover, 0 for one that does not go in, with which is first and last; null where the leftovers do not fill the panel.</summary>
    public (int[] Rows, int First, int Last)? Find(CancellationToken cancel)
    {
        var (count, stripes) = (_held.Length, _rounds.Stripes);
        if (Enumerable.Range(0, count).Select(Reach).OrderDescending().Take(stripes).Sum() < _rows)
        {
            return null;
        }

        var layer = (stripes + 1) * (_rows + 1) * 4;
        var taken = new ushort[count][];
        var (now, next) = (new Int128[layer], new Int128[layer]);
        Array.Fill(now, DepthWorth.None);
        now[0] = 0;
        for (var j = 0; j < count; j++)
        {
            cancel.ThrowIfCancellationRequested();
            taken[j] = new ushort[layer];
            if (count > stripes)
            {
                now.CopyTo(next, 0);
            }
            else
            {
                Array.Fill(next, DepthWorth.None);
            }

            for (var role = 0; role < 4; role++)
            {
                if (role is FirstIn or LastIn or 0 || stripes == 1)
                {
                    Place(j, stripes == 1 ? FirstIn | LastIn : role, now, next, taken[j]);
                }
            }

            (now, next) = (next, now);
        }

        var state = State(stripes, _rows, FirstIn | LastIn);
        return now[state] == DepthWorth.None ? null : Back(taken, state);
    }

    // The most rows a leftover has anywhere in the panel.
    private int Reach(int j)
    {
        var rows = 0;
        while (rows < Math.Min(_most, _rows) && _rounds.Need(0, 0, rows + 1, false, false) <= _bears[j])
        {
            rows++;
        }

        return rows;
    }

    private int State(int count, int rows, int roles) => (((count * (_rows + 1)) + rows) * 4) + roles;

    private void Place(int j, int role, Int128[] now, Int128[] next, ushort[] taken)
    {
        var stripes = _rounds.Stripes;
        var number = (role & FirstIn) != 0 ? 1 : role == LastIn ? stripes : 2;
        var (afterBraid, beforeBraid) = (number > 1 && _rounds.BraidAt(0), (role & LastIn) == 0 && _rounds.BraidAt(0));
        var (least, step) = _rounds.Allowed(number, afterBraid, _least);
        for (var rows = least; rows <= Math.Min(_most, _rows); rows += step)
        {
            var need = _rounds.Need(number, 0, rows, afterBraid, beforeBraid);
            if (need > _bears[j])
            {
                break;
            }

            var worth = DepthWorth.Of(_held[j], _bears[j], need, rows);
            for (var count = Math.Max(0, stripes - (_held.Length - j)); count < Math.Min(stripes, j + 1); count++)
            {
                for (var before = 0; before + rows <= _rows; before++)
                {
                    for (var roles = 0; roles < 4; roles++)
                    {
                        var from = now[State(count, before, roles)];
                        if (from == DepthWorth.None || (roles & role) != 0)
                        {
                            continue;
                        }

                        var to = State(count + 1, before + rows, roles | role);
                        if (from + worth > next[to])
                        {
                            (next[to], taken[to]) = (from + worth, (ushort)((rows << 2) | role));
                        }
                    }
                }
            }
        }
    }

    private (int[] Rows, int First, int Last) Back(ushort[][] taken, int state)
    {
        var (rows, first, last) = (new int[_held.Length], -1, -1);
        for (var j = _held.Length - 1; j >= 0; j--)
        {
            if (taken[j][state] is not (> 0 and var choice))
            {
                continue;
            }

            var role = choice & 3;
            rows[j] = choice >> 2;
            (first, last) = ((role & FirstIn) != 0 ? j : first, (role & LastIn) != 0 ? j : last);
            state -= State(1, rows[j], role);
        }

        return (rows, first, last);
    }
}
