using System.Text.Json;
using Xunit;

namespace StashMatch.Store.Tests.Hats;

public sealed class HatFileTests
{
    private static readonly Said Hat = Described.Hat("""
        {"name":"Hedge “row” & co","weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},
         "brim":{"depthCm":5,"folded":true,"fit":"snug","rib":2,"bindOff":"tubular"},"braids":{"where":"between-stripes","strands":"scraps"},
         "stripeCounts":{"least":4,"most":12},"sizes":[{"size":"C","headCm":52,"stitches":44}],"usage":{"factor":1.05,"spreadPercent":5}}
        """);

    [Fact]
    public void A_hat_goes_out_with_its_version_and_comes_back_the_same()
    {
        var text = HatFile.Write(Hat);
        using var json = JsonDocument.Parse(text);
        Assert.Equal(1, json.RootElement.GetProperty("stashMatchHat").GetInt32());
        Assert.True(HatFile.TryRead(text, out var back, out var message), message);
        Assert.Equal(SaidInJson.Write(Hat, HatFields.All).ToJsonString(), SaidInJson.Write(back, HatFields.All).ToJsonString());
        Assert.Equal(text, HatFile.Write(back));
    }

    [Fact]
    public void One_by_a_newer_version_is_refused_kindly_and_unread()
    {
        Assert.False(HatFile.TryRead("""{"stashMatchHat":2,"hat":{"aboutSomethingNew":true}}""", out _, out var message));
        Assert.Equal(
            "This hat is from a newer StashMatch: version 2, and this one reads up to 1. Nothing was changed. Update StashMatch, or ask for an older file.",
            message);
        Assert.False(HatFile.TryRead("""{"stashMatchHat":1e30,"hat":{}}""", out _, out message));
        Assert.Contains("newer", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "empty")]
    [InlineData("", "empty")]
    [InlineData("{", "not a StashMatch file")]
    [InlineData("[1]", "not a hat file")]
    [InlineData("""{"hat":{}}""", "not a hat file")]
    [InlineData("""{"stashMatchHat":"1","hat":{}}""", "not a hat file")]
    [InlineData("""{"stashMatchHat":0,"hat":{}}""", "no version 0")]
    [InlineData("""{"stashMatchHat":1}""", "holds no hat")]
    [InlineData("""{"stashMatchHat":1,"hat":null}""", "holds no hat")]
    [InlineData("""{"stashMatchHat":1,"hat":{"name":"x","weightClass":9}}""", "construction must be one of ")]
    [InlineData("""{"stashMatchHat":1,"hat":{"name":"x","weightClass":"one"}}""", "weightClass must be a number")]
    public void What_is_no_hat_says_so_in_plain_words(string? text, string says)
    {
        Assert.False(HatFile.TryRead(text, out var hat, out var message));
        Assert.Null(hat);
        Assert.Contains(says, message, StringComparison.Ordinal);
    }
}
