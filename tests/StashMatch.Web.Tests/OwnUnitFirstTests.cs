using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using Xunit;

namespace StashMatch.Web.Tests;

/// <summary>The knitter's own unit stands first wherever two are shown.</summary>
public sealed partial class OwnUnitFirstTests : IDisposable
{
    private readonly DemoApp _app = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/leftovers")]
    [InlineData("/leftovers/tags")]
    [InlineData("/settings")]
    [InlineData("/can-i-make?hat=side-to-side-sample&size=F&stripes=6")]
    [InlineData("/from-this-bag?hat=side-to-side-sample&size=H&size=A&arrangement=own-colours&depthSize=A&least=6&chosen=quince&chosen=rosehip&chosen=damson&chosen=gooseberry")]
    [InlineData("/hats")]
    [InlineData("/tables?hat=side-to-side-sample&size=C&from=6&to=6")]
    [InlineData("/tables.txt?hat=side-to-side-sample&size=C&from=6&to=6")]
    public async Task Two_units_stand_in_the_order_of_the_settings(string address)
    {
        using var client = _app.Client;
        var text = await TextAsync(client, address);
        Assert.Empty(YardsFirst().Matches(text).Select(m => m.Value));
        var metres = MetresFirst().Count(text);
        Assert.True(metres > 0, text);
        await _app.Services.GetRequiredService<Habits>().SaveAsync(new Settings { FirstUnit = LengthUnit.Yards }, Stop);
        text = await TextAsync(client, address);
        Assert.Empty(MetresFirst().Matches(text).Select(m => m.Value));
        Assert.Equal(metres, YardsFirst().Count(text));
    }

    public void Dispose() => _app.Dispose();

    // Words alone: a tape's edges and a printed label's ratio have one unit each.
    private static async Task<string> TextAsync(HttpClient client, string address)
    {
        var html = await client.GetStringAsync(new Uri(address, UriKind.Relative), Stop);
        return WebUtility.HtmlDecode(Tags().Replace(html, " "));
    }

    [GeneratedRegex(@"\d m( / | +)[\d.]+ yd\b|\d cm( / | +)[\d.⅛¼⅜½⅝¾⅞]+ in\b|\d m\r?\n[^\n]*\d yd\r?\n", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex MetresFirst();

    [GeneratedRegex(@"\d yd( / | +)[\d.]+ m\b|[\d⅛¼⅜½⅝¾⅞] in( / | +)[\d.]+ cm\b|\d yd\r?\n[^\n]*\d m\r?\n", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex YardsFirst();

    [GeneratedRegex("<(?<tag>style|script|svg)[^>]*>.*?</\\k<tag>>|<[^>]*>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Tags();
}
