namespace StashMatch.Knitting.Hats;

/// <summary>A crown's rounds: what is over a multiple of the lines is taken off evenly first, a plain round follows; then a round of decreases and a plain one in turn until one stitch a line stays, which are drawn up.</summary>
internal static class CrownShaping
{
    /// <summary>The rounds, each with the stitches left on the needles. Flat work carries its seam stitches along.</summary>
    public static List<RowRun> Rounds(int stitches, int lines, int seamStitches)
    {
        var rounds = new List<RowRun>();
        var left = stitches - seamStitches;
        void Add(StitchPattern pattern) => rounds.Add(new RowRun(1, left + seamStitches, pattern));
        if (left % lines != 0)
        {
            left -= left % lines;
            Add(StitchPattern.Decrease);
            Add(StitchPattern.Stockinette);
        }

        while (left > lines)
        {
            left -= lines;
            Add(StitchPattern.Decrease);
            if (left > lines)
            {
                Add(StitchPattern.Stockinette);
            }
        }

        return rounds;
    }

    /// <summary>Like rounds in a row as one run.</summary>
    public static List<RowRun> InRuns(IEnumerable<RowRun> rounds)
    {
        var runs = new List<RowRun>();
        foreach (var round in rounds)
        {
            if (runs.Count > 0 && runs[^1] is var last && last.Stitches == round.Stitches && last.Pattern == round.Pattern)
            {
                runs[^1] = last with { Rows = last.Rows + round.Rows };
            }
            else
            {
                runs.Add(round);
            }
        }

        return runs;
    }
}
