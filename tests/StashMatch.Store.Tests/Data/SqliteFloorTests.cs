using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Data;

public sealed class SqliteFloorTests
{
    [Theory]
    [InlineData("3.51.2")]
    [InlineData("3.7.0")]
    [InlineData("2.99.99")]
    [InlineData("")]
    [InlineData(null)]
    public void A_version_that_can_lose_a_save_is_refused_with_the_one_that_is_needed(string? version) =>
        Assert.Contains("3.51.3", Assert.Throws<StoreRefusedException>(() => SqliteFloor.Check(version)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("3.51.3")]
    [InlineData("3.100.0")]
    public void The_floor_itself_and_newer_are_taken(string version) => SqliteFloor.Check(version);
}
