using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store;
using Xunit;

namespace StashMatch.Web.Tests.Pages.KnittingSheet;

/// <summary>A bag, a plan and its sheet through the front door, as a browser without scripts sees them.</summary>
public abstract partial class SheetPages : IDisposable
{
    protected const string Question = "/can-i-make?hat=practice-hat&size=D&keep=brim~oat&keep=crown~oat";

    private static readonly (string Id, double Grams, double Yards)[] Bag = [("oat", 18.0, 250), ("moss", 9, 240), ("plum", 8.5, 250), ("rust", 9, 230), ("teal", 15, 250)];

    protected SheetPages() => Client = App.CreateClient(new() { BaseAddress = new Uri("http://127.0.0.1"), AllowAutoRedirect = false });

    protected static CancellationToken Stop => TestContext.Current.CancellationToken;

    private protected HomeApp App { get; } = new();

    protected HttpClient Client { get; }

    protected PlanStore Plans => App.Services.GetRequiredService<PlanStore>();

    public void Dispose()
    {
        Client.Dispose();
        App.Dispose();
        GC.SuppressFinalize(this);
    }

    protected Task LogAsync() => LogAsync(Bag, 0.1);

    protected async Task LogAsync(IEnumerable<(string Id, double Grams, double Yards)> bag, double step)
    {
        foreach (var (id, grams, yards) in bag)
        {
            using var answer = await Client.PostAsJsonAsync(
                "/api/v1/leftovers", new { id, name = char.ToUpperInvariant(id[0]) + id[1..], grams, scaleStepGrams = step, label = new { grams = 100, yards }, weightClass = 3, fibre = "100% wool" }, Stop);
            Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        }
    }

    // Knitted from the answer, then given a name.
    protected async Task<string> SaveAsync(string name, string question = Question)
    {
        var at = await GoAsync(question, "save-plan");
        Assert.True((await Plans.RenameAsync(at["/plans/".Length..], name, Stop)).Saved);
        return at;
    }

    protected async Task<string> TextAsync(string address)
    {
        using var response = await Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await response.Content.ReadAsStringAsync(Stop);
    }

    protected async Task<string> GoAsync(string address, string handler, params (string Name, string Value)[] values)
    {
        using var response = await PostAsync(address, handler, values);
        Assert.Equal(HttpStatusCode.Found, response.StatusCode);
        return response.Headers.Location?.OriginalString.Replace("http://127.0.0.1", "", StringComparison.Ordinal) ?? "";
    }

    protected async Task<HttpResponseMessage> PostAsync(string address, string handler, params (string Name, string Value)[] values)
    {
        var token = Token().Match(await TextAsync(address)).Groups["token"].Value;
        return await Client.PostAsync(
            new Uri(address, UriKind.Relative),
            new FormUrlEncodedContent([KeyValuePair.Create("__RequestVerificationToken", token), KeyValuePair.Create("_handler", handler), .. values.Select(v => KeyValuePair.Create(v.Name, v.Value))]),
            Stop);
    }

    protected static string Plain(string html) => Spaces().Replace(WebUtility.HtmlDecode(Tags().Replace(html, " ")), " ");

    [GeneratedRegex("__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"", RegexOptions.ExplicitCapture)]
    private static partial Regex Token();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
