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

/// <summary>Puts items of like classes into positions so that what lies side by side may touch, once it is settled how many of each class each leftover takes.</summary>
internal sealed class Arranger(Puzzle puzzle, int steps)
{
    private int _steps = steps;

    /// <summary>Finds positions; <paramref name="binOf"/> gets a leftover for each item, -1 for one left uncovered.</summary>
    public Found Arrange(IReadOnlyDictionary<int, int[]> patterns, out int[] binOf)
    {
        var order = Order(puzzle);
        binOf = new int[puzzle.Items.Length];
        Array.Fill(binOf, -1);
        var left = new Dictionary<int, int>[puzzle.Classes.Length];
        var bare = new int[puzzle.Classes.Length];
        for (var c = 0; c < left.Length; c++)
        {
            left[c] = patterns.Where(p => p.Value[c] > 0).OrderBy(p => p.Key).ToDictionary(p => p.Key, p => p.Value[c]);
            bare[c] = puzzle.Classes[c].Count - left[c].Values.Sum();
        }

        return Place(order, 0, left, bare, binOf);
    }

    /// <summary>Items under the colour rule first, neighbours together; the others after.</summary>
    public static int[] Order(Puzzle puzzle) =>
        [.. puzzle.Items.OrderBy(i => puzzle.Beside[i.Index].Count == 0).ThenBy(i => i.Band).ThenBy(i => i.Index).Select(i => i.Index)];

    private Found Place(int[] order, int at, Dictionary<int, int>[] left, int[] bare, int[] binOf)
    {
        if (at == order.Length)
        {
            return Found.Yes;
        }

        if (--_steps < 0)
        {
            return Found.Unknown;
        }

        var item = puzzle.Items[order[at]];
        var choices = left[item.Class];
        var tried = new HashSet<string>(StringComparer.Ordinal);
        var result = Found.No;
        foreach (var bin in choices.Keys.OrderByDescending(b => choices[b]).ThenBy(b => b).ToList())
        {
            // Leftovers of one colour are as good as each other here, unless their colour is not known.
            if (choices[bin] == 0
                || !puzzle.Beside[item.Index].TrueForAll(n => binOf[n] < 0 || puzzle.MayTouch(bin, binOf[n]))
                || (puzzle.Beside[item.Index].Count > 0 && puzzle.Bins[bin].Colour is { } colour && !tried.Add(colour.Hex)))
            {
                continue;
            }

            choices[bin]--;
            binOf[item.Index] = bin;
            var found = Place(order, at + 1, left, bare, binOf);
            if (found == Found.Yes)
            {
                return found;
            }

            binOf[item.Index] = -1;
            choices[bin]++;
            if (found == Found.Unknown)
            {
                return found;
            }
        }

        if (bare[item.Class] > 0)
        {
            bare[item.Class]--;
            result = Place(order, at + 1, left, bare, binOf);
            bare[item.Class]++;
        }

        return result;
    }
}
