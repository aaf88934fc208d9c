using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace StashMatch.Web.Tests;

public sealed partial class FrontDoorTests(HomeApp app) : IClassFixture<HomeApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/leftovers", HttpStatusCode.OK)]
    [InlineData("/from-this-bag", HttpStatusCode.OK)]
    [InlineData("/no-such-page", HttpStatusCode.NotFound)]
    [InlineData("/api/v1/leftovers", HttpStatusCode.OK)]
    [InlineData("/css/base.css", HttpStatusCode.OK)]
    [InlineData("/health/live", HttpStatusCode.OK)]
    [InlineData("/health/ready", HttpStatusCode.OK)]
    public async Task Every_answer_carries_the_safe_headers(string address, HttpStatusCode status)
    {
        using var response = await GetAsync(address);
        Assert.Equal(status, response.StatusCode);
        Assert.Contains("script-src 'self'", Header(response, "Content-Security-Policy"), StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", Header(response, "Content-Security-Policy"), StringComparison.Ordinal);
        Assert.DoesNotContain("nonce", Header(response, "Content-Security-Policy"), StringComparison.Ordinal);
        Assert.Equal("nosniff", Header(response, "X-Content-Type-Options"));
        Assert.Equal("same-origin", Header(response, "Referrer-Policy"));
        Assert.False(response.Headers.Contains("Server"));
    }

    [Fact]
    public async Task The_reference_page_names_its_one_script_by_a_number_used_once()
    {
        async Task<string> NonceAsync()
        {
            using var response = await GetAsync("/open-interface/");
            var nonce = Nonce().Match(Header(response, "Content-Security-Policy")).Groups["nonce"].Value;
            Assert.Contains($"nonce=\"{nonce}\"", WebUtility.HtmlDecode(await response.Content.ReadAsStringAsync(Stop)), StringComparison.Ordinal);
            return nonce;
        }

        var first = await NonceAsync();
        Assert.NotEqual("", first);
        Assert.NotEqual(first, await NonceAsync());
    }

    [Fact]
    public async Task Reading_pages_do_without_the_component_library_and_weighing_brings_it()
    {
        Assert.DoesNotContain("MudBlazor", await TextAsync("/"), StringComparison.Ordinal);
        Assert.Contains("_content/MudBlazor/MudBlazor.min.css", await TextAsync("/leftovers"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/leftovers", true)]
    [InlineData("/hats", true)]
    [InlineData("/kits", true)]
    [InlineData("/testers", true)]
    [InlineData("/settings", true)]
    [InlineData("/", false)]
    [InlineData("/tables", false)]
    public async Task A_page_that_needs_scripts_says_so_where_they_are_blocked(string page, bool needs) =>
        Assert.Equal(needs, (await TextAsync(page)).Contains("<noscript><p class=\"no-scripts\">The fields of this page need scripts", StringComparison.Ordinal));

    [Theory]
    [InlineData("/css/base.css")]
    [InlineData("/css/pieces.css")]
    [InlineData("/fonts/atkinson-latin.woff2")]
    [InlineData("/fonts/literata-latin-ext.woff2")]
    [InlineData("/icons/hat.svg")]
    [InlineData("/js/lit.js")]
    [InlineData("/_content/MudBlazor/MudBlazor.min.css")]
    public async Task What_the_pages_need_is_served_and_is_not_empty(string address)
    {
        using var response = await GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.True((await response.Content.ReadAsByteArrayAsync(Stop)).Length > 100);
    }

    [Fact]
    public async Task A_page_that_is_not_there_says_so_in_words_and_shows_the_way_round()
    {
        using var response = await GetAsync("/no-such-page");
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        var text = await response.Content.ReadAsStringAsync(Stop);
        Assert.Contains("There is no page here", text, StringComparison.Ordinal);
        Assert.Contains("href=\"/leftovers\"", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/leftovers")]
    [InlineData("/hats")]
    [InlineData("/css/base.css")]
    [InlineData("/health/live")]
    [InlineData("/api/v1/leftovers")]
    [InlineData("/no-such-page")]
    public async Task Head_is_answered_like_get_without_a_body(string address)
    {
        using var request = new HttpRequestMessage(HttpMethod.Head, address);
        request.Headers.Accept.ParseAdd("text/html,*/*;q=0.8");
        using var head = await app.Client.SendAsync(request, Stop);
        using var get = await GetAsync(address);
        Assert.Equal(get.StatusCode, head.StatusCode);
        Assert.Equal(get.Content.Headers.ContentType, head.Content.Headers.ContentType);
        Assert.Equal(Header(get, "Content-Security-Policy"), Header(head, "Content-Security-Policy"));
        Assert.Empty(await head.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task Another_host_name_is_turned_away()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = "rebound.example";
        using var response = await app.Client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    [Fact]
    public async Task The_skip_link_stays_on_the_question_asked() =>
        Assert.Contains("href=\"can-i-make?hat=practice-hat&amp;size=C#main\"", await TextAsync("/can-i-make?hat=practice-hat&size=C"), StringComparison.Ordinal);

    private static string Header(HttpResponseMessage response, string name) =>
        response.Headers.TryGetValues(name, out var values) ? Assert.Single(values) : "";

    private async Task<HttpResponseMessage> GetAsync(string address)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.Accept.ParseAdd("text/html,*/*;q=0.8");
        return await app.Client.SendAsync(request, Stop);
    }

    private async Task<string> TextAsync(string address)
    {
        using var response = await GetAsync(address);
        return await response.Content.ReadAsStringAsync(Stop);
    }

    [GeneratedRegex("'nonce-(?<nonce>[^']+)'", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Nonce();
}
