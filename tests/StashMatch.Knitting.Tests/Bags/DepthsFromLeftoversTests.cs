using CsCheck;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Bags;

public sealed class DepthsFromLeftoversTests
{
    private static readonly string[] Hexes = ["#E2D3B2", "#E2D3B2", "#523063", "#2D7D46", "#B4362C"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static readonly HatDesign Panel = new()
    {
        Name = "small panel",
        Construction = Construction.SideToSide,
        Gauge = Gauge.Of(20, 20),
        WeightClass = WeightClass.SuperFine,
        Sizes = [new HatSize("X", Centimetres.From(15), Centimetres.From(10))],
    };

    private static readonly Gen<DepthQuestion> Small =
        from braids in Gen.Int[0, 2]
        from counts in Gen.Int[1, 3]
        from held in Gen.Int[1_500, 14_000].Array[1, 4]
        from colours in Gen.Int[0, Hexes.Length - 1].Array[4]
        from least in Gen.Int[2, 6]
        from most in Gen.Int[10, 30]
        from allowance in Gen.Int[0, 1]
        select new DepthQuestion(
            Panel with
            {
                Braids = braids == 0 ? new Braids() : new Braids(BraidPlaces.BetweenStripes, braids == 1 ? StrandSource.Neighbours : StrandSource.Scraps),
                StripeCounts = new StripeCounts(1, counts),
            },
            "X",
            [.. held.Select((mm, i) => Coloured($"l{i}", mm / 1000m, Hexes[colours[i]]))])
        {
            LeastRows = least,
            MostRows = most,
            AllowancePercent = allowance * 10,
        };

    [Fact]
    public void On_a_flat_body_no_other_depths_leave_less_as_looking_at_everything_says()
    {
        var (covered, proven) = (0, 0);
        Small.Sample(
            question =>
            {
                var plan = DepthsFromLeftovers.Find(question, Stop);
                var everything = Everything(question).ToList();
                if (plan.Why != Why.Covered)
                {
                    Assert.True(everything.Count == 0, $"{plan.Why}, but it can be done");
                    return;
                }

                CheckPlan(question, plan);
                var best = everything.Max();
                var found = ScoreOf(question, [.. plan.Stripes.Select(s => s.Leftover)], plan.Hat!);
                Assert.Contains(found, everything);
                Interlocked.Increment(ref covered);
                if (plan.ProvenBest)
                {
                    Assert.Equal(best, found);
                    Interlocked.Increment(ref proven);
                }
            },
            iter: 1_200);
        Assert.True(covered > 150, $"{covered} covered");
        Assert.True(proven * 10 > covered * 7, $"{proven} of {covered} proven");
    }

    [Fact]
    public void Where_all_colours_differ_a_flat_body_is_always_proven() => Small.Sample(
        question =>
        {
            var apart = question with { Leftovers = [.. question.Leftovers.Select((l, i) => Coloured(l.Id, l.Held.Value, Hexes[i + 1]))] };
            var plan = DepthsFromLeftovers.Find(apart, Stop);
            Assert.True(plan.Why != Why.Covered || plan.ProvenBest);
        },
        iter: 300);

    [Fact]
    public void Size_C_with_six_leftovers_keeps_its_188_rows_and_goes_through_the_matcher()
    {
        Leftover[] six = [.. new[] { 18m, 30, 26, 22, 40, 28 }.Select((m, i) => Coloured($"l{i}", m, $"#{i * 45:X2}{255 - (i * 40):X2}40"))];
        var plan = DepthsFromLeftovers.Find(new DepthQuestion(Samples.SideToSide, "C", six) { LeastRows = 8, MostRows = 60 }, Stop);
        Assert.Equal(Why.Covered, plan.Why);
        Assert.True(plan.ProvenBest);
        Assert.Equal(188 - 15, plan.Stripes.Sum(s => s.Part.Rows));
        Assert.Equal(188, plan.Hat!.PlanOf("C", 6).BodyRows);
        Assert.Equal(0, plan.Stripes[0].Part.Rows % 2);
        Assert.All(plan.Stripes.Skip(1), s => Assert.Equal(1, s.Part.Rows % 2));
        var question = new Question(plan.Hat!, "C", [.. six, Samples.OfMetres("brim", 90), Samples.OfMetres("scrap", 40), Samples.OfMetres("other scrap", 40)])
        {
            Stripes = 6,
            Locks = [.. plan.Stripes.Select(s => new Pairing(s.Part.Name, s.Leftover.Id))],
        };
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, Stop));
        Assert.NotEqual(Verdict.No, answer.Verdict);
        Assert.All(plan.Stripes, s => Assert.Equal(s.Need, answer.Parts.Single(p => p.Part.Name == s.Part.Name).From!.Metres));
    }

    [Fact]
    public void On_a_crown_the_rounds_of_the_size_stay_and_braids_stay_below_the_decreases() => Gen.Select(
        Gen.Bool, Gen.Int[0, 2], Gen.Bool, Gen.Int[12_000, 60_000].Array[2, 8], Gen.Int[0, 7]).Sample(
        (flat, braids, ownCrown, held, size) =>
        {
            var hat = Samples.BrimUp with
            {
                Construction = flat ? Construction.BrimUpFlat : Construction.BrimUpRound,
                Braids = new Braids(braids == 2 ? BraidPlaces.BesideBrimToo : braids == 1 ? BraidPlaces.BetweenStripes : BraidPlaces.None),
                Crown = new Crown(8, ownCrown ? CrownYarn.Own : CrownYarn.Stripes),
                StripeCounts = null,
            };
            var letter = hat.Sizes[size].Size;
            var question = new DepthQuestion(hat, letter, [.. held.Select((mm, i) => Coloured($"l{i}", mm / 1000m, $"#{i * 31:X2}{255 - (i * 29):X2}60"))]) { LeastRows = 3 };
            var plan = DepthsFromLeftovers.Find(question, Stop);
            if (plan.Why == Why.Covered)
            {
                CheckPlan(question, plan);
                Assert.Equal(hat.PlanOf(letter, plan.Stripes.Count).BodyRows, plan.Hat!.PlanOf(letter, plan.Stripes.Count).BodyRows);
            }
            else
            {
                Assert.NotEqual("", plan.Reason);
            }
        },
        iter: 600);

    [Fact]
    public void A_crowns_rows_are_the_best_for_the_order_of_colours()
    {
        var hat = Panel with { Construction = Construction.BrimUpRound, Crown = new Crown(4), Sizes = [new HatSize("X", Centimetres.From(12), Centimetres.From(8))], StripeCounts = null };
        Gen.Int[1_000, 9_000].Array[2, 3].Sample(
            held =>
            {
                var question = new DepthQuestion(hat, "X", [.. held.Select((mm, i) => Coloured($"l{i}", mm / 1000m, Hexes[i + 1]))]) { AllowancePercent = 0 };
                var plan = DepthsFromLeftovers.Find(question, Stop);
                if (plan.Why != Why.Covered || plan.Stripes.Count < held.Length)
                {
                    return;
                }

                var order = plan.Stripes.Select(s => s.Leftover).ToArray();
                var best = Rows(hat.PlanOf("X", held.Length).BodyRows, held.Length, 2, 100)
                    .Select(r => OwnRows.TryPut(hat, "X", r, out var own, out _) ? own : null).OfType<HatDesign>()
                    .Where(own => Fits(question, order, own))
                    .Max(own => ScoreOf(question, order, own));
                Assert.Equal(best, ScoreOf(question, order, plan.Hat!));
            },
            iter: 150);
    }

    [Fact]
    public void Too_little_yarn_is_said_with_what_is_missing_and_bounds_that_cannot_be_kept_as_well()
    {
        var bag = new[] { Coloured("a", 3, Hexes[1]), Coloured("b", 3, Hexes[2]) };
        var poor = DepthsFromLeftovers.Find(new DepthQuestion(Panel with { StripeCounts = new StripeCounts(2, 2) }, "X", bag), Stop);
        Assert.Equal(Why.Short, poor.Why);
        Assert.True(poor.Short.Millimetres > 0);
        Assert.Null(poor.Hat);
        var narrow = DepthsFromLeftovers.Find(
            new DepthQuestion(Panel with { StripeCounts = new StripeCounts(2, 2) }, "X", [.. bag.Select(l => Coloured(l.Id, 90, l.Colour!.Value.Hex))]) { MostRows = 6 }, Stop);
        Assert.Equal(Why.CannotBeKnitted, narrow.Why);
        var alike = DepthsFromLeftovers.Find(
            new DepthQuestion(Panel with { StripeCounts = new StripeCounts(2, 2) }, "X", [Coloured("a", 20, Hexes[0]), Coloured("b", 20, Hexes[0])]), Stop);
        Assert.Equal(Why.Colour, alike.Why);
    }

    [Fact]
    public void Forty_leftovers_at_the_finest_gauge_are_still_answered_and_the_hat_keeps_its_most_stripes()
    {
        var hat = Samples.SideToSide with { Gauge = Gauge.Of(28, 80), StripeCounts = new StripeCounts(4, 24) };
        Leftover[] forty = [.. Enumerable.Range(0, 40).Select(i => Coloured($"l{i:00}", 9 + (i * 7 % 13), $"#{i * 6:X2}{i * 97 % 256:X2}{i * 53 % 256:X2}"))];
        var plan = DepthsFromLeftovers.Find(new DepthQuestion(hat, "H", forty), Stop);
        Assert.Equal((Why.Covered, 24, 16), (plan.Why, plan.Stripes.Count, plan.NotIn.Count));
        Assert.ThrowsAny<OperationCanceledException>(() => DepthsFromLeftovers.Find(new DepthQuestion(hat, "H", forty), new CancellationToken(canceled: true)));
    }

    [Fact]
    public void Rows_that_do_not_fill_the_body_or_break_the_right_side_rule_are_refused_with_a_reason()
    {
        Assert.True(OwnRows.TryPut(Samples.SideToSide, "C", [40, 41, 41, 57], out var own, out _));
        Assert.Equal(["C"], own.SizeNames);
        Assert.False(OwnRows.TryPut(Samples.SideToSide, "D", [40, 41, 41, 57], out _, out var why));
        Assert.Contains("188 rows", why.Reason, StringComparison.Ordinal);
        Assert.Equal("depths", why.Field);
        Assert.False(OwnRows.TryPut(Samples.SideToSide, "C", [41, 41, 41, 56], out _, out why));
        Assert.Equal("depths", why.Field);
        Assert.False(OwnRows.TryPut(Samples.SideToSide, "C", [100, 81], out _, out why));
        Assert.Equal("stripes", why.Field);
    }

    private static Leftover Coloured(string id, decimal metres, string hex) =>
        Samples.OfMetres(id, metres) with { Colour = YarnColour.TryParse(hex, out var c, out _) ? c : null };

    private static void CheckPlan(DepthQuestion question, DepthPlan plan)
    {
        Assert.Equal(plan.Stripes.Sum(s => s.Left.Millimetres), plan.Left.Millimetres);
        Assert.Equal(question.Leftovers.Count, plan.Stripes.Select(s => s.Leftover).Concat(plan.NotIn).Distinct().Count());
        Assert.All(plan.Stripes, s => Assert.InRange(s.Part.Rows, question.LeastRows, question.MostRows));
        Assert.True(Fits(question, [.. plan.Stripes.Select(s => s.Leftover)], plan.Hat!));
    }

    private static bool Fits(DepthQuestion question, Leftover[] order, HatDesign hat)
    {
        var gives = Gives(hat, question.Size, order.Length);
        return order.Zip(gives).All(x => x.Second * (100 + (long)question.AllowancePercent) <= x.First.Held.Millimetres * 100)
            && order.Zip(order.Skip(1)).All(x => ColourDifference.Ciede2000(x.First.Colour!.Value.Lab, x.Second.Colour!.Value.Lab) >= 5);
    }

    // A stripe's own need, and where strands are not cut, those of the braids before (b) and after (a).
    private static long[] Gives(HatDesign hat, string size, int stripes)
    {
        var parts = hat.Needs(size, stripes).Parts.ToList();
        return [.. parts.Where(p => p.Kind == PartKind.Stripe).Select(stripe => stripe.Need(hat.Usage).Millimetres
            + (hat.Braids.Strands == StrandSource.Scraps ? 0 : new[] { (-1, 'b'), (1, 'a') }.Sum(n =>
            {
                var beside = n.Item1 > 0
                    ? parts.Skip(parts.IndexOf(stripe) + 1).TakeWhile(p => p.Kind == PartKind.Strand)
                    : parts.Take(parts.IndexOf(stripe)).Reverse().TakeWhile(p => p.Kind == PartKind.Strand);
                return beside.Where(p => p.Strand == n.Item2).Sum(p => p.Need(hat.Usage, withEnds: false).Millimetres);
            })))];
    }

    private static (int Stripes, long LeastHeld, long Tidy, long Even) ScoreOf(DepthQuestion question, Leftover[] order, HatDesign hat) => (
        order.Length,
        -order.Sum(l => l.Held.Millimetres),
        order.Zip(Gives(hat, question.Size, order.Length)).Sum(x =>
        {
            var spare = (x.First.Held.Millimetres * 100 / (100 + (long)question.AllowancePercent)) - x.Second;
            return spare >= 8_000 ? 0 : spare <= 2_000 ? 10_000 - spare : -10_000 - spare;
        }),
        -hat.PlanOf(question.Size, order.Length).Parts.Where(p => p.Kind == PartKind.Stripe).Sum(p => (long)p.Rows * p.Rows));

    private static IEnumerable<(int Stripes, long LeastHeld, long Tidy, long Even)> Everything(DepthQuestion question)
    {
        for (var stripes = 1; stripes <= question.Hat.StripeCounts!.Most; stripes++)
        {
            var hats = Rows(30 - ((stripes - 1) * (question.Hat.Braids.Where == BraidPlaces.None ? 0 : 3)), stripes, question.LeastRows, question.MostRows)
                .Select(r => OwnRows.TryPut(question.Hat, "X", r, out var own, out _) ? own : null).OfType<HatDesign>().ToList();
            foreach (var order in Orders([.. question.Leftovers], stripes))
            {
                foreach (var hat in hats.Where(h => Fits(question, order, h)))
                {
                    yield return ScoreOf(question, order, hat);
                }
            }
        }
    }

    private static IEnumerable<int[]> Rows(int all, int stripes, int least, int most) => stripes == 1
        ? (all >= least && all <= most ? [[all]] : [])
        : Enumerable.Range(least, Math.Max(0, Math.Min(most, all) - least + 1)).SelectMany(r => Rows(all - r, stripes - 1, least, most).Select(rest => (int[])[r, .. rest]));

    private static IEnumerable<Leftover[]> Orders(Leftover[] of, int count) => count == 0
        ? [[]]
        : of.SelectMany(l => Orders([.. of.Where(o => o != l)], count - 1).Select(rest => (Leftover[])[l, .. rest]));
}
