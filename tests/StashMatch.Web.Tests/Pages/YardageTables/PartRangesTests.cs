using StashMatch.Knitting.Hats;
using StashMatch.Web.Pages.YardageTables;
using Xunit;

namespace StashMatch.Web.Tests.Pages.YardageTables;

public sealed class PartRangesTests
{
    [Theory]
    [InlineData("stripe 1", "stripe 1")]
    [InlineData("stripe 2, stripe 3", "stripes 2 and 3")]
    [InlineData("stripe 2, stripe 3, stripe 4, stripe 7", "stripes 2 to 4 and 7")]
    [InlineData("braid 1 strand a, braid 1 strand b", "both colours of braid 1")]
    [InlineData("braid 1 strand a, braid 1 strand b, braid 2 strand a, braid 2 strand b, braid 3 strand a, braid 3 strand b", "both colours of braids 1 to 3")]
    [InlineData("braid 1 strand a, braid 2 strand b", "braid 1: first colour, braid 2: second colour")]
    [InlineData("brim", "brim")]
    public void Like_parts_are_named_short(string names, string told) =>
        Assert.Equal(told, PartRanges.Of([.. names.Split(", ").Select(Part)]));

    private static HatPart Part(string name)
    {
        var (kind, number, strand) = PartNames.Read(name)!.Value;
        return new HatPart(name, kind, number, strand, 0, default, 1, 0);
    }
}
