using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>Whether kits make every size, stripe count and arrangement.</summary>
/// <remarks>
/// By the matcher's rules: the narrowest brim set that covers, then the first rung of the ladder from the allowance up that is likely enough.
/// Whether a rung can be covered is exact; where the allowance can be kept the matcher is asked. So the verdict is the matcher's of the same
/// skeins, and verdict, chance and margin are those of the plan that opens.
/// </remarks>
public static class KitCheck
{
    // Up to so many groups of parts the matcher tells by how much a kit is short.
    private const int FewGroups = 8;

    private static readonly decimal[] Ladder = [0, 2.5m, 5, 7.5m, 10, 15, 20, 25];

    /// <summary>For each kit its cells: sizes first, then counts, then arrangements, in the order asked.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="kits">The kits.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static IReadOnlyList<IReadOnlyList<KitCell>> Of(KitQuestion asked, IReadOnlyList<Kit> kits, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(kits);
        var supplies = kits.Select(k => (
            Nominal: new Supply(k.AtNominal(), asked.Hat.WeightClass), Lightest: new Supply(k.AtLightest(asked.LightestPercent), asked.Hat.WeightClass))).ToList();
        var counts = asked.Sizes.SelectMany(size => (asked.StripeCounts ?? asked.Hat.CountsFor(size)).Select(stripes => (Size: size, Stripes: stripes))).ToList();
        var each = asked.Arrangements.Count;
        var cells = kits.Select(_ => new KitCell[counts.Count * each]).ToArray();
        cancel.ThrowIfCancellationRequested();
        Parallel.For(0, counts.Count, new ParallelOptions { CancellationToken = cancel }, at =>
        {
            var (size, stripes) = counts[at];
            var known = asked.Hat.TryNeeds(size, stripes, out var needs, out var cannot);
            for (var i = 0; i < each; i++)
            {
                var (arrangement, why) = (asked.Arrangements[i], cannot);
                var demand = known ? Demand.Of(asked.Hat, needs!, arrangement, out why) : null;
                for (var k = 0; k < supplies.Count; k++)
                {
                    cells[k][(at * each) + i] = demand is null
                        ? new KitCell(size, stripes, arrangement, why, null, null)
                        : new KitCell(size, stripes, arrangement, null, Side(demand, supplies[k].Nominal, asked, out _, cancel), Side(demand, supplies[k].Lightest, asked, out _, cancel));
                }
            }
        });
        return cells;
    }

    /// <summary>The skeins that are of another weight class than the hat, or read as one by their label, each with that class: no cell takes them.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="hat">The hat.</param>
    public static IReadOnlyList<(KitSkein Skein, WeightClass Class)> LeftOut(Kit kit, Hat hat)
    {
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(hat);
        return [.. kit.Skeins.Select(s => (s, (kit with { Skeins = [s with { Count = 1 }] }).AtNominal()[0].ClassOrGuess)).Where(s => s.ClassOrGuess != hat.WeightClass)];
    }

    /// <summary>Which skein goes where in a cell, at nominal weight; empty where it cannot be knitted.</summary>
    /// <param name="asked">What was asked.</param>
    /// <param name="kit">The kit.</param>
    /// <param name="cell">One of its cells.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<PartAnswer> Open(KitQuestion asked, Kit kit, KitCell cell, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(cell);
        if (Demand.Of(asked.Hat, cell.Size, cell.Stripes, cell.Arrangement, out _) is not { } demand)
        {
            return [];
        }

        Side(demand, new Supply(kit.AtNominal(), asked.Hat.WeightClass), asked, out var parts, cancel);
        return parts();
    }

    private static KitSide Side(Demand demand, Supply supply, KitQuestion asked, out Func<IReadOnlyList<PartAnswer>> parts, CancellationToken cancel)
    {
        var fit = new KitFit(demand, supply, cancel);
        var allowance = asked.AllowancePercent;
        var exact = true;
        int[]? At(decimal rung, int brim)
        {
            var binOf = fit.Cover(rung, brim, out var found);
            exact &= found != Found.Unknown;
            return binOf;
        }

        var widths = Array.Exists(demand.HasBrim, b => b) ? supply.Widths : [3];
        var width = widths.Length == 0 ? 3 : widths[^1];

        int[]? covering = null;
        foreach (var w in widths)
        {
            if ((covering = At(0, w)) is not null)
            {
                width = w;
                break;
            }
        }

        if (covering is null)
        {
            // The matcher has more ways to look where the steps ran out.
            return !exact || demand.Need.Length <= FewGroups ? Asked(demand, supply, fit, allowance, out parts, cancel) : Short(demand, supply, fit, allowance, out parts);
        }

        int[]? highest = null;
        var chance = 0.0;
        var rungs = Ladder.Append(allowance).Where(r => r >= allowance).Distinct().Order().ToList();
        foreach (var rung in rungs)
        {
            if (At(rung, width) is not { } plan)
            {
                break;
            }

            (highest, chance) = (plan, fit.ChanceOf(plan));
            if (chance >= Matcher.GoodChance)
            {
                break;
            }
        }

        var holds = highest is not null;
        if (holds)
        {
            return Asked(demand, supply, fit, allowance, out parts, cancel);
        }

        if (highest is null)
        {
            highest = Ladder.Where(r => r > 0 && r < allowance).OrderDescending().Select(r => At(r, width)).FirstOrDefault(p => p is not null) ?? covering;
            chance = fit.ChanceOf(highest);
        }

        // Whether it passes asks for yarn enough alone, whichever of it the brim takes.
        var passes = holds || (width != widths[^1] && At(allowance, widths[^1]) is not null);
        parts = () => Told(demand, supply, highest, new long[highest.Length], allowance);
        return Covered(demand, supply, highest, holds ? Verdict.Yes : Verdict.OnlyJust, chance, passes, allowance) with { Exact = exact };
    }

    private static KitSide Covered(Demand demand, Supply supply, int[] binOf, Verdict verdict, double chance, bool passes, decimal allowance)
    {
        var loads = LoadsOf(demand, supply, binOf);
        var weakest = -1;
        for (var b = 0; b < loads.Length; b++)
        {
            if (loads[b] > 0 && (weakest < 0 || (supply.Held[b] - loads[b]) * (decimal)loads[weakest] < (supply.Held[weakest] - loads[weakest]) * (decimal)loads[b]))
            {
                weakest = b;
            }
        }

        var longest = Enumerable.Range(0, binOf.Length).Where(i => binOf[i] == weakest).MaxBy(i => (demand.Need[i], -i));
        return new KitSide(
            verdict,
            Math.Floor((supply.Held[weakest] - loads[weakest]) * 1000m / loads[weakest]) / 10,
            NameOf(demand, longest),
            supply.Bins[weakest].Name,
            default,
            passes ? default : ShortForAllowance(supply, loads, allowance, 0),
            chance,
            true);
    }

    private static KitSide Short(Demand demand, Supply supply, KitFit fit, decimal allowance, out Func<IReadOnlyList<PartAnswer>> parts)
    {
        var binOf = fit.Most();
        var shorts = fit.ShortOf(binOf);
        var worst = Enumerable.Range(0, shorts.Length).MaxBy(i => (shorts[i], -i));
        var bare = Enumerable.Range(0, binOf.Length).Where(i => binOf[i] < 0).Sum(i => Metres.FromMillimetres(demand.Need[i]).WithAllowance(allowance).Millimetres);
        parts = () => Told(demand, supply, binOf, shorts, allowance);
        return new KitSide(
            Verdict.No,
            0,
            NameOf(demand, worst),
            binOf[worst] < 0 ? null : supply.Bins[binOf[worst]].Name,
            Metres.FromMillimetres(shorts.Sum()),
            ShortForAllowance(supply, LoadsOf(demand, supply, binOf), allowance, bare),
            0,
            false);
    }

    // The matcher's own answer: tidied, and exact in what is short.
    private static KitSide Asked(Demand demand, Supply supply, KitFit fit, decimal allowance, out Func<IReadOnlyList<PartAnswer>> parts, CancellationToken cancel)
    {
        var best = Matcher.Best(demand.Ask(supply.Bins, allowance), out _, cancel)!;
        var answer = Answers.Of(best, allowance);
        parts = () => answer.Parts;
        if (best.Plan.Complete)
        {
            var binOf = fit.BinOf(best.Plan);
            var holds = answer.ShortForAllowance.Millimetres == 0;
            return Covered(demand, supply, binOf, best.Verdict, best.Chance, holds, allowance) with { Exact = best.Plan.Proven };
        }

        var worst = answer.Parts.MaxBy(p => p.Short)!;
        var from = worst.From is { } f ? supply.Bins.First(l => l.Id == f.Leftover).Name : null;
        return new KitSide(Verdict.No, 0, worst.Part.Name, from, answer.Short, answer.ShortForAllowance, 0, best.Plan.Proven);
    }

    private static List<PartAnswer> Told(Demand demand, Supply supply, int[] binOf, long[] shorts, decimal allowance)
    {
        var told = new PartAnswer[demand.Hat.Parts.Count];
        for (var i = 0; i < binOf.Length; i++)
        {
            var left = demand.Need[i] - shorts[i];
            var group = demand.Grouping.Groups[i];
            foreach (var m in group.Members)
            {
                var need = demand.Hat.Parts[m].Need(demand.Hat.Usage, m == group.EndsAt);
                var goesIn = Metres.FromMillimetres(Math.Min(need.Millimetres, left));
                left -= goesIn.Millimetres;
                var from = goesIn.Millimetres == 0 ? null : new Allotment(supply.Bins[binOf[i]].Id, goesIn, supply.Bins[binOf[i]].Ratio.GramsOf(goesIn));
                told[m] = new PartAnswer(demand.Hat.Parts[m], need, need.WithAllowance(allowance), from, need - goesIn);
            }
        }

        return [.. told];
    }

    private static long[] LoadsOf(Demand demand, Supply supply, int[] binOf)
    {
        var loads = new long[supply.Held.Length];
        for (var i = 0; i < binOf.Length; i++)
        {
            if (binOf[i] >= 0)
            {
                loads[binOf[i]] += demand.Need[i];
            }
        }

        return loads;
    }

    private static Metres ShortForAllowance(Supply supply, long[] loads, decimal allowance, long bare) => Metres.FromMillimetres(
        bare + loads.Select((load, b) => Math.Max(0, Metres.FromMillimetres(load).WithAllowance(allowance).Millimetres - supply.Held[b])).Sum());

    private static string NameOf(Demand demand, int group) => demand.Hat.Parts[demand.Grouping.Groups[group].EndsAt].Name;
}
