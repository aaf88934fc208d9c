using CsCheck;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Designing;

public sealed class SmallestKitTests
{
    private static readonly Gen<(KitQuestion Question, SkeinSize[] Sizes)> Small =
        from stripes in Gen.Int[1, 3]
        from braided in Gen.Bool
        from brim in Gen.Bool
        from needs in Gen.Int[2, 12].Array[10]
        from more in Gen.Int[0, 4]
        from held in Gen.Int[4, 20].Array[1, 3]
        from own in Gen.Bool
        from fibres in Gen.Int[0, 3].Array[3]
        select (Ask(stripes, braided, brim, needs, more, own ? Arrangement.OwnColours : Arrangement.AsItFalls), held.Select((h, i) => Skein(h, h + (h % 3)) with { Fibre = Fibre(fibres[i]) }).ToArray());

    [Fact]
    public void The_practice_hat_in_size_E_wants_60_grams_of_10_and_20_gram_skeins()
    {
        // M 47.52 yd of 50 on 20 g, each S 20.24 of 25 on 10 g; a 10 g skein never holds M.
        var question = new KitQuestion(Samples.Practice, ["A", "B", "C", "D", "E"], null, [Arrangement.OwnColours]);
        var label = new LabelRatio(1, MassUnit.Grams, 2.5m, LengthUnit.Yards, RatioSource.Printed);
        var smallest = SmallestKits.Find(question, [new(Grams.From(10), label), new(Grams.From(20), label)], TestContext.Current.CancellationToken)!;
        Assert.Equal((60m, true), (smallest.Total.Value, smallest.Proven));
        Assert.Equal([4, 1], smallest.Counts);
    }

    [Fact]
    public void A_part_longer_than_every_skein_is_named()
    {
        var question = new KitQuestion(Samples.Practice, ["C", "E"], null, [Arrangement.OwnColours]);
        var label = new LabelRatio(1, MassUnit.Grams, 2.5m, LengthUnit.Yards, RatioSource.Printed);
        var none = SmallestKits.Find(question, [new(Grams.From(10), label)], TestContext.Current.CancellationToken)!;
        Assert.False(none.IsThere);
        Assert.True(none.Proven);
        Assert.Equal("brim", none.TooLong!.Value.Part);
        Assert.InRange(none.TooLong.Value.Planned.Yards, 47.51m, 47.53m);
    }

    [Fact]
    public void Every_size_of_the_side_to_side_sample_in_four_to_seven_stripes_has_a_proven_smallest_kit_that_makes_them()
    {
        var question = new KitQuestion(Samples.SideToSide, Samples.SideToSide.SizeNames, [4, 5, 6, 7], [Arrangement.OwnColours]);
        var label = new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);
        SkeinSize[] sizes = [new(Grams.From(10), label), new(Grams.From(20), label), new(Grams.From(50), label)];
        var smallest = SmallestKits.Find(question, sizes, TestContext.Current.CancellationToken)!;
        Assert.True(smallest.Proven);
        var kit = new Kit("smallest", [.. smallest.Counts.Select((n, i) => new KitSkein($"s{i}", sizes[i].Grams, n, label) { Class = WeightClass.SuperFine }).Where(s => s.Count > 0)]);
        Assert.All(KitCheck.Of(question, [kit], TestContext.Current.CancellationToken)[0], c => Assert.True(c.Passes, $"{c}"));
        Assert.Equal(smallest.Total, kit.Total);
    }

    [Theory]
    [InlineData("100% wool", 23, BrimYarn.KeepsShape)]
    [InlineData("100% wool", 9, BrimYarn.Stretches)]
    [InlineData("", 23, BrimYarn.Unknown)]
    public void A_brim_is_knitted_from_the_yarn_that_keeps_its_shape_best_of_those_long_enough(string fibre, int metres, BrimYarn expected)
    {
        // A brim and two stripes of 10 m each, 11 m with the spare. Two skeins of alpaca, 20 g, hold all three and would be the lightest, were
        // it not for the brim: that goes on the other skein, 11 g, whose 23 m hold a stripe too, 21 g in all.
        var hat = new PrintedHat
        {
            Name = "drawn",
            WeightClass = WeightClass.Light,
            AllowanceIncluded = false,
            Sizes = [new("X", null, [new("brim", "M", 10), new("stripe 1", "S1", 10), new("stripe 2", "S2", 10)])],
        };
        SkeinSize[] sizes = [Skein(metres, 11) with { Fibre = Read(fibre) }, Skein(22, 10) with { Fibre = Read("100% alpaca") }];
        var smallest = SmallestKits.Find(new KitQuestion(hat, ["X"], null, [Arrangement.AsItFalls]), sizes, TestContext.Current.CancellationToken)!;
        Assert.Equal((expected, true), (smallest.Brim!.Value, smallest.Proven));
        Assert.Equal(expected == BrimYarn.Stretches ? [0, 2] : [1, 1], smallest.Counts);
    }

    [Fact]
    public void Without_a_brim_nothing_is_said_of_one()
    {
        var question = Ask(2, braided: false, brim: false, [5, 5], 0, Arrangement.AsItFalls);
        Assert.Null(SmallestKits.Find(question, [Skein(20, 20)], TestContext.Current.CancellationToken)!.Brim);
    }

    [Fact]
    public void On_small_cases_it_is_what_looking_at_every_kit_says() => Small.Sample(
        drawn =>
        {
            var smallest = SmallestKits.Find(drawn.Question, drawn.Sizes, TestContext.Current.CancellationToken)!;
            var lightest = Lightest(drawn.Question, drawn.Sizes);
            Assert.True(smallest.Proven);
            Assert.True(!smallest.IsThere || smallest.Brim.HasValue == drawn.Question.Hat.Needs("X", drawn.Question.Hat.CountsFor("X")[0]).Parts.Any(p => p.Kind == PartKind.Brim));
            Assert.Equal(lightest, smallest.IsThere ? smallest.Total.Milligrams : null);
        },
        iter: 400);

    // Every kit of up to as many skeins as there are parts, and one for a brim that only one of the sizes can have; every way to share it out.
    private static long? Lightest(KitQuestion question, SkeinSize[] sizes)
    {
        var needs = question.Sizes.Select(s => question.Hat.Needs(s, question.Hat.CountsFor(s)[0])).ToList();
        var most = needs[0].Parts.Count + 1;
        long? best = null;
        foreach (var kit in Counts(sizes.Length, most))
        {
            var grams = kit.Select((n, t) => n * sizes[t].Grams.Milligrams).Sum();
            if (best is null || grams < best)
            {
                var held = kit.SelectMany((n, t) => Enumerable.Repeat(sizes[t], n)).ToArray();
                best = needs.TrueForAll(n => CanShare(n, held, WidthFor(n, sizes, question), question)) ? grams : best;
            }
        }

        return best;
    }

    private static IEnumerable<int[]> Counts(int types, int most) => types == 0
        ? [[]]
        : Enumerable.Range(0, most + 1).SelectMany(n => Counts(types - 1, most - n).Select(rest => rest.Prepend(n).ToArray()));

    // How wide the brim set must be for one skein to hold the brim.
    private static int WidthFor(HatNeeds hat, SkeinSize[] sizes, KitQuestion question) => hat.Parts.Where(p => p.Kind == PartKind.Brim)
        .Select(p => sizes.Where(s => p.Need(hat.Usage).Millimetres * (100 + question.AllowancePercent) <= s.Held.Millimetres * 100m).Select(WidthOf).DefaultIfEmpty(3).Min())
        .DefaultIfEmpty(3).Max();

    private static int WidthOf(SkeinSize size) => BrimRule.Rate(size.Fibre, false, YarnMake.Plied) switch
    {
        { FibreUnknown: true } => 2,
        { Index: >= 80 } => 0,
        { Index: >= 60 } => 1,
        _ => 3,
    };

    private static FibreBlend Fibre(int which) => Read(which switch { 0 => "100% wool", 1 => "100% acrylic", 2 => "", _ => "100% alpaca" });

    private static FibreBlend Read(string text) => FibreBlend.TryParse(text, out var blend, out var message) ? blend : throw new ArgumentException(message, nameof(text));

    private static bool CanShare(HatNeeds hat, SkeinSize[] skeins, int width, KitQuestion question)
    {
        var held = skeins.Select(s => s.Held.Millimetres).ToArray();
        var parts = hat.Parts;
        var on = new int[parts.Count];
        bool Place(int i)
        {
            if (i == parts.Count)
            {
                return true;
            }

            for (var bin = 0; bin < held.Length; bin++)
            {
                on[i] = bin;
                var load = Enumerable.Range(0, i + 1).Where(k => on[k] == bin).Sum(k => parts[k].Need(hat.Usage).Millimetres);
                var fits = load * (100 + question.AllowancePercent) <= held[bin] * 100m && (parts[i].Kind != PartKind.Brim || WidthOf(skeins[bin]) <= width);
                for (var k = 0; k < i && fits; k++)
                {
                    fits = on[k] != bin || MayShare(parts[k], parts[i], question.Arrangements[0] == Arrangement.OwnColours);
                }

                if (fits && Place(i + 1))
                {
                    return true;
                }
            }

            return false;
        }

        return Place(0);
    }

    private static bool MayShare(HatPart a, HatPart b, bool own)
    {
        bool Is(PartKind one, PartKind other) => (a.Kind == one && b.Kind == other) || (a.Kind == other && b.Kind == one);
        return !(Is(PartKind.Stripe, PartKind.Stripe) && (own || Math.Abs(a.Number - b.Number) == 1))
            && !(own && Is(PartKind.Stripe, PartKind.Brim))
            && !(Is(PartKind.Strand, PartKind.Strand) && a.Number == b.Number);
    }

    private static SkeinSize Skein(int metres, int grams) =>
        new(Grams.From(grams), new LabelRatio(grams, MassUnit.Grams, metres, LengthUnit.Metres, RatioSource.Printed));

    private static KitQuestion Ask(int stripes, bool braided, bool brim, int[] needs, int more, Arrangement arrangement)
    {
        PrintedSize Of(string size, int extra)
        {
            var lines = new List<PrintedLine>();
            var next = 0;
            void Add(string part, decimal share) => lines.Add(new PrintedLine(part, $"Y{lines.Count}", (needs[next++ % needs.Length] + extra) * share));
            if (brim)
            {
                Add("brim", 1);
            }

            for (var i = 1; i <= stripes; i++)
            {
                Add($"stripe {i}", 1);
            }

            for (var i = 1; i < stripes && braided; i++)
            {
                Add($"braid {i} strand a", 0.3m);
                Add($"braid {i} strand b", 0.3m);
            }

            return new PrintedSize(size, null, lines);
        }

        var hat = new PrintedHat { Name = "drawn", WeightClass = WeightClass.Light, AllowanceIncluded = false, Sizes = [Of("X", 0), Of("Y", more)] };
        return new KitQuestion(hat, ["X", "Y"], null, [arrangement]);
    }
}
