using System.Text.Json;
using CsCheck;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

public sealed class FibreBlendTests
{
    private static readonly string[] Words = ReadWords();

    private static readonly string[] Scraps =
        ["80", "20%", "100 ", "33.333", "⅓", "33⅓", ",", "/", " and ", " ", "merino", "wool ", "silk", "moonbeam", "-5"];

    [Theory]
    [InlineData("80% merino, 20% nylon", "80% merino, 20% nylon")]
    [InlineData("80% merino,20% nylon", "80% merino, 20% nylon")]
    [InlineData("80 merino 20 nylon", "80% merino, 20% nylon")]
    [InlineData("merino 80 nylon 20", "80% merino, 20% nylon")]
    [InlineData("merino/nylon 80/20", "80% merino, 20% nylon")]
    [InlineData("80/20 merino/nylon", "80% merino, 20% nylon")]
    [InlineData("merino, silk and nylon 60/30/10", "60% merino, 30% silk, 10% nylon")]
    [InlineData("75 Superwash Merino / 25 Polyamide", "75% superwash merino, 25% polyamide")]
    [InlineData("75% merino (superwash), 25% nylon", "75% merino superwash, 25% nylon")]
    [InlineData("wool 60 %, silk 40 %", "60% wool, 40% silk")]
    [InlineData("80% wool and 20% nylon", "80% wool, 20% nylon")]
    [InlineData("62,5% wool, 37,5% bamboo", "62.5% wool, 37.5% bamboo")]
    [InlineData("62,5% wool,37,5% bamboo", "62.5% wool, 37.5% bamboo")]
    [InlineData("62½ wool 37½ bamboo", "62.5% wool, 37.5% bamboo")]
    [InlineData("７５％ wool, 25% silk", "75% wool, 25% silk")]
    [InlineData("33.3% wool, 33.3% silk, 33.3% yak", "33.3% wool, 33.3% silk, 33.3% yak")]
    [InlineData("66.7% wool, 33.3% silk", "66.7% wool, 33.3% silk")]
    [InlineData("alpaca", "100% alpaca")]
    [InlineData("100% Baby  Alpaca", "100% baby alpaca")]
    [InlineData("98% cotton, 2% elastane", "98% cotton, 2% elastane")]
    [InlineData("50% wool, 50% unknown", "50% wool, 50% unknown")]
    [InlineData("unknown", "unknown")]
    [InlineData("Unknown ", "unknown")]
    [InlineData("", "unknown")]
    [InlineData(null, "unknown")]
    public void A_fibre_text_is_read_and_reads_back(string? typed, string kept)
    {
        Assert.True(FibreBlend.TryParse(typed, out var blend, out var message), message);
        Assert.Equal(kept, blend.ToString());
        Assert.True(FibreBlend.TryParse(kept, out var again, out _));
        Assert.Equal(blend, again);
        Assert.Equal(kept == "unknown", blend.IsUnknown);
    }

    [Theory]
    [InlineData("80% merino, 10% nylon", "come to 90 %")]
    [InlineData("80% merino, 30% nylon", "come to 110 %")]
    [InlineData("80.1% merino, 20% nylon", "come to 100.1 %")]
    [InlineData("33% wool, 33% silk, 33% yak", "come to 99 %")]
    [InlineData("70% wool", "come to 70 %")]
    [InlineData("80% moonbeam, 20% nylon", "moonbeam")]
    [InlineData("moonbeam", "moonbeam")]
    [InlineData("merino, nylon", "share of merino is missing")]
    [InlineData("80% merino, nylon", "share of nylon is missing")]
    [InlineData("80%, 20% nylon", "fibre of 80 % is missing")]
    [InlineData("merino/nylon/silk 80/20", "share of merino is missing")]
    [InlineData("50% wool, 50% wool", "twice")]
    [InlineData("-20% wool, 120% silk", "below 0")]
    [InlineData("0% wool, 100% silk", "over 0")]
    [InlineData("120% silk", "at most 100")]
    [InlineData("8.0.5% silk", "more than one decimal sign")]
    [InlineData("80% merino nylon, 20% silk", "merino nylon")]
    [InlineData("80 20 merino, 5 silk", "such as 80% merino")]
    [InlineData("80% merino! 20% nylon", "such as 80% merino")]
    [InlineData(", ;", "no fibre")]
    public void A_fibre_text_that_is_none_is_refused_and_says_why(string typed, string says)
    {
        Assert.False(FibreBlend.TryParse(typed, out _, out var message));
        Assert.Contains(says, message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_word_of_the_table_is_read() => Assert.All(Words, word =>
    {
        Assert.True(FibreBlend.TryParse(word, out var blend, out var message), message);
        Assert.Equal(100, Assert.Single(blend.Shares).Percent);
    });

    [Fact]
    public void Any_blend_reads_back_from_its_own_text() =>
        Gen.Select(Gen.Shuffle(Words), Gen.Int[1, 9_999].Array[0, 5]).Sample(
            (words, cuts) =>
            {
                // Shares in hundredths of a percent, cut out of the whole at distinct points.
                int[] ends = [0, .. cuts.Distinct().Order(), 10_000];
                var text = string.Join(", ", ends.Zip(ends.Skip(1)).Select((cut, i) => $"{(cut.Second - cut.First) / 100m}% {words[i]}"));
                return FibreBlend.TryParse(text, out var blend, out _)
                    && FibreBlend.TryParse(blend.ToString(), out var again, out _)
                    && blend.Equals(again) && blend.GetHashCode() == again.GetHashCode()
                    && blend.Shares.Sum(s => s.Percent) == 100;
            });

    [Fact]
    public void No_fibre_text_ever_throws_and_what_is_read_reads_back() =>
        Gen.OneOf(
            Gen.String,
            Gen.String[Gen.Char["0123456789.,/%() ½-wol"], 0, 40],
            Gen.Int[0, Scraps.Length - 1].Select(i => Scraps[i]).Array[0, 9].Select(string.Concat))
        .Sample(
            text => FibreBlend.TryParse(text, out var blend, out var message)
                ? FibreBlend.TryParse(blend.ToString(), out var again, out _) && blend.Equals(again)
                : message is not null,
            iter: 20_000);

    [Fact]
    public void The_superwash_flag_turns_untreated_wool_and_nothing_else()
    {
        Assert.True(FibreBlend.TryParse("80% merino, 20% nylon", out var merino, out _));
        Assert.True(FibreBlend.TryParse("superwash wool", out var washable, out _));
        Assert.True(FibreBlend.TryParse("alpaca", out var alpaca, out _));
        Assert.Equal((true, false), (merino.HasUntreatedWool(false), merino.HasSuperwashWool(false)));
        Assert.Equal((false, true), (merino.HasUntreatedWool(true), merino.HasSuperwashWool(true)));
        Assert.Equal((false, true), (washable.HasUntreatedWool(false), washable.HasSuperwashWool(false)));
        Assert.Equal((false, false), (alpaca.HasUntreatedWool(true), alpaca.HasSuperwashWool(true)));
        Assert.True(merino.Contains("wool") && merino.Contains(FibreFamily.Synthetic) && !merino.Contains("alpaca"));
    }

    private static string[] ReadWords()
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "seed-data", "fibres.json")));
        return [.. json.RootElement.EnumerateArray().SelectMany(r => r.GetProperty("also").EnumerateArray().Append(r.GetProperty("name"))).Select(w => w.GetString()!)];
    }
}
