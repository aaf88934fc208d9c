using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching;

/// <summary>A puzzle with a leftover for each item, -1 for one left uncovered.</summary>
internal sealed record Plan(Puzzle Puzzle, int[] BinOf, decimal Rung, bool Proven)
{
    public bool Complete => Array.TrueForAll(BinOf, b => b >= 0);

    public long[] Loads()
    {
        var loads = new long[Puzzle.Bins];
        foreach (var item in Puzzle.Items)
        {
            if (BinOf[item.Index] >= 0)
            {
                loads[BinOf[item.Index]] += item.Need;
            }
        }

        return loads;
    }

    /// <summary>The chance that no leftover runs out; 0 with something uncovered.</summary>
    public double ChanceOfEnough(Hats.Usage usage)
    {
        if (!Complete)
        {
            return 0;
        }

        var parts = Puzzle.Hat.Parts;
        var loads = Puzzle.Items.GroupBy(i => BinOf[i.Index]).OrderBy(g => g.Key).Select(g =>
        {
            var groups = g.Select(i => Puzzle.Grouping.Groups[i.Group]).ToList();
            return new Load(
                Puzzle.Leftover(g.Key),
                [.. groups.SelectMany(x => x.Members).Select(m => parts[m].BareMetres)],
                groups.Sum(x => parts[x.EndsAt].EndsMetres));
        });
        return Chance.OfEnough(usage, [.. loads]);
    }
}
