using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching.Search;

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
            var (bare, ends) = (new List<double>(), 0.0);
            foreach (var item in g)
            {
                var group = Puzzle.Grouping.Groups[item.Group];
                var strands = item.Need / Puzzle.NeedOf(group);
                bare.AddRange(group.Members.Select(m => strands * parts[m].BareMetres));
                ends += strands * parts[group.EndsAt].EndsMetres;
            }

            return new Load(Puzzle.Leftover(g.Key), bare, ends);
        });
        return Chance.OfEnough(usage, [.. loads]);
    }
}
