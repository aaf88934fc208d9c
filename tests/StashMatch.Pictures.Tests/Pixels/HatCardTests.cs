using System.Globalization;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class HatCardTests
{
    [Fact]
    public void A_card_is_as_wide_as_a_card_and_no_taller_than_its_parts_need()
    {
        var few = Card(Samples.SideToSide.PlanOf("F", 4));
        var many = Card((Samples.SideToSide with { StripeCounts = new StripeCounts(1, 24) }).PlanOf("F", 24));
        using var small = Image.Load<Rgb24>(few);
        using var large = Image.Load<Rgb24>(many);
        Assert.Equal((HatCard.Width, HatCard.Width), (small.Width, large.Width));
        Assert.InRange(small.Height, 700, 1500);
        Assert.InRange(large.Height, small.Height, 2200);
        Assert.InRange(many.Length, 20_000, 1_500_000);
    }

    [Fact]
    public void Every_colour_is_on_it_in_the_drawing_and_in_the_table()
    {
        var plan = Samples.SideToSide.PlanOf("F", 6);
        var with = Count(Draw(plan, Paints.For(plan.Parts)), 0x5B, 0x7A, 0x3A);
        var paint = Paints.For(plan.Parts);
        foreach (var part in paint.Where(p => p.Value.Hex == "#5B7A3A").Select(p => p.Key).ToList())
        {
            paint.Remove(part);
        }

        Assert.True(with > 3000, $"{with}");
        Assert.Equal(0, Count(Draw(plan, paint), 0x5B, 0x7A, 0x3A));
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(1, 1)]
    [InlineData(0, 2)]
    public void The_thread_under_the_word_is_whole_or_broken(int thread, int pieces)
    {
        var plan = Samples.SideToSide.PlanOf("F", 4);
        var canvas = HatCard.Draw(Words(plan) with { Thread = thread, Verdict = "so" }, plan, plan.Parts, Paints.For([]));
        var (runs, on) = (0, false);
        for (var x = 0; x < canvas.Width; x++)
        {
            var madder = Enumerable.Range(140, 40).Any(y => canvas[x, y] is { Red: > 120, Green: < 130, Blue: < 130 } c && c.Red - c.Green > 40);
            runs += madder && !on ? 1 : 0;
            on = madder;
        }

        Assert.Equal(pieces, runs);
    }

    [Fact]
    public void Hostile_words_and_hundreds_of_parts_leave_it_bounded()
    {
        var rows = Enumerable.Range(1, 5000).Select(i => new CardRow($"part {i}", i, new string('\ud800', 300), "–", "1 m", "1 yd")).ToList();
        var words = new CardWords(new string('w', 5000), "no", 0, [string.Concat(Enumerable.Repeat("long ", 2000)), new string('x', 4000)], rows);
        using var picture = Image.Load<Rgb24>(HatCard.Png(words, null, [], Paints.For([])));
        Assert.InRange(picture.Height, 700, 3000);
    }

    [Fact]
    public void A_hat_known_by_its_printed_lengths_has_a_card_too()
    {
        var needs = Samples.Practice.Needs("C", 4);
        using var picture = Image.Load<Rgb24>(HatCard.Png(
            new("Practice hat", "yes", 2, [], [.. needs.Parts.Select((p, i) => new CardRow(p.Name, i + 1, p.Name, "–", "1 m", "1 yd"))]), null, needs.Parts, Paints.For(needs.Parts)));
        Assert.Equal(HatCard.Width, picture.Width);
    }

    [Fact]
    public void The_same_card_comes_out_the_same() =>
        Assert.Equal(Card(Samples.BrimUp.PlanOf("C", 6)), Card(Samples.BrimUp.PlanOf("C", 6)));

    private static CardWords Words(RowPlan plan) => new(
        "Side to side, size F", "only just", 1, ["Everything is covered."],
        [.. plan.Parts.Select((p, i) => new CardRow(p.Name, i + 1, "Moss", p.Rows.ToString(CultureInfo.InvariantCulture), "12.3 m", "13.5 yd"))]);

    private static Canvas Draw(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint) => HatCard.Draw(Words(plan), plan, plan.Parts, paint);

    private static byte[] Card(RowPlan plan) => HatCard.Png(Words(plan), plan, plan.Parts, Paints.For(plan.Parts));

    private static int Count(Canvas canvas, byte red, byte green, byte blue) =>
        Enumerable.Range(0, canvas.Height).Sum(y => Enumerable.Range(0, canvas.Width).Count(x => canvas[x, y] == (red, green, blue)));
}
