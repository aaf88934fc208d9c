using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>Which cells of a hat are asked about.</summary>
/// <param name="Hat">The hat.</param>
/// <param name="Sizes">Sizes of the hat.</param>
/// <param name="StripeCounts">Counts from 1 to 24, or null for all the hat may have.</param>
/// <param name="Arrangements">Arrangements, one or more.</param>
public sealed record KitQuestion(Hat Hat, IReadOnlyList<string> Sizes, IReadOnlyList<int>? StripeCounts, IReadOnlyList<Arrangement> Arrangements)
{
    /// <summary>What is asked where nobody says: own colours, one ground, one thread through, as it falls.</summary>
    public static IReadOnlyList<Arrangement> UsualArrangements { get; } =
        [Arrangement.OwnColours, Arrangement.OneGround, Arrangement.OneThread, Arrangement.AsItFalls];

    /// <summary>Spare on top of the need, 0 to 100 %.</summary>
    public decimal AllowancePercent { get; init; } = 10;

    /// <summary>How light the lightest skein is, per cent under nominal, 0 to 90; null for the lawful limit.</summary>
    public decimal? LightestPercent { get; init; }

    /// <summary>How many cells that is.</summary>
    public int Cells => Arrangements.Count * Sizes.Sum(s => (StripeCounts ?? Hat.CountsFor(s)).Count);
}

/// <summary>Whether kits make every size, stripe count and arrangement.</summary>
public static class KitCheck
{
    private static readonly decimal[] Ladder = [0, 2.5m, 5, 7.5m, 10, 15, 20, 25];

    /// <summary>For each kit its cells: sizes first, then counts, then arrangements, in the order asked.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="kits">The kits.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static IReadOnlyList<IReadOnlyList<KitCell>> Of(KitQuestion question, IReadOnlyList<Kit> kits, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(kits);
        var hat = question.Hat;
        var weighed = kits.Select(k => (
            Nominal: new Supply(k.AtNominal(), hat.WeightClass), Lightest: new Supply(k.AtLightest(question.LightestPercent), hat.WeightClass))).ToList();
        var cells = kits.Select(_ => new List<KitCell>()).ToList();
        foreach (var size in question.Sizes)
        {
            foreach (var stripes in question.StripeCounts ?? hat.CountsFor(size))
            {
                foreach (var arrangement in question.Arrangements)
                {
                    var demand = Demand.Of(hat, size, stripes, arrangement, out var why);
                    for (var k = 0; k < kits.Count; k++)
                    {
                        cancel.ThrowIfCancellationRequested();
                        cells[k].Add(demand is null
                            ? new KitCell(size, stripes, arrangement, why, null, null)
                            : new KitCell(size, stripes, arrangement, null, Side(demand, weighed[k].Nominal, question, cancel), Side(demand, weighed[k].Lightest, question, cancel)));
                    }
                }
            }
        }

        return cells;
    }

    // As the matcher: the narrowest brim set that covers, then the first rung from the allowance up that is likely enough.
    private static KitSide Side(Demand demand, Supply supply, KitQuestion question, CancellationToken cancel)
    {
        var fit = new KitFit(demand, supply, cancel);
        var allowance = question.AllowancePercent;
        var certain = true;
        int[]? At(decimal rung, int brim)
        {
            var binOf = fit.Cover(rung, brim, out var found);
            certain &= found != Found.Unknown;
            return binOf;
        }

        int[]? covering = null;
        var width = 3;
        var widths = Array.Exists(demand.HasBrim, b => b) ? supply.Widths : [3];
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
            return NotCovered(demand, supply, fit, allowance, certain);
        }

        int[]? highest = null;
        var chance = 0.0;
        foreach (var rung in Ladder.Append(allowance).Where(r => r >= allowance).Distinct().Order())
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
        var verdict = holds && chance >= Matcher.GoodChance ? Verdict.Yes : Verdict.OnlyJust;
        if (highest is null)
        {
            highest = Ladder.Where(r => r > 0 && r < allowance).OrderDescending().Select(r => At(r, width)).FirstOrDefault(p => p is not null) ?? covering;
            chance = fit.ChanceOf(highest);
        }

        // Whether it passes asks for yarn enough alone, whichever of it the brim takes.
        var passes = holds || (width < 3 && At(allowance, 3) is not null);

        var loads = LoadsOf(demand, supply, highest);
        var weakest = Enumerable.Range(0, loads.Length).Where(b => loads[b] > 0).MinBy(b => ((supply.Held[b] - loads[b]) / (decimal)loads[b], b));
        return new KitSide(
            verdict,
            Math.Floor((supply.Held[weakest] - loads[weakest]) * 1000m / loads[weakest]) / 10,
            LongestOn(demand, highest, weakest),
            supply.Bins[weakest].Name,
            default,
            passes ? default : ShortForAllowance(supply, loads, allowance, 0),
            chance,
            certain);
    }

    private static KitSide NotCovered(Demand demand, Supply supply, KitFit fit, decimal allowance, bool certain)
    {
        var binOf = fit.MostCovered();
        var shorts = fit.ShortOf(binOf);
        var worst = Enumerable.Range(0, shorts.Length).MaxBy(i => (shorts[i], -i));
        var bare = Enumerable.Range(0, binOf.Length).Where(i => binOf[i] < 0).Sum(i => Metres.FromMillimetres(demand.Need[i]).WithAllowance(allowance).Millimetres);
        return new KitSide(
            Verdict.No,
            0,
            NameOf(demand, worst),
            binOf[worst] < 0 ? null : supply.Bins[binOf[worst]].Name,
            Metres.FromMillimetres(shorts.Sum()),
            ShortForAllowance(supply, LoadsOf(demand, supply, binOf), allowance, bare),
            0,
            certain);
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

    private static string LongestOn(Demand demand, int[] binOf, int bin) =>
        NameOf(demand, Enumerable.Range(0, binOf.Length).Where(i => binOf[i] == bin).MaxBy(i => (demand.Need[i], -i)));

    private static string NameOf(Demand demand, int group) => demand.Hat.Parts[demand.Grouping.Groups[group].EndsAt].Name;
}
