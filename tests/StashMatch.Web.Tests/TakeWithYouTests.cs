using System.Net;
using System.Net.Http.Json;
using System.Text;
using Xunit;

namespace StashMatch.Web.Tests;

public sealed class TakeWithYouTests(HomeApp app) : IClassFixture<HomeApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/leftovers.csv", "text/csv", "leftovers.csv")]
    [InlineData("/everything.json", "application/json", "everything.json")]
    public async Task Everything_can_be_taken_along_as_a_file_no_browser_keeps(string address, string type, string name)
    {
        using var logged = await app.Client.PostAsJsonAsync(
            "/api/v1/leftovers", new { name = $"=Moss for {name}", grams = 20, label = new { grams = 50, metres = 125 } }, Stop);
        Assert.Equal(HttpStatusCode.Created, logged.StatusCode);
        using var response = await app.Client.GetAsync(address, Stop);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal(type, response.Content.Headers.ContentType!.MediaType);
        Assert.Equal(name, response.Content.Headers.ContentDisposition!.FileName);
        Assert.True(response.Headers.CacheControl!.NoStore);
        var text = Encoding.UTF8.GetString(await response.Content.ReadAsByteArrayAsync(Stop));
        Assert.Contains($"=Moss for {name}", text, StringComparison.Ordinal);
    }
}
