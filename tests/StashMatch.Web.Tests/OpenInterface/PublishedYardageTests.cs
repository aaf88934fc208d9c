using System.Text.Json.Nodes;
using StashMatch.Knitting.Tests.Hats;
using Xunit;

namespace StashMatch.Web.Tests.OpenInterface;

public sealed class PublishedYardageTests(HomeApp app) : IClassFixture<HomeApp>
{
    [Fact]
    public async Task Bare_metres_lie_where_they_should_against_published_yardages()
    {
        // Each source stands in the table; a regression guard, not a validation: 0.55-1.20 each, median of the 13 within 0.85-1.00.
        var ratios = new List<double>();
        foreach (var (hat, stated) in PublishedHats.All())
        {
            var size = hat.Sizes[0];
            var table = await app.Client.PostAsync("yardage", new JsonObject
            {
                ["hat"] = new JsonObject
                {
                    ["name"] = "published",
                    ["construction"] = "brim-up-round",
                    ["weightClass"] = 4,
                    ["gauge"] = new JsonObject { ["stitchesPer10cm"] = hat.Gauge.StitchesPer10Cm, ["rowsPer10cm"] = hat.Gauge.RowsPer10Cm },
                    ["brim"] = new JsonObject { ["depthCm"] = hat.Brim!.Depth.Value, ["fit"] = hat.Brim.Fit.ToString().ToLowerInvariant() },
                    ["crown"] = new JsonObject { ["decreaseLines"] = hat.Crown.DecreaseLines },
                    ["sizes"] = new JsonArray(new JsonObject { ["size"] = "X", ["circumferenceCm"] = size.Circumference.Value, ["heightCm"] = size.Height.Value, ["stitches"] = size.Stitches }),
                },
                ["stripeCounts"] = new JsonArray(1),
            });
            ratios.Add(table.GetProperty("rows")[0].GetProperty("bareMetres").GetDouble() / stated);
        }

        ratios.Sort();
        Assert.Equal(PublishedHats.Rows, ratios.Count);
        Assert.All(ratios, r => Assert.InRange(r, 0.55, 1.20));
        Assert.InRange(ratios[6], 0.85, 1.00);
    }
}
