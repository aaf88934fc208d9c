using System.Globalization;
using StashMatch.Knitting.Tests;
using Xunit;

namespace StashMatch.Pictures.Tests;

public sealed class WoolPlacesTests
{
    public static TheoryData<string> Names => [.. Wools.All().Select(h => h.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Labels_stand_in_their_own_wool_or_are_led_to_it_and_none_over_another(string name)
    {
        var hat = Wools.All().First(h => h.Name == name).Hat;
        foreach (var view in new[] { new WoolView(440), new WoolView(220), new WoolView(440, Tilt: WoolView.Above) })
        {
            var places = WoolPlaces.Of(hat, view);
            Assert.NotEmpty(places.Places);
            foreach (var place in places.Places)
            {
                Assert.Equal(place.Area, places.AreaAt(place.X, place.Y));
                if (place.Inside)
                {
                    // A label of 30 × 20 pixels lies in the wool with all four corners.
                    Assert.All(new[] { (-15, -10), (15, -10), (-15, 10), (15, 10) }, c =>
                        Assert.Equal(place.Area, places.AreaAt(place.X + c.Item1, place.Y + c.Item2)));
                }
            }

            foreach (var side in places.Places.Where(p => p.HasLabel && !p.Inside).GroupBy(p => p.Left))
            {
                var at = side.Select(p => p.LabelY).Order().ToList();
                Assert.All(at.Zip(at.Skip(1), (a, b) => b - a), gap => Assert.True(gap >= WoolPlaces.LabelHeight - 0.01, $"{gap}"));
                Assert.InRange(at[0], 0, places.Height);
                Assert.InRange(at[^1], 0, places.Height);
            }
        }
    }

    [Fact]
    public void The_outline_of_an_area_holds_about_its_pixels()
    {
        var places = WoolPlaces.Of(Samples.SideToSide.PlanOf("F", 6).Hat(), new WoolView(440));
        foreach (var place in places.Places.Where(p => p.Pixels > 2000))
        {
            Assert.InRange(Area(place.Outline) / place.Pixels, 0.93, 1.07);
        }
    }

    [Fact]
    public void A_place_is_where_its_colour_is()
    {
        var hat = Samples.SideToSide.PlanOf("F", 6).Hat();
        var (places, sheet) = (WoolPlaces.Of(hat, new WoolView(440)), WoolPicture.Paint(hat, new WoolView(440)));
        Assert.Equal((places.Width, places.Height), (sheet.Width, sheet.Height));
        var red = places.Places.Single(p => p.Area == "stripe 3");
        var at = (((int)red.Y * sheet.Width) + (int)red.X) * 4;
        Assert.True(sheet.Pixels[at] > 1.8 * sheet.Pixels[at + 1]);
    }

    [Fact]
    public void A_stripe_turned_to_the_front_is_the_one_seen_most()
    {
        var hat = Samples.SideToSide.PlanOf("F", 6).Hat();
        foreach (var area in new[] { "stripe 1", "stripe 3", "stripe 6" })
        {
            var places = WoolPlaces.Of(hat, new WoolView(300, hat.YawOf(area)!.Value));
            Assert.Equal(area, places.Places.Where(p => p.Area != "brim").MaxBy(p => p.Pixels)!.Area);
        }

        Assert.Null(hat.YawOf("brim"));
        Assert.Null(hat.YawOf("stripe 7"));
    }

    [Fact]
    public void A_braid_is_one_area_with_both_its_strands()
    {
        var hat = Samples.SideToSide.PlanOf("F", 6).Hat();
        Assert.Equal("braid 2", hat.AreaOf("braid 2 strand b"));
        Assert.Null(hat.AreaOf("braid 9 strand a"));
        Assert.Equal(["braid 2 strand a", "braid 2 strand b"], WoolPlaces.Of(hat, new WoolView(300)).Places.Single(p => p.Area == "braid 2").Parts);
    }

    // By the surveyor's formula, holes counting against.
    private static double Area(string path)
    {
        var sum = 0.0;
        foreach (var loop in path.Split('Z', StringSplitOptions.RemoveEmptyEntries))
        {
            var points = loop[1..].Split('L').Select(p => p.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()).ToList();
            sum += points.Select((p, i) => (p[0] * points[(i + 1) % points.Count][1]) - (points[(i + 1) % points.Count][0] * p[1])).Sum();
        }

        return Math.Abs(sum) / 2;
    }
}
