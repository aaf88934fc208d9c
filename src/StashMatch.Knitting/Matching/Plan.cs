using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;

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

        var loads = Loads();
        return Chance.OfEnough(usage, [.. Enumerable.Range(0, loads.Length).Where(b => loads[b] > 0).Select(b => new Load(Puzzle.Leftover(b), Metres.FromMillimetres(loads[b])))]);
    }
}
