using CsCheck;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

public sealed class RepairTests
{
    private static readonly Gen<Question> Disappointing =
        from metres in Gen.Int[3_000, 26_000].Array[5, 11]
        from brim in Gen.Int[70_000, 130_000]
        from colours in Gen.Byte.Array[12, 12]
        from size in Gen.Int[0, 7].Select(i => "ABCDEFGH"[i].ToString())
        from stripes in Gen.Int[3, 7].Select(n => n == 3 ? default(int?) : n)
        from brimUp in Gen.Bool
        from neighbours in Gen.Bool
        from arrangement in Gen.Enum<Arrangement>()
        select new Question(
            (brimUp ? Samples.BrimUp : Samples.SideToSide) with
            {
                Braids = new Braids(BraidPlaces.BetweenStripes, neighbours ? StrandSource.Neighbours : StrandSource.Scraps),
            },
            size,
            [
                Samples.OfMetres("brim", brim / 1000m) with { Colour = YarnColour.FromRgb(230, 225, 210) },
                .. metres.Select((mm, i) => Samples.OfMetres($"l{i:00}", mm / 1000m) with { Colour = YarnColour.FromRgb(colours[i], colours[11 - i], (byte)(25 * i)) }),
            ])
        {
            Stripes = stripes,
            Arrangement = arrangement,
        };

    [Fact]
    public void Asking_as_a_repair_says_gives_its_verdict() => Disappointing.Sample(
        question =>
        {
            var answer = Ask(question);
            foreach (var repair in answer.Repairs.Where(r => r.Code is not (RepairCode.Buy or RepairCode.WeighSwatch)))
            {
                // A repair of one part speaks of the count the answer has; one of the whole hat leaves an open count open.
                var ofAPart = repair.Code is RepairCode.MoveOne or RepairCode.LeaveOut or RepairCode.FewerRows or RepairCode.RePairBraid or RepairCode.DropBraid or RepairCode.JoinNearMatch;
                var mended = Ask(Applied(ofAPart ? question with { Stripes = answer.Hat.Stripes } : question, repair));
                Assert.True(repair.Verdict == mended.Verdict, $"{repair.Code}: {repair.Verdict}, but {mended.Verdict}");
                Assert.Equal(mended.Hat.Stripes, repair.Stripes ?? answer.Hat.Stripes);
            }
        },
        iter: 150);

    [Fact]
    public void A_repair_is_better_than_the_answer_it_mends() => Disappointing.Sample(
        question =>
        {
            var answer = Ask(question);
            Assert.All(answer.Repairs, r => Assert.True(r.Verdict > answer.Verdict || (r.Verdict == Verdict.OnlyJust && r.ChanceOfEnough > answer.ChanceOfEnough)));
            Assert.True(answer.Verdict != Verdict.Yes || answer.Repairs.Count == 0);
        },
        iter: 150);

    [Fact]
    public void A_crumb_that_finishes_neatly_on_a_coarse_scale_may_be_left_in_the_bag()
    {
        var hat = Samples.SideToSide with { Brim = null, Braids = new Braids(BraidPlaces.None, StrandSource.Scraps, 2) };
        var needs = hat.Needs("A", 4);
        var stripes = needs.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Need(hat.Usage).Value).ToList();
        var seam = needs.Parts.Single(p => p.Kind == PartKind.Seam).Need(hat.Usage).Value;
        var crumb = Samples.OfMetres("crumb", Math.Round(seam * 1.26m, 3)) with { Colour = YarnColour.FromRgb(250, 250, 250) };
        Leftover[] bag =
        [
            Coloured("a", stripes.Max() * 2m, 30, 60, 120), Coloured("b", stripes.Max() * 2m, 200, 40, 40), Coloured("c", stripes.Max() * 2m, 220, 200, 60), Coloured("d", stripes.Max() * 2m, 40, 140, 60),
            crumb with { Weighing = new Weighing(crumb.Weighing.Net, default, Grams.From(1)) },
        ];
        var answer = Ask(new Question(hat, "A", bag) { Stripes = 4, Arrangement = Arrangement.AsItFalls });
        Assert.Equal(("crumb", Verdict.OnlyJust), (answer.WeakestLeftover, answer.Verdict));
        Assert.Equal(("crumb", Verdict.Yes), answer.Repairs.Where(r => r.Code == RepairCode.LeaveOut).Select(r => (r.Leftover, r.Verdict)).Single());
    }

    [Fact]
    public void What_is_short_in_many_strands_is_bought_in_few_balls()
    {
        var hat = Samples.SideToSide with { Brim = null };
        var stripes = hat.Needs("C", 8).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Need(hat.Usage).Value).ToList();
        var answer = Ask(new Question(hat, "C", [.. stripes.Select((s, i) => Coloured($"s{i}", s * 1.05m, (byte)(30 * i), (byte)(255 - (30 * i)), (byte)(i % 2 * 200)))]) { Stripes = 8, AllowancePercent = 0 });
        Assert.Equal(Verdict.No, answer.Verdict);
        Assert.True(answer.Parts.Count(p => p.Short.Millimetres > 0) > 5);
        var buy = Assert.Single(answer.Repairs, r => r.Code == RepairCode.Buy);
        Assert.Equal(2, buy.BuyBalls);
    }

    [Fact]
    public void An_open_count_where_nothing_is_enough_is_the_one_that_is_least_short()
    {
        var answer = Ask(new Question(Samples.SideToSide with { Brim = null }, "C", [Coloured("a", 30, 30, 60, 120), Coloured("b", 30, 200, 40, 40)]));
        Assert.Equal(Verdict.No, answer.Verdict);
        var others = Enumerable.Range(4, 9).Select(n => Ask(new Question(Samples.SideToSide with { Brim = null }, "C", [Coloured("a", 30, 30, 60, 120), Coloured("b", 30, 200, 40, 40)]) { Stripes = n }));
        Assert.Equal(others.Min(o => o.Short), answer.Short);
    }

    [Fact]
    public void A_stripe_a_little_too_long_for_its_leftover_gives_rows_to_the_one_with_most_to_spare()
    {
        var hat = Samples.SideToSide with { Brim = null };
        var stripes = hat.Needs("C", 4).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Need(hat.Usage).Value).ToList();
        var stripe = stripes.Max();
        Leftover[] bag =
        [
            Coloured("short", (stripes.Min() * 1.1m) - 1, 30, 60, 120), Coloured("a", stripe * 1.6m, 200, 40, 40), Coloured("b", stripe * 1.4m, 220, 200, 60),
            Coloured("c", stripe * 1.4m, 40, 140, 60), Coloured("scraps", 14, 240, 240, 240), Coloured("more scraps", 14, 20, 20, 20), Coloured("thread", 12, 120, 20, 160),
        ];
        var answer = Ask(new Question(hat, "C", bag) { Stripes = 4 });
        Assert.Equal(Verdict.OnlyJust, answer.Verdict);
        var repair = Assert.Single(answer.Repairs, r => r.Code == RepairCode.FewerRows);
        Assert.Equal(Verdict.Yes, repair.Verdict);
        Assert.Equal(answer.Parts.Where(p => p.Part.Kind == PartKind.Stripe).Sum(p => p.Part.Rows), repair.Rows!.Sum());
        Assert.True(repair.RowsMoved is 2 or 4);
    }

    [Fact]
    public void Where_strands_alone_lack_yarn_a_braid_may_be_left_out()
    {
        var hat = Samples.SideToSide with { Brim = null };
        var without = hat with { Braids = hat.Braids with { Without = [2] } };
        var strand = hat.Needs("C", 4).Parts.First(p => p.Kind == PartKind.Strand).Need(hat.Usage).Value;
        var seam = hat.Needs("C", 4).Parts.Single(p => p.Kind == PartKind.Seam).Need(hat.Usage).Value;
        var stripes = without.Needs("C", 4).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Need(hat.Usage).Value).ToList();

        // Room for the stripes once a braid is gone, but for no strand; four strands' worth of scraps for six.
        decimal Planned(decimal need) => (need * 1.25m) + 0.05m;
        Leftover[] bag =
        [
            Coloured("a", Planned(stripes[0]), 30, 60, 120), Coloured("b", Planned(stripes[1]), 200, 40, 40), Coloured("c", Planned(stripes[2]), 220, 200, 60),
            Coloured("d", Planned(stripes[3]), 40, 140, 60), Coloured("e", Planned(2 * strand), 240, 240, 240), Coloured("f", Planned(2 * strand), 10, 10, 10),
            Coloured("g", Planned(seam), 120, 20, 160),
        ];
        var answer = Ask(new Question(hat, "C", bag) { Stripes = 4, AllowancePercent = 25 });
        Assert.Equal((Verdict.OnlyJust, Why.Allowance), (answer.Verdict, answer.Why));
        var repair = Assert.Single(answer.Repairs, r => r.Code == RepairCode.DropBraid);
        Assert.Equal(("braid 2", Verdict.Yes), (repair.Part, repair.Verdict));
    }

    [Fact]
    public void A_braid_left_out_gives_its_rows_to_the_stripes_and_colours_still_change_on_the_right_side()
    {
        var all = Samples.SideToSide.PlanOf("C", 6);
        var without = (Samples.SideToSide with { Braids = Samples.SideToSide.Braids with { Without = [2] } }).PlanOf("C", 6);
        Assert.Equal((all.BodyRows, 5, 4), (without.BodyRows, all.Braids, without.Braids));
        Assert.DoesNotContain(without.Parts, p => p.Name.StartsWith("braid 2", StringComparison.Ordinal));
        var rows = without.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows).ToList();
        Assert.Equal(188, rows.Sum() + (4 * 3));
        Assert.Equal([false, true, false, true, true, true], rows.Select(r => r % 2 == 1));
    }

    private static Leftover Coloured(string id, decimal metres, byte red, byte green, byte blue) =>
        Samples.OfMetres(id, Math.Round(metres, 3)) with { Colour = YarnColour.FromRgb(red, green, blue) };

    private static Question Applied(Question question, Repair repair)
    {
        var hat = question.Hat as HatDesign;
        Question Keep(string part, string leftover) => question with { Locks = [.. question.Locks.Where(l => l.Part != part), new(part, leftover)] };
        return repair.Code switch
        {
            RepairCode.MoveOne => Keep(repair.Part!, repair.Leftover!),
            RepairCode.FewerRows => question with { Hat = OwnRows.TryPut(hat!, question.Size, repair.Rows!, out var own, out _) ? own : hat! },
            RepairCode.RePairBraid => question with { Apart = [$"{repair.Part} strand a", $"{repair.Part} strand b"] },
            RepairCode.DropBraid => question with { Hat = hat! with { Braids = hat.Braids with { Without = [int.Parse(repair.Part![6..], System.Globalization.CultureInfo.InvariantCulture)] } } },
            RepairCode.FewerStripes => question with { Stripes = repair.Stripes },
            RepairCode.AnotherArrangement => question with { Arrangement = repair.Arrangement!.Value, InTurn = repair.InTurn ?? 3 },
            RepairCode.LeaveOut => question with { Leftovers = [.. question.Leftovers.Where(l => l.Id != repair.Leftover)] },
            RepairCode.Blend => question with { Blend = true },
            RepairCode.JoinNearMatch => question with { Leftovers = [.. question.Leftovers.Where(l => l.Id != repair.Leftover && l.Id != repair.OtherLeftover), Joined.AsOne("joined", [.. question.Leftovers.Where(l => l.Id == repair.Leftover), .. question.Leftovers.Where(l => l.Id == repair.OtherLeftover)])] },
            RepairCode.UnfoldBrim => question with { Hat = hat! with { Brim = hat.Brim! with { Folded = false } } },
            RepairCode.ShallowerBrim => question with { Hat = hat! with { Brim = hat.Brim! with { Depth = repair.BrimDepth!.Value } } },
            RepairCode.ThriftierBindOff => question with { Hat = hat! with { Brim = hat.Brim! with { BindOff = repair.BindOff!.Value } } },
            RepairCode.SmallerSize => question with { Size = repair.Size! },
            _ => throw new InvalidOperationException($"{repair.Code}"),
        };
    }

    private static Answer Ask(Question question)
    {
        Assert.True(Matcher.TryAnswer(question, out var answer, out _, TestContext.Current.CancellationToken));
        return answer;
    }
}
