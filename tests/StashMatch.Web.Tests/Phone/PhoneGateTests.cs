using System.Net;
using System.Net.WebSockets;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using StashMatch.Web.Phone;
using Xunit;

namespace StashMatch.Web.Tests.Phone;

public sealed partial class PhoneGateTests(PhoneApp app) : IClassFixture<PhoneApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private PairingCode Code => app.Services.GetRequiredService<PairingCode>();

    private PhoneStore Phones => app.Services.GetRequiredService<PhoneStore>();

    [Theory]
    [InlineData("GET", "/", HttpStatusCode.Found)]
    [InlineData("GET", "/leftovers", HttpStatusCode.Found)]
    [InlineData("GET", "/settings", HttpStatusCode.Found)]
    [InlineData("GET", "/no-such-page", HttpStatusCode.Found)]
    [InlineData("GET", "/pair", HttpStatusCode.OK)]
    [InlineData("GET", "/css/base.css", HttpStatusCode.OK)]
    [InlineData("HEAD", "/leftovers", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/v1/leftovers", HttpStatusCode.Forbidden)]
    [InlineData("DELETE", "/api/v1/leftovers/moss", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/_blazor/negotiate", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/css/base.css", HttpStatusCode.Forbidden)]
    public async Task An_unpaired_browser_gets_the_pairing_page_and_nothing_else(string method, string path, HttpStatusCode status)
    {
        using var phone = PhoneApp.Browser(app.Network);
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var response = await phone.SendAsync(request, Stop);
        Assert.Equal(status, response.StatusCode);
        if (status == HttpStatusCode.Found)
        {
            Assert.Equal("/pair", response.Headers.Location!.ToString());
        }
    }

    [Fact]
    public async Task An_answer_asked_for_by_a_program_is_refused_without_a_page()
    {
        using var phone = PhoneApp.Browser(app.Network);
        phone.DefaultRequestHeaders.Accept.Clear();
        using var response = await phone.GetAsync("/api/v1/leftovers", Stop);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Fact]
    public async Task The_pairing_page_says_that_what_is_sent_is_not_encrypted()
    {
        using var phone = PhoneApp.Browser(app.Network);
        var page = await phone.GetStringAsync("/pair", Stop);
        Assert.Contains("not encrypted", page, StringComparison.Ordinal);
        Assert.Contains("inputmode=\"numeric\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_code_lets_one_browser_in_once_and_revoking_puts_it_out()
    {
        using var phone = PhoneApp.Browser(app.Network);
        var code = Code.Show();
        using (var paired = await PairAsync(phone, $" {code[..3]} {code[3..]} ", "kitchen phone"))
        {
            Assert.Equal(HttpStatusCode.Found, paired.StatusCode);
            Assert.Equal("/leftovers", paired.Headers.Location!.ToString());
            var cookie = Assert.Single(paired.Headers.GetValues("Set-Cookie"), c => c.StartsWith(PhoneCookie.Name, StringComparison.Ordinal));
            Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        }

        Assert.Equal(HttpStatusCode.OK, await StatusAsync(phone, "/leftovers"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(phone, "/api/v1/leftovers"));
        Assert.Equal(HttpStatusCode.Found, await StatusAsync(phone, "/pair"));
        foreach (var address in new[] { "/api/v1/backups", "/API/v1/backups/x.db/restore", "/api/v1/import" })
        {
            using var refused = await phone.PostAsync(address, null, Stop);
            Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        }

        using var other = PhoneApp.Browser(app.Network);
        using (var again = await PairAsync(other, code, ""))
        {
            Assert.Equal(HttpStatusCode.Forbidden, again.StatusCode);
        }

        Assert.True(await Phones.RevokeAsync((await Phones.ListAsync(Stop)).First(p => p.Name == "kitchen phone").Id, Stop));
        Assert.Equal(HttpStatusCode.Found, await StatusAsync(phone, "/leftovers"));
    }

    [Fact]
    public async Task A_page_left_open_is_cut_off_when_its_phone_is_revoked()
    {
        using var phone = PhoneApp.Browser(app.Network);
        using var paired = await PairAsync(phone, Code.Show(), "open page");
        var cookie = paired.Headers.GetValues("Set-Cookie").First(c => c.StartsWith(PhoneCookie.Name, StringComparison.Ordinal)).Split(';')[0];
        using var line = new ClientWebSocket();
        line.Options.SetRequestHeader("Cookie", cookie);
        await line.ConnectAsync(new Uri($"ws://{app.Network.Authority}/_blazor"), Stop);
        Assert.Equal(WebSocketState.Open, line.State);
        var id = (await Phones.ListAsync(Stop)).First(p => p.Name == "open page").Id;
        await Phones.RevokeAsync(id, Stop);
        app.Services.GetRequiredService<PhoneLines>().Cut(id);
        await Assert.ThrowsAnyAsync<WebSocketException>(async () =>
        {
            while (true)
            {
                await line.ReceiveAsync(new ArraySegment<byte>(new byte[256]), Stop);
            }
        });
    }

    [Fact]
    public async Task Five_wrong_codes_use_the_code_up()
    {
        using var phone = PhoneApp.Browser(app.Network);
        var code = Code.Show();
        var wrong = code == "000000" ? "000001" : "000000";
        for (var i = 0; i < PairingCode.MostTries; i++)
        {
            using var tried = await PairAsync(phone, wrong, "mine");
            Assert.Equal(HttpStatusCode.Forbidden, tried.StatusCode);
            var page = await tried.Content.ReadAsStringAsync(Stop);
            Assert.Contains("That code is wrong", page, StringComparison.Ordinal);
            Assert.Contains("value=\"mine\"", page, StringComparison.Ordinal);
        }

        using var right = await PairAsync(phone, code, "");
        Assert.Equal(HttpStatusCode.Forbidden, right.StatusCode);
    }

    [Fact]
    public async Task A_cookie_somebody_made_up_is_worth_nothing()
    {
        using var phone = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = app.Network };
        phone.DefaultRequestHeaders.Add("Cookie", $"{PhoneCookie.Name}={Guid.NewGuid():N}");
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync(phone, "/leftovers"));
    }

    [Fact]
    public async Task A_form_from_another_page_pairs_nobody()
    {
        using var phone = PhoneApp.Browser(app.Network);
        using var response = await phone.PostAsync("/pair", new FormUrlEncodedContent([new("code", Code.Show())]), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.True(Code.IsShown);
    }

    [Theory]
    [InlineData("rebound.example")]
    [InlineData("127.0.0.1.example")]
    public async Task A_name_from_elsewhere_is_turned_away_at_both_doors(string host)
    {
        foreach (var door in new[] { app.Network, app.Desk })
        {
            using var browser = PhoneApp.Browser(door);
            using var request = new HttpRequestMessage(HttpMethod.Get, "/pair") { Headers = { Host = host } };
            using var response = await browser.SendAsync(request, Stop);
            Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        }
    }

    [Fact]
    public async Task At_the_computer_itself_nothing_is_asked()
    {
        using var desk = PhoneApp.Browser(app.Desk);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(desk, "/leftovers"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(desk, "/api/v1/leftovers"));
        Assert.Equal(HttpStatusCode.Found, await StatusAsync(desk, "/pair"));
    }

    private static async Task<HttpStatusCode> StatusAsync(HttpClient client, string path)
    {
        using var response = await client.GetAsync(path, Stop);
        return response.StatusCode;
    }

    private static async Task<HttpResponseMessage> PairAsync(HttpClient phone, string code, string name)
    {
        var hidden = Hidden().Match(await phone.GetStringAsync("/pair", Stop));
        return await phone.PostAsync("/pair", new FormUrlEncodedContent([new(hidden.Groups["field"].Value, hidden.Groups["token"].Value), new("code", code), new("name", name)]), Stop);
    }

    [GeneratedRegex("type=\"hidden\" name=\"(?<field>[^\"]+)\" value=\"(?<token>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Hidden();
}
