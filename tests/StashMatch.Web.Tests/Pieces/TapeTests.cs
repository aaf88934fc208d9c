using System.Globalization;
using Bunit;
using StashMatch.Knitting.Quantities;
using StashMatch.Web.Pieces;
using Xunit;

namespace StashMatch.Web.Tests.Pieces;

public sealed class TapeTests : BunitContext
{
    [Fact]
    public void A_leftover_is_cut_where_its_parts_end_and_what_is_over_stays_uncut()
    {
        var tape = Render<Tape>(p => p
            .Add(t => t.Scale, new TapeScale(100)).Add(t => t.Label, "Moss").Add(t => t.Hex, "#5b7a3a").Add(t => t.Held, Metres.Held(40))
            .Add(t => t.Stretches, [new TapeStretch("stripe 1", 1, default, Metres.Held(20)), new TapeStretch("braid 1 strand a", 2, Metres.Held(20), Metres.Held(5))]));
        Assert.Equal("img", tape.Find(".tape").GetAttribute("role"));
        Assert.Equal("Moss", tape.Find(".tape").GetAttribute("aria-label"));
        Assert.Equal("width:40%;--yarn:#5b7a3a", tape.Find(".tape-strand").GetAttribute("style"));
        Assert.Equal(["stripe 1", "braid 1 strand a"], tape.FindAll(".tape-cut").Select(c => c.GetAttribute("data-part")));
        Assert.Equal(["left:0%;width:20%", "left:20%;width:5%"], tape.FindAll(".tape-cut").Select(c => c.GetAttribute("style")));
        Assert.Equal(["1", "2"], tape.FindAll(".tape-cut").Select(c => c.TextContent));
        Assert.Empty(tape.FindAll(".tape-gap, .tape-fray, .tape-need"));
    }

    [Fact]
    public void A_need_is_a_bracket_and_what_it_lacks_an_open_gap_where_the_leftover_ends()
    {
        var tape = Render<Tape>(p => p
            .Add(t => t.Scale, new TapeScale(50)).Add(t => t.Label, "").Add(t => t.Held, Metres.Held(10))
            .Add(t => t.Need, new TapeStretch("brim", 9, Metres.Held(5), Metres.Held(20))).Add(t => t.Gap, Metres.Held(15)).Add(t => t.GapPart, "brim"));
        Assert.Equal("left:10%;width:40%", tape.Find(".tape-need").GetAttribute("style"));
        Assert.Equal("left:20%;width:30%", tape.Find(".tape-gap").GetAttribute("style"));
        Assert.Equal("brim", tape.Find(".tape-gap").GetAttribute("data-part"));
    }

    [Fact]
    public void What_is_not_sure_is_frayed_either_side_of_the_end()
    {
        var tape = Render<Tape>(p => p.Add(t => t.Scale, new TapeScale(100)).Add(t => t.Label, "").Add(t => t.Held, Metres.Held(40)).Add(t => t.Doubt, Metres.Held(2)));
        Assert.Equal("left:38%;width:4%", tape.Find(".tape-fray").GetAttribute("style"));
        Assert.Contains("unknown", tape.Find(".tape-strand").ClassName!, StringComparison.Ordinal);
    }

    [Fact]
    public void Metres_above_and_yards_below_lie_on_one_scale()
    {
        var scale = TapeScale.For([Metres.Held(12), Metres.Held(45.72m)]);
        var metres = scale.MetreMarks.Select(m => (Length: decimal.Parse(m.Text, CultureInfo.InvariantCulture), At: Share(m.At))).ToList();
        var yards = scale.YardMarks.Select(m => (Length: decimal.Parse(m.Text, CultureInfo.InvariantCulture) * 0.9144m, At: Share(m.At))).ToList();
        Assert.True(metres.Count is > 1 and <= 6 && yards.Count is > 1 and <= 6);
        Assert.All(metres.Concat(yards), m => Assert.InRange(m.At - (m.Length / scale.FullMetres * 100), -0.001m, 0.001m));
        Assert.True(scale.FullMetres > 45.72m);
        static decimal Share(string at) => decimal.Parse(at.TrimEnd('%'), CultureInfo.InvariantCulture);
    }
}
