using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;
using StashMatch.Web.Tests.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class LeftoverFilterTests
{
    private static readonly Listed Moss = Made("Moss", 30, "100 g / 400 m", l => l with { Colour = Colour("#5B7A3A"), Fibre = Fibre("80% wool, 20% nylon"), Bag = "Tin", Note = "two knots" });
    private static readonly Listed Oat = Made("Oat", 60, "50 g / 125 m", l => l with { Colour = Colour("#E2D3B2"), Fibre = Fibre("100% alpaca"), NotForHats = true, Crumb = true });
    private static readonly Listed Rust = Made("Rust", 5, "", l => l with { Bag = "Peg bag" });
    private static readonly Listed Gone = Made("Gone", 9, "100 g / 400 m", l => l with { Left = default, KeptBackFor = "mittens" });
    private static readonly Listed[] All = [Moss, Oat, Rust, Gone];

    public static TheoryData<LeftoverFilter, string> Filters => new()
    {
        { new(), "Moss Oat Rust Gone" },
        { new() { Words = "KNOTS" }, "Moss" },
        { new() { Words = "green tin" }, "Moss" },
        { new() { Words = "green peg" }, "" },
        { new() { Words = "Oa" }, "Oat" },
        { new() { Words = "4-ply" }, "Moss Gone" },
        { new() { Bag = "Peg bag" }, "Rust" },
        { new() { Class = "1" }, "Moss Gone" },
        { new() { Fibre = "wool nylon" }, "Moss" },
        { new() { Fibre = "unknown" }, "Rust Gone" },
        { new() { Colour = "known" }, "Moss Oat" },
        { new() { Colour = "unknown" }, "Rust Gone" },
        { new() { Only = "hats" }, "Moss" },
        { new() { Only = "not-hats" }, "Oat" },
        { new() { Only = "crumbs" }, "Oat Rust" },
        { new() { Only = "kept-back" }, "Gone" },
        { new() { Only = "knitted-up" }, "Gone" },
        { new() { Order = LeftoverOrder.Name }, "Gone Moss Oat Rust" },
        { new() { Order = LeftoverOrder.Code }, "Gone Moss Oat Rust" },
        { new() { Order = LeftoverOrder.Longest }, "Oat Moss Rust Gone" },
        { new() { Order = LeftoverOrder.Heaviest }, "Oat Moss Rust Gone" },
        { new() { Order = LeftoverOrder.Class }, "Moss Gone Oat Rust" },
        { new() { Order = LeftoverOrder.Bag }, "Rust Moss Gone Oat" },
        { new() { Order = LeftoverOrder.Colour }, "Oat Moss Rust Gone" },
    };

    [Theory]
    [MemberData(nameof(Filters))]
    public void Each_filter_and_order_shows_what_it_says(LeftoverFilter filter, string names)
    {
        ArgumentNullException.ThrowIfNull(filter);
        Assert.Equal(names, string.Join(' ', filter.Of(All).Select(l => l.Of.Name)));
    }

    [Fact]
    public void Knitted_up_counts_for_nothing_in_metres_and_grams()
    {
        Assert.Equal((0m, default), (Gone.Grams, Gone.Held));
        Assert.Equal(120m, Moss.Held.Value);
    }

    [Fact]
    public void Its_address_carries_it_whole()
    {
        Assert.Equal("/leftovers/tags?", new LeftoverFilter().Address("/leftovers/tags"));
        Assert.Equal("/t?words=a%26b&bag=Peg%20bag&class=3&only=hats&order=Name", new LeftoverFilter { Words = " a&b ", Bag = "Peg bag", Class = "3", Only = "hats", Order = LeftoverOrder.Name }.Address("/t"));
    }

    private static Listed Made(string name, decimal grams, string label, Func<LoggedLeftover, LoggedLeftover> more) => new(more(WeighLeftoversTests.Logged(name, grams, label)));

    private static YarnColour Colour(string hex) => YarnColour.TryParse(hex, out var colour, out _) ? colour : default;

    private static FibreBlend Fibre(string text) => FibreBlend.TryParse(text, out var fibre, out _) ? fibre : FibreBlend.Unknown;
}
