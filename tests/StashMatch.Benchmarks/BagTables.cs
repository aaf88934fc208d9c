using System.Diagnostics;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Benchmarks;

/// <summary>A whole bag at once: the table of 384 cells, first coverage alone, then each cell exactly as its plan; and how many hats it makes.</summary>
internal static class BagTables
{
    private static readonly int[] Counts = [.. Enumerable.Range(1, 12)];

    public static void Cells(HatDesign hat, bool isShort)
    {
        var anyCount = hat with { StripeCounts = null };
        Table.Head(
            $"From this bag, {anyCount.Sizes.Count * Counts.Length * FromThisBag.Usual.Count} cells, processor time",
            "leftovers", "covering alone", "the table", "on the wall", "yes", "only just", "no");
        foreach (var count in new[] { 24, 60, 1_000, 10_000 })
        {
            var (covered, whole, wall) = (new List<double>(), new List<double>(), new List<double>());
            IReadOnlyList<BagCell> cells = [];
            for (var seed = -1; seed < (isShort ? 3 : 12); seed++)
            {
                var bag = Bags.Of(count, seed + 1);
                var cover = Spent(() => Cover(anyCount, bag), out _);
                var all = Spent(() => cells = FromThisBag.Cells(anyCount, bag, anyCount.SizeNames, Counts, FromThisBag.Usual, 10), out var onTheWall);
                if (seed >= 0)
                {
                    covered.Add(cover);
                    whole.Add(all);
                    wall.Add(onTheWall);
                }
            }

            string Of(Verdict verdict) => $"{cells.Count(c => c.Verdict == verdict)}";
            Table.Row($"{count}", Table.Figure(Table.Median(covered)), Table.Figure(Table.Median(whole)), Table.Figure(Table.Median(wall)), Of(Verdict.Yes), Of(Verdict.OnlyJust), Of(Verdict.No));
        }
    }

    public static void WholeBags(HatDesign hat, bool isShort)
    {
        Table.Head("The whole bag, processor time", "leftovers", "median", "worst", "at least of at most");
        foreach (var count in new[] { 24, 60, 300, 1_000, 10_000 })
        {
            var (times, least, most) = (new List<double>(), 0, 0);
            for (var seed = -1; seed < (isShort ? 3 : 12); seed++)
            {
                WholeBagAnswer? answer = null;
                var spent = Spent(() => answer = WholeBag.Of(hat, hat.SizeNames, Bags.Of(count, seed + 1), 10), out _);
                if (seed >= 0)
                {
                    times.Add(spent);
                    (least, most) = (least + answer!.AtLeast, most + answer.AtMost);
                }
            }

            Table.Row($"{count}", Table.Figure(Table.Median(times)), Table.Figure(times.Max()), Table.Share(least, most));
        }
    }

    private static void Cover(HatDesign hat, IReadOnlyList<Leftover> bag)
    {
        foreach (var size in hat.SizeNames)
        {
            foreach (var stripes in Counts)
            {
                if (!hat.TryNeeds(size, stripes, out var needs, out _))
                {
                    continue;
                }

                foreach (var arrangement in FromThisBag.Usual)
                {
                    Inside.CanCover(FromThisBag.QuestionOf(hat, size, stripes, arrangement, bag, 10), needs);
                }
            }
        }
    }

    // Of all processors together, so that what else runs on the machine counts little.
    private static double Spent(Action work, out double onTheWall)
    {
        using var self = Process.GetCurrentProcess();
        var (before, watch) = (self.TotalProcessorTime, Stopwatch.StartNew());
        work();
        onTheWall = watch.Elapsed.TotalMilliseconds;
        self.Refresh();
        return (self.TotalProcessorTime - before).TotalMilliseconds;
    }
}
