using Xunit;

namespace StashMatch.Questions.Tests;

public sealed class SaidInAddressTests
{
    [Theory]
    [InlineData("keep", "brim~oat", "locks", "brim~oat")]
    [InlineData("join", "moss~fern", "joined", "moss~fern")]
    [InlineData("leftover", "moss", "leftovers", "moss")]
    [InlineData("allowance", "12", "allowancePercent", "12")]
    [InlineData("colours", "gradient", "colourOrder", "gradient")]
    [InlineData("depths", "28,30", "rows", "28,30")]
    [InlineData("brimDepth", "4,5", "brimDepthCm", "4,5")]
    public void A_name_of_before_is_read_and_todays_is_written(string before, string value, string name, string written)
    {
        var said = MatchQuestion.InAddress([(before, value)]);
        Assert.Equal([(name, written)], SaidInAddress.Write(said, MatchQuestion.Fields));
        Assert.Equal(SaidInAddress.Write(said, MatchQuestion.Fields), SaidInAddress.Write(MatchQuestion.InAddress([(name, written)]), MatchQuestion.Fields));
    }

    [Theory]
    [InlineData("oat", null, "oat~oat")]
    [InlineData("oat", "", "oat~oat")]
    [InlineData("oat", "moss", "oat~moss")]
    public void Two_lists_of_a_page_name_what_is_held_together(string first, string? second, string together)
    {
        var said = MatchQuestion.InAddress([("hold", first), ("holdWith", second ?? "")]);
        Assert.Equal([("heldTogether", together)], SaidInAddress.Write(said, MatchQuestion.Fields));
    }

    [Theory]
    [InlineData("a~b")]
    [InlineData("~")]
    [InlineData("50%")]
    [InlineData("a%7Eb")]
    [InlineData("é 🧶+&=")]
    public void An_id_of_any_signs_is_the_same_again(string id)
    {
        var said = Said.Of((Pairings.Locks, Said.Several([Pairings.Say("brim", id)])), (Together.Joined, Said.Several([Together.Say(id, "moss")])));
        var again = SaidInAddress.Read(SaidInAddress.Write(said, MatchQuestion.Fields), MatchQuestion.Fields);
        Assert.Equal(("brim", id), (Pairings.PartOf(again["locks"].Each![0]), Pairings.LeftoverOf(again["locks"].Each![0])));
        Assert.Equal([id, "moss"], again["joined"].Each![0]["of"].Each!.Select(o => o.Words));
    }

    [Fact]
    public void A_lock_spelled_before_tildes_were_marked_names_all_that_follows_the_part() =>
        Assert.Equal("a~b", Pairings.LeftoverOf(MatchQuestion.InAddress([("keep", "brim~a~b")])["locks"].Each![0]));

    [Fact]
    public void No_two_fields_of_a_question_go_by_one_name()
    {
        foreach (var fields in new[] { MatchQuestion.Fields, BagQuestion.Fields, BagQuestion.WholeBagFields, TableQuestion.Fields, DepthsQuestion.Fields, KitQuestion.Fields, LeftoverText.Fields, HatFields.All })
        {
            var names = fields.SelectMany(f => f.Before.Append(f.Name)).ToList();
            Assert.Equal(names.Count, names.Distinct(StringComparer.Ordinal).Count());
        }
    }
}
