using CsCheck;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

public sealed class CareTests
{
    [Theory]
    [InlineData("４０ C mild")]
    [InlineData("warm")]
    [InlineData("400 C mild")]
    public void A_care_text_that_is_none_is_refused(string typed)
    {
        Assert.False(Care.TryParse(typed, out _, out var message));
        Assert.NotEmpty(message);
    }

    [Fact]
    public void No_care_text_ever_throws() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0４３ c,mildhanwsfk"], 0, 20]).Sample(
            text => Care.TryParse(text, out _, out var message) == (message is null),
            iter: 10_000);
}
