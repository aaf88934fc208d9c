namespace StashMatch.Knitting.Matching.Search;

/// <summary>Bounds by counting and adding, tried before any search. Colours aside, so they only ever say that there is no plan.</summary>
/// <remarks>
/// <code>
/// stripes and brim   25  25  24  20  20     each wants a leftover of its own
/// leftovers bear     60  31  22  22   9     the third is too short: three of 24 and more are wanted, two are there
/// </code>
/// </remarks>
internal static class Counting
{
    /// <summary>Whether it can be seen at once that not everything goes in.</summary>
    public static bool CannotHold(Puzzle puzzle, Capacity capacity)
    {
        var (layout, falling) = (puzzle.Layout, capacity.Falling);
        if (capacity.Total < layout.Total)
        {
            return true;
        }

        var own = puzzle.OwnLongest;
        for (var k = 0; k < own.Length; k++)
        {
            if (k >= falling.Length || falling[k] < own[k])
            {
                return true;
            }
        }

        if (own.Length > 0 && !puzzle.Question.Blend && ColoursFor(puzzle, capacity) < layout.Stripes)
        {
            return true;
        }

        foreach (var (need, count) in layout.AtLeast)
        {
            if (RoomFor(need, count, falling) < count)
            {
                return true;
            }
        }

        foreach (var c in puzzle.Classes)
        {
            if (!c.Fit.All && RoomFor(puzzle, c, capacity) < c.Count)
            {
                return true;
            }
        }

        return false;
    }

    // How many stripes could have a leftover each: of leftovers that all read as one colour no more than may stand apart.
    private static int ColoursFor(Puzzle puzzle, Capacity capacity)
    {
        var (sum, least, apart) = (0, puzzle.Layout.ShortestStripe, puzzle.Limits.Others + puzzle.Layout.StripesAlone);
        var groups = new List<List<int>>();
        foreach (var bin in capacity.LongestFirst)
        {
            if (capacity.Of[bin] < least || sum >= puzzle.Layout.Stripes)
            {
                break;
            }

            var group = groups.Find(g => g.TrueForAll(other => !puzzle.MayTouch(other, bin)));
            if (group is null)
            {
                groups.Add(group = []);
            }

            group.Add(bin);
            sum += group.Count <= apart ? 1 : 0;
        }

        return sum;
    }

    /// <summary>
    /// The count behind a "no" that anybody can check: so many stripes and the brim want a leftover each, fewer are long enough. Of several the
    /// largest gap, then the largest count. Null where counting does not tell, or one part alone is too long.
    /// </summary>
    public static TooFew? TooFew(Puzzle puzzle)
    {
        if (puzzle.OwnLongest.Length == 0)
        {
            return null;
        }

        // The stripes alone first, then with the brim or crown.
        var stripes = puzzle.Items.Where(i => i.Role == Role.Stripe).ToList();
        (int Gap, int Count, int There, long Each) worst = default;
        foreach (var head in puzzle.OwnColours ? puzzle.Items.Where(i => i.Role == Role.Head).Prepend(null) : [null])
        {
            List<Item> wanted = [.. (head is null ? stripes : stripes.Append(head)).OrderByDescending(i => i.Need).ThenBy(i => i.Index)];
            for (var count = 1; count <= wanted.Count; count++)
            {
                var (there, each) = (0, wanted[count - 1].Need);
                for (var bin = 0; bin < puzzle.Bins && puzzle.Held[bin] >= each; bin++)
                {
                    there += MayServe(puzzle, wanted, each, bin) ? 1 : 0;
                }

                worst = (count - there, count).CompareTo((worst.Gap, worst.Count)) > 0 ? (count - there, count, there, each) : worst;
            }
        }

        return worst.Gap <= 0 || worst.Count == 1 ? null : new TooFew(worst.Count, worst.There, Quantities.Metres.FromMillimetres(worst.Each));
    }

    private static bool MayServe(Puzzle puzzle, List<Item> wanted, long each, int bin)
    {
        foreach (var item in wanted)
        {
            if (item.Need >= each && puzzle.Classes[item.Class].Fits[bin])
            {
                return true;
            }
        }

        return false;
    }

    private static long RoomFor(long need, int count, long[] falling)
    {
        var room = 0L;
        for (var k = 0; k < falling.Length && falling[k] >= need && room < count; k++)
        {
            room += falling[k] / need;
        }

        return room;
    }

    private static long RoomFor(Puzzle puzzle, ItemClass c, Capacity capacity)
    {
        var (room, one) = (0L, c.Role == Role.Stripe && puzzle.OwnColours);
        foreach (var bin in capacity.LongestFirst)
        {
            if (capacity.Of[bin] < c.Need || room >= c.Count)
            {
                break;
            }

            room += !c.Fits[bin] ? 0 : one ? 1 : capacity.Of[bin] / c.Need;
        }

        return room;
    }
}
