using CsCheck;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Bags;

public sealed class WholeBagTests
{
    private static readonly string[] Hexes = ["#E2D3B2", "#E2D3B2", "#523063", "#26374F", "#B4362C"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static readonly Gen<(PrintedHat Hat, Leftover[] Bag, int Allowance)> Tiny =
        from needs in Gen.Int[3, 9].Array[2, 3]
        from brim in Gen.Bool
        from held in Gen.Int[2, 26].Array[1, 3]
        from colours in Gen.Int[0, Hexes.Length - 1].Array[3]
        from allowance in Gen.Int[0, 1].Select(a => a * 10)
        select (Small(needs, brim), held.Select((m, i) => Coloured(Samples.OfMetres($"l{i}", m), Hexes[colours[i]])).ToArray(), allowance);

    private static readonly Gen<Leftover[]> Bags =
        from metres in Gen.Int[4_000, 160_000].Array[0, 24]
        from red in Gen.Byte.Array[24]
        select metres.Select((mm, i) => Samples.OfMetres($"l{i:00}", mm / 1000m) with { Colour = YarnColour.FromRgb(red[i], (byte)(77 * i % 256), 120) }).ToArray();

    [Fact]
    public void At_least_is_no_more_and_at_most_no_less_than_looking_at_everything_finds() => Tiny.Sample(
        tiny =>
        {
            var answer = WholeBag.Of(tiny.Hat, ["X"], tiny.Bag, tiny.Allowance, Stop);
            var bears = tiny.Bag.Select(l => Math.Min(l.Held.Millimetres * 100 / (100 + tiny.Allowance), SureFor(l))).ToArray();
            var most = MostHats(tiny.Hat, tiny.Bag, bears);
            Assert.InRange(answer.AtLeast, 0, most);
            Assert.True(answer.AtMost >= most, $"at most {answer.AtMost}, but {most} can be made");
        },
        iter: 600);

    [Fact]
    public void The_hats_together_take_no_more_than_is_held_with_every_allowance_set_aside() => Gen.Select(Bags, Gen.Bool, Gen.Int[0, 1]).Sample(
        (bag, brimUp, tenth) =>
        {
            var hat = brimUp ? Samples.BrimUp : Samples.SideToSide;
            var answer = WholeBag.Of(hat, ["A", "B", "F"], bag, tenth * 10, Stop);
            Assert.Equal(answer.AtLeast, answer.Hats.Count);
            Assert.True(answer.AtLeast <= answer.AtMost);
            Assert.All(answer.Hats, h => Assert.All(h.Parts, p => Assert.Equal(p.Need, p.From!.Metres)));
            Assert.All(answer.Hats, h => Assert.Equal(hat.Needs(h.Size, h.Stripes).Parts.Select(p => p.Name), h.Parts.Select(p => p.Part.Name)));
            foreach (var l in bag)
            {
                var taken = answer.Hats.Sum(h => h.Parts.Where(p => p.From!.Leftover == l.Id).Sum(p => p.Need.Millimetres));
                Assert.True(taken * (10 + tenth) <= l.Held.Millimetres * 10, $"{l.Id} holds {l.Held}, {taken} mm are taken");
            }
        },
        iter: 60);

    [Fact]
    public void Another_leftover_never_lowers_at_most() => Gen.Select(Bags, Gen.Int[2, 160]).Sample(
        (bag, metres) =>
        {
            int AtMost(IReadOnlyList<Leftover> of) => WholeBag.Of(Samples.SideToSide with { StripeCounts = new StripeCounts(4, 6) }, ["A", "C"], of, 10, Stop).AtMost;
            Assert.True(AtMost([.. bag, Samples.OfMetres("zz", metres)]) >= AtMost(bag));
        },
        iter: 60);

    [Fact]
    public void A_bag_that_fits_two_hats_exactly_makes_two_and_no_more_and_with_a_spare_one()
    {
        var hat = Small([10, 6, 6], brim: true);

        // 6 % for the print, 2 % for the label, 3 % for the leftover, 1.5 % for damp: 9 times in 10 a printed length lasts with 9.5 % over.
        Leftover[] bag = [Coloured(Samples.OfMetres("brims", 22.2m), "#E2D3B2"), Coloured(Samples.OfMetres("red", 13.4m), "#B4362C"), Coloured(Samples.OfMetres("blue", 13.4m), "#26374F")];
        var two = WholeBag.Of(hat, ["X"], bag, 0, Stop);
        Assert.Equal((2, 2), (two.AtLeast, two.AtMost));
        Assert.All(two.Hats, h => Assert.Equal(["brims", "red", "blue"], h.Parts.Select(p => p.From!.Leftover).OrderBy(l => Array.FindIndex(bag, b => b.Id == l))));
        var one = WholeBag.Of(hat, ["X"], bag, 12, Stop);
        Assert.Equal((1, 1), (one.AtLeast, one.AtMost));
    }

    [Fact]
    public void Why_a_bag_makes_no_more_is_counted_one_ball_alone_is_long_enough_for_a_brim()
    {
        var hat = Small([10, 6, 6], brim: true);
        Leftover[] bag =
        [
            Coloured(Samples.OfMetres("long", 15m), "#E2D3B2"), Coloured(Samples.OfMetres("red", 9m), "#B4362C"), Coloured(Samples.OfMetres("blue", 9m), "#26374F"),
            Coloured(Samples.OfMetres("green", 9m), "#5B7A3A"), Coloured(Samples.OfMetres("plum", 9m), "#523063"),
        ];
        var answer = WholeBag.Of(hat, ["X"], bag, 0, Stop);
        Assert.Equal((1, 1), (answer.AtLeast, answer.AtMost));
        Assert.Equal(new BagLimit(PartKind.Brim, Metres.Needed(10), 1, true), answer.Limit);
    }

    [Fact]
    public void From_nothing_comes_nothing_and_of_another_thickness_neither()
    {
        Assert.Equal((0, 0), Both(WholeBag.Of(Samples.SideToSide, ["A"], [], 10, Stop)));
        Assert.Equal((0, 0), Both(WholeBag.Of(Samples.SideToSide, ["A"], [Samples.OfMetres("thick", 900, WeightClass.Bulky)], 10, Stop)));
        static (int, int) Both(WholeBagAnswer a) => (a.AtLeast, a.AtMost);
    }

    [Fact]
    public void A_large_bag_is_laid_out_in_hands_and_most_of_it_goes_in()
    {
        Leftover[] bag = [.. Enumerable.Range(0, 300).Select(i => Coloured(Samples.OfMetres($"l{i:000}", 20 + (i * 37 % 70)), $"#{i * 7 % 256:X2}{i * 29 % 256:X2}{i * 53 % 256:X2}"))];
        var answer = WholeBag.Of(Samples.BrimUp, ["A"], bag, 10, Stop);
        Assert.True(answer.AtLeast * 10 >= answer.AtMost * 7, $"at least {answer.AtLeast}, at most {answer.AtMost}");
        Assert.Equal(answer.AtLeast, WholeBag.Of(Samples.BrimUp, ["A"], [.. bag.Reverse()], 10, Stop).AtLeast);
    }

    // The longest load that lasts 9 times in 10, to the millimetre, by trying.
    private static long SureFor(Leftover leftover)
    {
        var (lasts, fails) = (0L, leftover.Held.Millimetres + 1);
        while (fails - lasts > 1)
        {
            var middle = (lasts + fails) / 2;
            (lasts, fails) = Sureness.Of(leftover, Metres.FromMillimetres(middle), Usage.PrintedBare) >= 0.9 ? (middle, fails) : (lasts, middle);
        }

        return lasts;
    }

    private static Leftover Coloured(Leftover leftover, string hex) => leftover with { Colour = YarnColour.TryParse(hex, out var c, out _) ? c : null };

    private static PrintedHat Small(int[] needs, bool brim) => new()
    {
        Name = "small",
        WeightClass = WeightClass.SuperFine,
        AllowanceIncluded = false,
        Sizes = [new PrintedSize("X", null, [.. needs.Select((n, i) => new PrintedLine(brim && i == 0 ? "brim" : $"stripe {(brim ? i : i + 1)}", $"Y{i}", n))])],
    };

    // As it falls allows most: stripes next door differ, nothing else.
    private static int MostHats(PrintedHat hat, Leftover[] bag, long[] bears)
    {
        var parts = hat.Needs("X", hat.CountsFor("X")[0]).Parts;
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        return From(bears);

        int From(long[] free)
        {
            var key = string.Join(' ', free);
            if (!known.TryGetValue(key, out var most))
            {
                most = 0;
                Place(0, free, new int[parts.Count], after => most = Math.Max(most, 1 + From(after)));
                known[key] = most;
            }

            return most;
        }

        void Place(int at, long[] free, int[] from, Action<long[]> done)
        {
            if (at == parts.Count)
            {
                done([.. free]);
                return;
            }

            var need = parts[at].Need(Usage.PrintedBare).Millimetres;
            for (var b = 0; b < free.Length; b++)
            {
                var alike = at > 0 && parts[at - 1].Kind == PartKind.Stripe && parts[at].Kind == PartKind.Stripe
                    && (from[at - 1] == b || ColourDifference.Ciede2000(bag[from[at - 1]].Colour!.Value.Lab, bag[b].Colour!.Value.Lab) < 5);
                if (free[b] >= need && !alike)
                {
                    free[b] -= need;
                    from[at] = b;
                    Place(at + 1, free, from, done);
                    free[b] += need;
                }
            }
        }
    }
}
