using System.Net;
using Microsoft.AspNetCore.Http;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using StashMatch.Pictures;
using StashMatch.Web.Pages.CanIMakeIt;
using Xunit;

namespace StashMatch.Web.Tests.Pages.CanIMakeIt;

public sealed class PictureTests(DemoApp app) : IClassFixture<DemoApp>
{
    private static CancellationToken Now => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("hat=side-to-side-sample&size=F&stripes=6")]
    [InlineData("hat=brim-up-sample&size=A&stripes=4&arrangement=as-it-falls&keep=brim~oatcake")]
    [InlineData("hat=practice-hat&size=C")]
    [InlineData("")]
    public async Task The_same_question_gives_the_page_and_its_picture(string query)
    {
        var page = await app.Client.GetStringAsync("/can-i-make?" + query, Now);
        Assert.Contains("Save picture", page, StringComparison.Ordinal);
        using var answer = await app.Client.GetAsync("/can-i-make.png?" + query, Now);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("image/png", answer.Content.Headers.ContentType!.MediaType);
        Assert.True(answer.Headers.CacheControl is { Private: true, NoCache: true });
        using var picture = Image.Load<Rgb24>(await answer.Content.ReadAsByteArrayAsync(Now));
        Assert.Equal(HatCard.Width, picture.Width);
    }

    [Fact]
    public async Task The_link_under_the_drawing_asks_what_the_page_was_asked()
    {
        var page = WebUtility.HtmlDecode(await app.Client.GetStringAsync("/can-i-make?hat=side-to-side-sample&size=H&stripes=8&keep=brim~hearth-rug", Now));
        Assert.Contains("/can-i-make.png?hat=side-to-side-sample&size=H&stripes=8&locks=brim~hearth-rug", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hat_on_the_page_is_painted_once_and_kept_for_good()
    {
        var page = WebUtility.HtmlDecode(await app.Client.GetStringAsync("/can-i-make?hat=side-to-side-sample&size=F&stripes=6", Now));
        var source = System.Text.RegularExpressions.Regex.Match(page, "class=\"wool\" src=\"([^\"]+)\"[^>]* width=\"([0-9]+)\" height=\"([0-9]+)\"");
        Assert.StartsWith("/hat.png?hat=side-to-side-sample&size=F&stripes=6", source.Groups[1].Value, StringComparison.Ordinal);
        using var answer = await app.Client.GetAsync(source.Groups[1].Value, Now);
        Assert.Equal("max-age=31536000, private, immutable", answer.Headers.CacheControl!.ToString());
        var bytes = await answer.Content.ReadAsByteArrayAsync(Now);
        Assert.InRange(bytes.Length, 5_000, 45_000);
        using var picture = Image.Load<Rgba32>(bytes);
        Assert.Equal((source.Groups[2].Value, source.Groups[3].Value), ($"{picture.Width}", $"{picture.Height}"));

        // Where what was painted is not known any more, the question is asked again: the same picture, not to be kept.
        using var again = await app.Client.GetAsync(source.Groups[1].Value.Replace("seen=", "seen=0", StringComparison.Ordinal), Now);
        Assert.True(again.Headers.CacheControl is { Private: true, NoCache: true });
        Assert.Equal(bytes, await again.Content.ReadAsByteArrayAsync(Now));
    }

    [Theory]
    [InlineData("hat=side-to-side-sample&size=Z&stripes=6", "Size must be one of")]
    [InlineData("hat=nobody&size=C", "Hat is not one of the hats here")]
    [InlineData("hat=side-to-side-sample&size=C&stripes=13", "This cannot be knitted.")]
    public async Task What_cannot_be_drawn_is_said_in_words(string query, string said)
    {
        using var answer = await app.Client.GetAsync("/can-i-make.png?" + query, Now);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("text/plain", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains(said, await answer.Content.ReadAsStringAsync(Now), StringComparison.Ordinal);
    }

    [Fact]
    public void An_address_is_read_as_the_page_reads_it()
    {
        var query = new QueryCollection(Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(
            "?hat=h&size=C&stripes=5&arrangement=in-turn&allowance=15&nextDoor=blend&brim=single&depths=1,2&bag=b&hold=x&holdWith=y&leftover=a&leftover=b&keep=brim~a&never=seam~b"));
        var form = CanIMakeForm.Of(query);
        Assert.Equal(
            "/can-i-make?hat=h&size=C&stripes=5&arrangement=in-turn&allowancePercent=15&nextDoor=blend&brim=single&rows=1%2C2&bag=b&heldTogether=x~y&leftovers=a&leftovers=b&locks=brim~a&never=seam~b",
            form.Address(f => f));
        Assert.Equal(CanIMakeForm.First.Address(f => f), CanIMakeForm.Of(QueryCollection.Empty).Address(f => f));
    }
}
