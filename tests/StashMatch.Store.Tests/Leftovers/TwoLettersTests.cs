using Xunit;

namespace StashMatch.Store.Tests.Leftovers;

public sealed class TwoLettersTests
{
    [Theory]
    [InlineData("Oatcake", "", "Oa")]
    [InlineData("Hearth rug", "", "Hr")]
    [InlineData("Hearth rug", "Hr", "He")]
    [InlineData("Oatcake", "Oa", "Ot")]
    [InlineData("Oo", "Oo", "Oa")]
    [InlineData("duck-pond", "", "Dp")]
    [InlineData("Wet slate", "", "We")]
    [InlineData("Sloe", "", "So")]
    [InlineData("Corn", "", "Cr")]
    [InlineData("X", "", "Xa")]
    [InlineData("1234", "", "Ya")]
    [InlineData("½ Øre", "", "Re")]
    public void The_first_free_pair_of_the_rule_is_given(string name, string taken, string code) =>
        Assert.Equal(code, TwoLetters.For(name, taken.Split(' ').ToHashSet(StringComparer.Ordinal)));

    [Fact]
    public void No_pair_is_given_twice_until_every_pair_is_taken()
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < (26 * 26) - 17; i++)
        {
            Assert.True(taken.Add(TwoLetters.For("Oatcake", taken)));
        }

        Assert.Equal("Oa", TwoLetters.For("Oatcake", taken));
        Assert.All(taken, code => Assert.Matches("^[A-Z][a-z]$", code));
        Assert.DoesNotContain("Ws", taken);
        Assert.DoesNotContain("Sl", taken);
    }
}
