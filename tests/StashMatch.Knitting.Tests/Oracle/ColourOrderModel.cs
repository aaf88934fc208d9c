using Google.OrTools.Sat;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>
/// Tier 4 written down together with the rest: of all ways to cover everything that are as tidy as can be, the one whose colours go
/// from stripe to stripe in the smallest steps, or the biggest. A step is dE00 in hundredths, to the nearest; one from or to a colour
/// that is not known counts 50 in a gradient and nothing in a contrast.
/// </summary>
internal static class ColourOrderModel
{
    private const long Unknown = 5_000;

    /// <summary>The best sum of steps.</summary>
    /// <param name="sheet">The question.</param>
    /// <param name="bears">What each leftover may bear, millimetres.</param>
    /// <param name="width">How wide the brim's choice is, 0 to 3.</param>
    /// <param name="worth">How tidy it has to be at least.</param>
    /// <param name="gradient">Small steps, or big ones.</param>
    /// <param name="seamDiffers">Whether the first stripe and the last have to differ too.</param>
    public static Settled Solve(Sheet sheet, long[] bears, int width, long worth, bool gradient, bool seamDiffers = false)
    {
        var compact = new CompactModel(sheet, bears, width, coverAll: true);
        if (seamDiffers && sheet.Seam is { } seam)
        {
            compact.KeepApart([seam]);
        }

        compact.AtLeastAsTidyAs(worth);
        var model = compact.Model;
        var (terms, sizes) = (new List<BoolVar>(), new List<long>());
        foreach (var ((a, b), times) in PairsOf(sheet).CountBy(p => p))
        {
            // Which two leftovers lie side by side at this place: one yes-or-no for each two.
            var both = new Dictionary<(int, int), BoolVar>();
            var (ofA, ofB) = (BallsOf(compact, sheet, a), BallsOf(compact, sheet, b));
            foreach (var j in ofA)
            {
                foreach (var k in ofB.Where(k => sheet.Question.Blend || !sheet.Alike(j, k)))
                {
                    both[(j, k)] = model.NewBoolVar("");
                    terms.Add(both[(j, k)]);
                    sizes.Add(times * Step(sheet, j, k, gradient));
                }
            }

            foreach (var j in ofA)
            {
                model.Add(LinearExpr.Sum(both.Where(p => p.Key.Item1 == j).Select(p => p.Value)) == compact.From(a, j)!);
            }

            foreach (var k in ofB)
            {
                model.Add(LinearExpr.Sum(both.Where(p => p.Key.Item2 == k).Select(p => p.Value)) == compact.From(b, k)!);
            }
        }

        var sum = LinearExpr.WeightedSum(terms, sizes);
        if (gradient)
        {
            model.Minimize(sum);
        }
        else
        {
            model.Maximize(sum);
        }

        return compact.Any();
    }

    /// <summary>The sum of steps of an assignment.</summary>
    public static long SumOf(Sheet sheet, IReadOnlyList<int> ballOf, bool gradient) => PairsOf(sheet).Sum(p => Step(sheet, ballOf[p.A], ballOf[p.B], gradient));

    private static List<int> BallsOf(CompactModel compact, Sheet sheet, int lot) =>
        [.. Enumerable.Range(0, sheet.Held.Length).Where(b => compact.From(lot, b) is not null)];

    // Each stripe and the next, as lots; two in one lot make no step.
    private static IEnumerable<(int A, int B)> PairsOf(Sheet sheet)
    {
        var parts = sheet.Hat.Parts;
        int LotOf(HatPart part) => Array.FindIndex(sheet.Lots, l => l.Members.Any(m => parts[m] == part));
        var stripes = parts.Where(p => p.Kind == PartKind.Stripe).OrderBy(p => p.Number).ToList();
        return stripes.Zip(stripes.Skip(1), (p, q) => (A: LotOf(p), B: LotOf(q))).Where(p => p.A != p.B).Select(p => p.A < p.B ? p : (p.B, p.A));
    }

    private static long Step(Sheet sheet, int a, int b, bool gradient) =>
        sheet.Question.Leftovers[a].Colour is { } x && sheet.Question.Leftovers[b].Colour is { } y
            ? (long)Math.Round(100 * ColourDifference.Ciede2000(x.Lab, y.Lab), MidpointRounding.AwayFromZero)
            : gradient ? Unknown : 0;
}
