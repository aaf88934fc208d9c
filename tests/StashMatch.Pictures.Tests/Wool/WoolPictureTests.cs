using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class WoolPictureTests
{
    private static readonly WoolView Front = new(150);

    public static TheoryData<string> Names => [.. Wools.All().Select(h => h.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_hat_is_painted_within_its_picture_and_nothing_else_is(string name)
    {
        var sheet = WoolPicture.Paint(Find(name), Front);
        var wool = sheet.Areas.Count(a => a != WoolSheet.Nothing);
        Assert.InRange((double)wool / sheet.Areas.Length, 0.5, 0.9);
        for (var x = 0; x < sheet.Width; x++)
        {
            Assert.Equal(0, sheet.Pixels[(x * 4) + 3]);
            Assert.Equal(0, sheet.Pixels[((((sheet.Height - 1) * sheet.Width) + x) * 4) + 3]);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_area_is_seen_in_some_view(string name)
    {
        var hat = Find(name);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var yaw in new[] { 0, 1.57, 3.14, 4.71 })
        {
            seen.UnionWith(WoolPlaces.Of(hat, new WoolView(260, yaw)).Places.Select(p => p.Area));
            seen.UnionWith(WoolPlaces.Of(hat, new WoolView(260, yaw, WoolView.Above)).Places.Select(p => p.Area));
        }

        Assert.Equal(hat.AreaNames.Order(StringComparer.Ordinal), seen.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_same_hat_and_view_give_the_same_bytes_on_one_thread_or_two()
    {
        Assert.Equal(WoolPicture.Png(Find("side"), Front), WoolPicture.Png(Find("side"), Front));
        Assert.Equal(WoolPicture.Png(Find("side"), Front), WoolPicture.Png(Find("side"), Front, threads: 2));
        Assert.NotEqual(WoolPicture.Png(Find("side"), Front), WoolPicture.Png(Find("side"), Front with { Yaw = 1 }));
    }

    [Theory]
    [InlineData("side")]
    [InlineData("side-24")]
    [InlineData("up")]
    [InlineData("undyed")]
    public void A_picture_of_usual_size_is_a_small_file_with_a_palette(string name)
    {
        var png = WoolPicture.Png(Find(name), new WoolView(440));
        Assert.InRange(png.Length, 15_000, 41_000);

        // The header's colour type: 3 is a palette (ISO/IEC 15948).
        Assert.Equal(3, png[25]);
        using var picture = Image.Load<Rgba32>(png);
        Assert.Equal(440, picture.Width);
        Assert.Equal(0, picture[0, 0].A);
    }

    [Fact]
    public void The_height_stays_as_the_hat_turns_and_a_fixed_box_is_filled_in_the_middle()
    {
        var heights = new[] { 0, 1, 2, 3 }.Select(yaw => WoolPicture.Paint(Find("side"), Front with { Yaw = yaw }).Height).Distinct();
        Assert.Single(heights);
        var boxed = WoolPicture.Paint(Find("up"), new WoolView(200, Height: 120));
        Assert.Equal((200, 120), (boxed.Width, boxed.Height));
        var columns = Enumerable.Range(0, boxed.Areas.Length).Where(i => boxed.Areas[i] != WoolSheet.Nothing).Select(i => i % boxed.Width).ToList();
        Assert.InRange(columns.Min() + columns.Max(), 190, 210);
    }

    [Fact]
    public void What_there_is_no_yarn_for_is_only_hinted_at()
    {
        var plan = Samples.SideToSide.PlanOf("F", 6);
        var wool = Wools.For(plan.Parts);
        wool["stripe 3"] = wool["stripe 3"] with { Knitted = 0 };
        wool["brim"] = wool["brim"] with { Knitted = 0.75 };
        var hat = WoolHat.Of(plan, wool);
        var sheet = WoolPicture.Paint(hat, Front);
        double Pale(string area) => Share(hat, sheet, area, i => sheet.Pixels[(i * 4) + 3] < 128);
        Assert.InRange(Pale("stripe 3"), 0.85, 1);
        Assert.InRange(Pale("stripe 4"), 0, 0.1);

        // A folded brim's first half lies within: three quarters of it reach half way up what is seen.
        Assert.InRange(Pale("brim"), 0.3, 0.65);
    }

    [Fact]
    public void What_is_still_to_be_knitted_is_undyed_with_a_hint_of_its_colour()
    {
        var plan = Samples.SideToSide.PlanOf("F", 6);
        var wool = Wools.For(plan.Parts);
        var (now, ahead) = (Mean("stripe 3", wool), Mean("stripe 3", new(wool) { ["stripe 3"] = wool["stripe 3"] with { Ahead = true } }));
        Assert.True(now.Red > 2 * now.Green);
        Assert.True(ahead.Red > ahead.Green && ahead.Green > 2 * now.Green, $"{now} {ahead}");
        (double Red, double Green) Mean(string area, Dictionary<string, PartWool> parts)
        {
            var hat = WoolHat.Of(plan, parts);
            var sheet = WoolPicture.Paint(hat, Front);
            return (Share(hat, sheet, area, i => sheet.Pixels[i * 4]), Share(hat, sheet, area, i => sheet.Pixels[(i * 4) + 1]));
        }
    }

    [Fact]
    public void A_yarn_of_several_colours_shows_them_all()
    {
        var plan = Samples.BrimUp.PlanOf("F", 4);
        var wool = Wools.For(plan.Parts);
        wool["brim"] = new(Wools.Yarn("#C02020", "#20A030", "#2030C0"));
        var hat = WoolHat.Of(plan, wool);
        var sheet = WoolPicture.Paint(hat, Front);
        Assert.All(Enumerable.Range(0, 3), k => Assert.InRange(Share(hat, sheet, "brim", i => IsMost(i, k)), 0.1, 0.7));
        bool IsMost(int i, int k) => Enumerable.Range(0, 3).All(j => j == k || sheet.Pixels[(i * 4) + k] > sheet.Pixels[(i * 4) + j] + 20);
    }

    [Fact]
    public void Hairy_yarn_stands_further_off_than_smooth()
    {
        var plan = Samples.SideToSide.PlanOf("F", 6);
        int Fringe(double halo)
        {
            var wool = Wools.For(plan.Parts).ToDictionary(p => p.Key, p => p.Value with { Yarn = p.Value.Yarn! with { Halo = halo } }, StringComparer.Ordinal);
            var sheet = WoolPicture.Paint(WoolHat.Of(plan, wool), new WoolView(300));
            return Enumerable.Range(0, sheet.Areas.Length).Count(i => sheet.Areas[i] == WoolSheet.Nothing && sheet.Pixels[(i * 4) + 3] > 40);
        }

        Assert.True(Fringe(0.95) > 1.5 * Fringe(0.05), $"{Fringe(0.95)} {Fringe(0.05)}");
    }

    [Fact]
    public void No_edge_of_a_stripe_is_straight_over_three_stitches()
    {
        // Round the head, seen from the front, at some nine pixels to a stitch: the lower edge of stripe 2 in each column.
        var hat = (Samples.BrimUp with { Braids = new(Knitting.Hats.BraidPlaces.None) }).PlanOf("F", 6).Hat();
        var sheet = WoolPicture.Paint(hat, new WoolView(500, Tilt: 0));
        var at = hat.AreaNames.ToList().IndexOf("stripe 2");
        var edge = Enumerable.Range(150, 200).Select(x => Enumerable.Range(0, sheet.Height).Last(y => sheet.Areas[(y * 500) + x] == at)).ToList();
        var longest = 1;
        for (var (i, run) = (1, 1); i < edge.Count; i++)
        {
            run = edge[i] == edge[i - 1] ? run + 1 : 1;
            longest = Math.Max(longest, run);
        }

        Assert.InRange(longest, 1, 18);
        Assert.InRange(edge.Zip(edge.Skip(1), (a, b) => Math.Abs(a - b)).Count(d => d > 0), 60, 200);
    }

    [Theory]
    [InlineData(15, 0, 0)]
    [InlineData(300, double.NaN, 0)]
    [InlineData(300, 0, 2)]
    public void A_view_that_cannot_be_is_refused(int width, double yaw, double tilt) =>
        Assert.Throws<InvalidOperationException>(() => WoolPicture.Png(Find("up"), new WoolView(width, yaw, tilt)));

    private static WoolHat Find(string name) => Wools.All().First(h => h.Name == name).Hat;

    // The mean over an area's pixels.
    private static double Share(WoolHat hat, WoolSheet sheet, string area, Func<int, bool> which) => Share(hat, sheet, area, i => which(i) ? 1.0 : 0);

    private static double Share(WoolHat hat, WoolSheet sheet, string area, Func<int, double> value)
    {
        var at = hat.AreaNames.ToList().IndexOf(area);
        return Enumerable.Range(0, sheet.Areas.Length).Where(i => sheet.Areas[i] == at).Average(value);
    }
}
