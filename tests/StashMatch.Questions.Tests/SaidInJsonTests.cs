using System.Text.Json;
using Xunit;

namespace StashMatch.Questions.Tests;

public sealed class SaidInJsonTests
{
    [Theory]
    [InlineData("""{"colour":"red"}""", "colour")]
    [InlineData("""{"hat":{"gage":{}}}""", "hat.gage")]
    [InlineData("""{"hat":{"gauge":{"stitches":28}}}""", "hat.gauge.stitches")]
    [InlineData("""{"hat":{"sizes":[{"size":"C"},{"size":"D","ears":2}]}}""", "hat.sizes[1].ears")]
    [InlineData("""{"hat":{"printed":{"sizes":[{"parts":[{"length":1,"weight":2}]}]}}}""", "hat.printed.sizes[0].parts[0].weight")]
    [InlineData("""{"leftovers":[{"id":"a"},{"label":{"grammes":50}}]}""", "leftovers[1].label.grammes")]
    [InlineData("""{"locks":[{"part":"brim","ball":"oat"}]}""", "locks[0].ball")]
    [InlineData("""{"joined":[{"of":["a","b"],"by":"a knot"}]}""", "joined[0].by")]
    public void A_field_nobody_knows_is_named_at_whatever_depth_it_stands(string json, string field)
    {
        Read(json, out var errors);
        Assert.Equal([field], errors.ByField.Keys);
    }

    [Theory]
    [InlineData("""{"stripes":"6"}""", "stripes")]
    [InlineData("""{"size":6}""", "size")]
    [InlineData("""{"hat":7}""", "hat")]
    [InlineData("""{"hat":{"brim":{"folded":"yes"}}}""", "hat.brim.folded")]
    [InlineData("""{"hat":{"gauge":{"rowsPer10cm":"40"}}}""", "hat.gauge.rowsPer10cm")]
    [InlineData("""{"leftovers":{"id":"a"}}""", "leftovers")]
    [InlineData("""{"leftovers":[{"grams":"34"}]}""", "leftovers[0].grams")]
    [InlineData("""{"leftovers":[{"name":"\ud800"}]}""", "leftovers[0].name")]
    [InlineData("""{"without":[1,"two"]}""", "without[1]")]
    [InlineData("""{"size":"C","size":"D"}""", "size")]
    public void What_is_of_the_wrong_kind_is_named_by_its_path(string json, string field)
    {
        Read(json, out var errors);
        Assert.Equal([field], errors.ByField.Keys);
    }

    [Fact]
    public void A_lock_names_one_leftover_or_two_and_null_says_nothing()
    {
        var said = Read("""{"locks":[{"part":"brim","leftover":"oat"},{"part":"stripe 1","leftover":["a","b"],"held":"double"}],"size":null}""", out var errors);
        Assert.False(errors.Any);
        Assert.Equal("oat", said["locks"].Each![0]["leftover"].Words);
        Assert.Equal(["a", "b"], said["locks"].Each![1]["leftover"].Each!.Select(l => l.Words));
        Assert.True(said["size"].IsNothing && said.Fields.Contains("size"));
    }

    [Fact]
    public void What_was_typed_is_written_as_numbers_and_the_words_there_are()
    {
        var said = SaidInAddress.Read([("stripes", "６"), ("allowance", "12,5"), ("arrangement", "As-It-Falls"), ("depths", "28,30")], MatchQuestion.Fields);
        Assert.Equal("""{"stripes":6,"arrangement":"as-it-falls","allowancePercent":12.5,"rows":[28,30]}""", SaidInJson.Write(said, MatchQuestion.Fields).ToJsonString());
    }

    private static Said Read(string json, out FieldErrors errors)
    {
        using var read = JsonDocument.Parse(json);
        return SaidInJson.Read(read.RootElement, MatchQuestion.Fields, errors = new FieldErrors());
    }
}
