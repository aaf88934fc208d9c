using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>Half-way: forecasts what is ahead from this knitter's own rate, used so far against planned so far.</summary>
/// <remarks>
/// A ball weighed again is forecast at the rate just measured on it: its label's error is in both and cancels. The other balls take
/// what all weighings of the plan teach of the knitter. One reading a ball tells all that its earlier ones did. [ours]
/// </remarks>
public static class Forecast
{
    private const double NineInTen = 1.6448536269514722;

    /// <summary>Forecasts what is ahead.</summary>
    /// <param name="planned">The usage the plan was made with.</param>
    /// <param name="balls">Every ball of the plan.</param>
    /// <param name="allowancePercent">Spare on top of what is ahead, 0 to 100 %.</param>
    /// <param name="lacking">Parts ahead that the balls do not cover, as planned; null for none.</param>
    /// <param name="target">How surely each ball must last for a "yes"; 0.90 where null.</param>
    public static Ahead Of(Usage planned, IReadOnlyList<BallInWork> balls, decimal allowancePercent, IReadOnlyList<PartLacking>? lacking = null, Rung? target = null)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(balls);
        var rates = balls.Select(b => b.Rate).ToList();
        Usage Taught(BallInWork? without) => MeasuredRate.Learn(planned, balls.Zip(rates).Where(b => b.Second is not null && b.First != without)
            .Select(b => (b.Second!, LengthDoubt.Of(b.First.Start).Label, (double)b.First.Now!.BandGrams)));
        var usage = Taught(null);
        var taught = usage.Factor / planned.Factor;
        var loads = balls.Zip(rates, (b, r) => LoadOf(b, r, taught)).ToList();
        var ahead = balls.Zip(rates, (b, r) => Of(b, r, planned, usage, r is null ? usage : Taught(b)))
            .Zip(loads, (a, l) => a with { Sureness = Chance.OfEnough(usage, l) }).ToList();
        var open = ahead.Where(a => a.Parts.Count > 0).ToList();
        var uncovered = (lacking ?? []).Select(l => l with { Forecast = At(taught, l.Planned) }).ToList();
        var missing = uncovered.Sum(l => l.Forecast.WithAllowance(allowancePercent).Millimetres) + open.Sum(a => Math.Max(0, a.Need.WithAllowance(allowancePercent).Millimetres - a.Left.Millimetres));
        var shortBy = open.Sum(a => a.Short.Millimetres) + uncovered.Sum(l => l.Forecast.Millimetres);
        var chance = shortBy > 0 ? 0 : Chance.OfEnough(usage, [.. loads.Where((_, i) => ahead[i].Parts.Count > 0)]);
        var sure = open.TrueForAll(a => a.Sureness >= Rung.AskedFor(target ?? Rung.UsualTarget, IsInDoubt(a.Ball)).Chance);
        return new Ahead
        {
            Balls = ahead,
            Lacking = uncovered,
            Verdict = shortBy > 0 ? Verdict.No : missing > 0 || !sure ? Verdict.OnlyJust : Verdict.Yes,
            Why = shortBy > 0 ? Why.Short : missing > 0 ? Why.Allowance : !sure ? Why.Chance : Why.Covered,
            ChanceOfEnough = chance,
            Usage = usage,
            Short = Metres.FromMillimetres(shortBy),
            ShortForAllowance = Metres.FromMillimetres(missing),
            Weakest = open.OrderBy(a => a.Spare / Math.Max(0.001m, a.Need.Value)).ThenBy(a => a.Ball.Start.Id, StringComparer.Ordinal).FirstOrDefault(),
        };
    }

    /// <summary>What so much planned takes at a rate, rounded up; at a rate of 1 it is what was planned.</summary>
    internal static Metres At(double rate, Metres planned) => Metres.Needed(rate * planned.Millimetres / 1000);

    private static BallAhead Of(BallInWork ball, MeasuredRate? own, Usage planned, Usage now, Usage byOthers)
    {
        bool WasDone(PlannedUse u) => ball.Now is not null && ball.DoneWhenWeighed.Contains(u.Part, StringComparer.Ordinal);
        bool IsDone(PlannedUse u) => WasDone(u) || ball.Done.Contains(u.Part, StringComparer.Ordinal);
        var soFar = Metres.FromMillimetres(ball.Uses.Where(WasDone).Sum(u => u.Planned.Millimetres));
        var usedMetres = ball.Now is null || ball.Now.Net >= ball.Start.Weighing.Net ? 0 : ball.Start.Ratio.MetresIn((ball.Start.Weighing.Net - ball.Now.Net).Value);
        var rate = own is null ? now.Factor / planned.Factor : (double)usedMetres * 1000 / soFar.Millimetres;
        var since = ball.Uses.Where(u => IsDone(u) && !WasDone(u)).Sum(u => At(rate, u.Planned).Millimetres);
        var left = Metres.FromMillimetres(Math.Max(0, ball.AsWeighed.Held.Millimetres - since));
        var parts = new List<PartAhead>();
        var after = 0L;
        foreach (var use in ball.Uses.Where(u => !IsDone(u)).Reverse())
        {
            var forecast = At(rate, use.Planned);
            after += forecast.Millimetres;
            var grams = ball.Start.Ratio.GramsOf(Metres.FromMillimetres(after));
            parts.Insert(0, new PartAhead(use.Part, use.Planned, forecast, Grams.FromMilligrams((long)Math.Ceiling(grams * 1000))));
        }

        var (mean, spread) = SpareOf(ball, own, byOthers.Factor / planned.Factor, byOthers.Spread);
        return new BallAhead(ball, rate, own is not null, Metres.Held(usedMetres), soFar, left, parts)
        {
            LeastSpare = (decimal)(mean - (NineInTen * spread)),
            MostSpare = (decimal)(mean + (NineInTen * spread)),
        };
    }

    // Mean and spread of what is to spare, in the ball's own metres, every doubt to first order. What is known of the ball's use by the
    // other balls and its label is updated by its own rate, and with it what the last reading may be off.
    private static (double Mean, double Spread) SpareOf(BallInWork ball, MeasuredRate? own, double taught, double spread)
    {
        var load = LoadOf(ball, null, 1);
        var perGram = (double)ball.Start.Ratio.MetresPerGram;
        var label = LengthDoubt.Of(ball.Start).Label;
        var ofScale = Math.Pow((double)load.Leftover.Weighing.BandGrams, 2) / 3;
        var (use, ofUse, heavier, both) = (taught, Sureness.CommonVariance(spread) + (label * label), 0.0, 0.0);
        if (own is not null)
        {
            var all = ofUse + (own.Spread * own.Spread) + (ofScale / (own.UsedGrams * own.UsedGrams));
            var seen = Math.Log(own.Factor / use) / all;
            var pull = ofScale / own.UsedGrams;
            (use, heavier, both) = (use * Math.Exp(ofUse * seen), pull * seen, ofUse * pull / all);
            (ofUse, ofScale) = (ofUse - (ofUse * ofUse / all), ofScale - (pull * pull / all));
        }

        var need = use * (double)load.Length.Value;
        var variance = (need * need * (ofUse + (Sureness.OneLeftover * Sureness.OneLeftover))) + (perGram * perGram * ofScale) + (2 * need * perGram * both);
        return (((double)load.Leftover.Held.Value) + (heavier * perGram) - need, Math.Sqrt(Math.Max(0, variance)));
    }

    // All the last reading must still serve, at what the weighings taught; the ball's own rate is told against that.
    private static Load LoadOf(BallInWork ball, MeasuredRate? own, double taught)
    {
        var left = ball.Uses.Where(u => ball.Now is null || !ball.DoneWhenWeighed.Contains(u.Part, StringComparer.Ordinal)).Sum(u => u.Planned.Millimetres);
        return new Load(ball.AsWeighed, At(taught, Metres.FromMillimetres(left))) { Rate = own is null ? null : own with { Factor = own.Factor / taught } };
    }

    // Of a ball weighed again the label is no doubt any more.
    private static bool IsInDoubt(BallInWork ball) =>
        (ball.Rate is null ? LengthDoubt.Of(ball.AsWeighed) : LengthDoubt.Of(ball.AsWeighed) with { Label = 0 }).IsLarge;
}
