using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
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
    public static Ahead Of(Usage planned, IReadOnlyList<BallInWork> balls, decimal allowancePercent)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(balls);
        var rates = balls.Select(b => b.Rate).ToList();
        var usage = MeasuredRate.Learn(planned, balls.Zip(rates).Where(b => b.Second is not null)
            .Select(b => (b.Second!, Chance.RatioSpread(b.First.Start), (double)b.First.Now!.BandGrams)));
        var ahead = balls.Zip(rates, (b, r) => Of(b, r, planned, usage)).ToList();
        var open = ahead.Where(a => a.Parts.Count > 0).ToList();
        var loads = open.Select(a => LoadOf(a.Ball, a.Ball.Rate)).ToList();
        var missing = open.Sum(a => Math.Max(0, a.Need.WithAllowance(allowancePercent).Millimetres - a.Left.Millimetres));
        var shortBy = open.Sum(a => a.Short.Millimetres);
        var chance = shortBy > 0 ? 0 : Chance.OfEnough(usage, loads);
        return new Ahead
        {
            Balls = ahead,
            Verdict = shortBy > 0 ? Verdict.No : missing > 0 || chance < Matcher.GoodChance ? Verdict.OnlyJust : Verdict.Yes,
            Why = shortBy > 0 ? Why.Short : missing > 0 ? Why.Allowance : chance < Matcher.GoodChance ? Why.Chance : Why.Covered,
            ChanceOfEnough = chance,
            Usage = usage,
            Short = Metres.FromMillimetres(shortBy),
            ShortForAllowance = Metres.FromMillimetres(missing),
            Weakest = open.OrderBy(a => a.Spare / Math.Max(0.001m, a.Need.Value)).ThenBy(a => a.Ball.Start.Id, StringComparer.Ordinal).FirstOrDefault(),
        };
    }

    /// <summary>What so much planned takes at a rate, rounded up; at a rate of 1 it is what was planned.</summary>
    internal static Metres At(double rate, Metres planned) => Metres.Needed(rate * planned.Millimetres / 1000);

    private static BallAhead Of(BallInWork ball, MeasuredRate? own, Usage planned, Usage now)
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

        var (mean, spread) = SpareOf(ball, own, now);
        return new BallAhead(ball, rate, own is not null, Metres.Held(usedMetres), soFar, left, parts)
        {
            LeastSpare = (decimal)(mean - (NineInTen * spread)),
            MostSpare = (decimal)(mean + (NineInTen * spread)),
        };
    }

    // Mean and spread of what is to spare, in the ball's own metres, every doubt to first order.
    private static (double Mean, double Spread) SpareOf(BallInWork ball, MeasuredRate? own, Usage now)
    {
        var load = LoadOf(ball, own);
        var (bare, squares) = (load.Bare.Sum(), load.Bare.Sum(d => d * d));
        var label = Chance.RatioSpread(ball.Start);
        var (use, doubt) = own?.Given(now.Factor, label, 0) ?? (now.Factor, 0);
        var shared = own is null ? 1 : own.Spread * own.Spread / ((own.Spread * own.Spread) + (label * label));
        var held = (double)load.Leftover.Held.Value;
        var byUse = use * bare * Math.Sqrt((doubt * doubt) + (shared * shared * now.Spread * now.Spread));
        var byParts = use * Chance.PartSpread * Math.Sqrt(squares);
        var byLabel = own is null ? held * label : 0;
        var more = own is null ? 1 : 1 + (use * bare * (1 - shared) / (own.UsedGrams * (double)ball.Start.Ratio.MetresPerGram));
        var byScale = more * (double)load.Leftover.Weighing.BandGrams / Math.Sqrt(3) * (double)ball.Start.Ratio.MetresPerGram;
        return (held - load.Ends - (use * bare), Math.Sqrt((byUse * byUse) + (byParts * byParts) + (byLabel * byLabel) + (byScale * byScale)));
    }

    // All the last reading must still serve.
    private static Load LoadOf(BallInWork ball, MeasuredRate? own)
    {
        var left = ball.Uses.Where(u => ball.Now is null || !ball.DoneWhenWeighed.Contains(u.Part, StringComparer.Ordinal)).ToList();
        return new Load(ball.AsWeighed, [.. left.Select(u => u.Bare)], left.Sum(u => u.Ends)) { Rate = own };
    }
}
