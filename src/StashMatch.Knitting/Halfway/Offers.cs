using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Halfway;

/// <summary>What can still be done half-way where something falls short.</summary>
public static class Offers
{
    private const int MostOthers = 3;

    /// <summary>Offers for what is shortest of yarn, or else for the ball that is tightest, cheapest first; none where what is ahead is a yes.</summary>
    /// <param name="hat">The hat as planned.</param>
    /// <param name="ahead">The forecast of the same balls.</param>
    /// <param name="allowancePercent">The allowance it was made with, 0 to 100 %.</param>
    /// <param name="others">Leftovers the hat does not use and nobody else has promised.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<Offer> For(HatNeeds hat, Ahead ahead, decimal allowancePercent, IReadOnlyList<Leftover> others, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(ahead);
        ArgumentNullException.ThrowIfNull(others);
        if (ahead.Verdict == Verdict.Yes || WorstOf(hat, ahead) is not var (part, use, tight))
        {
            return [];
        }

        // A part that lacks yarn is knitted anew in one leftover; what it was given is free then.
        var offers = new List<Offer>();
        var still = tight is null ? [.. ahead.Lacking.Where(l => l.Part != part.Name)] : ahead.Lacking;
        BallInWork Relieved(BallInWork ball) => tight is null || ball == tight.Ball ? ball with { Uses = [.. ball.Uses.Where(u => u.Part != part.Name)] } : ball;
        Ahead With(Func<BallInWork, BallInWork> change, IReadOnlyList<PartLacking> lacking) =>
            Forecast.Of(hat.Usage, [.. ahead.Balls.Select(b => change(b.Ball))], allowancePercent, lacking);
        var stripeBalls = ahead.Balls.Where(b => b != tight && b.Ball.Uses.Any(u => PartNames.Read(u.Part) is { Kind: PartKind.Stripe }));
        if (stripeBalls.OrderByDescending(b => b.Spare).ThenBy(b => b.Ball.Start.Id, StringComparer.Ordinal).FirstOrDefault() is { } most
            && most.Ball.Uses.All(u => u.Part != use.Part))
        {
            var then = With(b => b == most.Ball ? b with { Uses = [.. b.Uses, use] } : Relieved(b), still);
            AddIfBetter(new Offer(OfferKind.BallOfTheHat, part.Name, most.Ball.Start.Id, null, then.Verdict, then.ChanceOfEnough) { Short = then.Short });
        }

        if (hat.Plan is { } plan && PlainRoundOf(plan, part) is > 0 and var stitches)
        {
            var bare = Math.Min(use.Bare, stitches * LoopLength.MetresPerStitch(plan.Gauge));
            var saves = Metres.Held((decimal)(hat.Usage.Factor * bare));
            var then = tight is null
                ? With(b => b, [.. still, .. ahead.Lacking.Where(l => l.Part == part.Name && l.Planned > saves).Select(l => l with { Planned = l.Planned - saves })])
                : With(b => b == tight.Ball ? b with { Uses = [.. b.Uses.Select(u => u == use ? u with { Bare = u.Bare - bare, Planned = u.Planned - saves } : u)] } : b, still);
            offers.Add(new Offer(OfferKind.DecreaseSooner, part.Name, null, Forecast.At(tight?.Rate ?? ahead.Usage.Factor / hat.Usage.Factor, saves), then.Verdict, then.ChanceOfEnough) { Short = then.Short });
        }
        else if (hat.Plan is null && part.Kind == PartKind.Crown)
        {
            offers.Add(new Offer(OfferKind.DecreaseSooner, part.Name, null, null, null, null));
        }

        if (others.Count > 0)
        {
            var rest = With(Relieved, still);
            foreach (var (leftover, verdict, chance) in Serving(hat, part, use, ahead.Usage, allowancePercent, others, cancel))
            {
                AddIfBetter(new Offer(OfferKind.OtherLeftover, part.Name, leftover, null, verdict < rest.Verdict ? verdict : rest.Verdict, Math.Min(chance, rest.ChanceOfEnough)) { Short = rest.Short });
            }
        }

        return offers;

        void AddIfBetter(Offer offer)
        {
            if (offer.Verdict > ahead.Verdict || (offer.Verdict == ahead.Verdict && (offer.ChanceOfEnough > ahead.ChanceOfEnough || offer.Short < ahead.Short)))
            {
                offers.Add(offer);
            }
        }
    }

    // The part to be helped, what it takes, and the ball it comes from; no ball where the part itself lacks yarn.
    private static (HatPart Part, PlannedUse Use, BallAhead? Ball)? WorstOf(HatNeeds hat, Ahead ahead)
    {
        var worst = ahead.Shortages is [var first, ..] ? first : null;
        var tight = worst is null ? ahead.Weakest : worst.Ball;
        if (hat.Parts.FirstOrDefault(p => p.Name == (worst?.Part?.Part ?? tight?.Parts[^1].Part)) is not { } part)
        {
            return null;
        }

        return tight is null
            ? (part, PlannedUse.Of(part, part.Need(hat.Usage), hat.Usage), null)
            : (part, tight.Ball.Uses.First(u => u.Part == part.Name), tight);
    }

    // Stitches of the longest plain round among, or just before, the decreases of a part; 0 where it has none.
    private static int PlainRoundOf(RowPlan plan, HatPart part) =>
        plan.Sections.FirstOrDefault(s => (s.Kind, s.Number) == (part.Kind == PartKind.Crown ? SectionKind.Crown : SectionKind.Stripe, part.Number)) is { } section
        && section.Runs.Any(r => r.Pattern == StitchPattern.Decrease)
            ? section.Runs.Where(r => r.Pattern == StitchPattern.Stockinette).Select(r => r.Stitches).DefaultIfEmpty(0).Max()
            : 0;

    // The matcher's choice for the part alone, then its next ones.
    private static IEnumerable<(string Leftover, Verdict Verdict, double Chance)> Serving(
        HatNeeds hat, HatPart part, PlannedUse use, Usage usage, decimal allowancePercent, IReadOnlyList<Leftover> others, CancellationToken cancel)
    {
        var alone = new PartAlone(hat with { Parts = [part with { BareMetres = use.Bare, EndsMetres = part.EndsMetres, Yarn = part.Name }], Usage = usage, Plan = null })
        {
            Name = hat.HatName,
            WeightClass = hat.WeightClass,
        };
        var never = new List<Pairing>();
        for (var i = 0; i < MostOthers; i++)
        {
            var question = new Question(alone, hat.Size, others) { Stripes = hat.Stripes, Arrangement = Arrangement.AsItFalls, AllowancePercent = allowancePercent, Never = [.. never] };
            if (Matcher.Best(question, out _, cancel, onlyIfCovered: true) is not { } best)
            {
                yield break;
            }

            var id = best.Plan.Puzzle.Leftover(best.Plan.BinOf[0]).Id;
            never.Add(new Pairing(part.Name, id));
            yield return (id, best.Verdict, best.Chance);
        }
    }

    // A hat of one part.
    private sealed record PartAlone(HatNeeds Needs) : Hat
    {
        public override IReadOnlyList<string> SizeNames => [Needs.Size];

        public override IReadOnlyList<int> CountsFor(string size) => size == Needs.Size ? [Needs.Stripes] : [];

        public override bool TryNeeds(string size, int stripes, [NotNullWhen(true)] out HatNeeds? needs, [NotNullWhen(false)] out CannotBeKnitted? why)
        {
            (needs, why) = (Needs, null);
            return true;
        }
    }
}
