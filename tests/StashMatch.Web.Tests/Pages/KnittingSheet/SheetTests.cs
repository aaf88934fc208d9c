using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using Xunit;

namespace StashMatch.Web.Tests.Pages.KnittingSheet;

/// <summary>Plans and the sheet through the front door, as a browser without scripts sees them.</summary>
public sealed partial class SheetTests : SheetPages
{
    [Fact]
    public async Task An_answer_is_saved_as_a_plan_and_its_yarn_is_kept_for_it()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        Assert.Matches("^/plans/plan-[0-9a-f]+$", at);
        var plan = Assert.Single(await Plans.ListAsync(Stop));
        Assert.Equal(("Winter hat", "practice-hat", "D", 4, true), (plan.Name, plan.Hat, plan.Size, plan.Stripes, plan.Reserves));
        Assert.Equal(40.4m, Math.Round(plan.Parts.Where(p => p.Leftover == "oat").Sum(p => p.Length.Value) / Metres.PerYard, 1));
        Assert.Equal(10, plan.Parts.Count);
        Assert.Contains("Winter hat", await TextAsync("/plans"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_clash_says_which_leftover_is_promised_to_which_other_plan_and_saves_nothing()
    {
        await LogAsync();
        var first = await SaveAsync("Winter hat");
        using var second = await PostAsync(Question, "save-plan");
        Assert.Equal(HttpStatusCode.OK, second.StatusCode);
        var text = await second.Content.ReadAsStringAsync(Stop);
        Assert.Contains("Not saved: another hat needs some of this yarn.", text, StringComparison.Ordinal);
        Assert.Matches($"Oat</strong>: 37.0 m needed.*<a href=\"{first}\"[^>]*>Winter hat</a> keeps 36.9 m", text);
        Assert.Single(await Plans.ListAsync(Stop));

        // Without keeping yarn for it, it is knitted all the same; a second hat of one kind gets a number.
        foreach (var name in new[] { "Practice hat, size D, 4 stripes", "Practice hat, size D, 4 stripes (2)" })
        {
            await GoAsync(Question, "save-plan", ("plan-free", "yes"));
            Assert.Contains(await Plans.ListAsync(Stop), p => p.Name == name && !p.Reserves);
        }
    }

    [Fact]
    public async Task A_plans_question_is_asked_again_with_its_own_yarn_and_the_plan_changed_to_the_answer()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        var named = await TextAsync(Question);
        Assert.Contains("4.2 m / 4.6 yd free", named, StringComparison.Ordinal);
        var again = WebUtility.HtmlDecode(Regex.Match(await TextAsync(at), "href=\"(/can-i-make[^\"]*)\"[^>]*>Change this hat").Groups[1].Value);
        Assert.Contains($"&plan={at["/plans/".Length..]}", again, StringComparison.Ordinal);
        var text = await TextAsync(again);
        Assert.Contains("Change “Winter hat” to this", WebUtility.HtmlDecode(text), StringComparison.Ordinal);
        var version = (await Plans.FindAsync(at["/plans/".Length..], Stop))!.Version;
        var smaller = again.Replace("size=D", "size=C", StringComparison.Ordinal);
        Assert.Equal(at, await GoAsync(smaller, "save-plan", ("plan-over", version.ToString())));
        var plan = Assert.Single(await Plans.ListAsync(Stop));
        Assert.Equal(("Winter hat", "C", true), (plan.Name, plan.Size, plan.Reserves));
        using var late = await PostAsync(smaller, "save-plan", ("plan-over", version.ToString()));
        Assert.Contains("This hat was changed in another window.", await late.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_its_token_changes_nothing()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        using var bare = await Client.PostAsync(new Uri(at, UriKind.Relative), new FormUrlEncodedContent([KeyValuePair.Create("_handler", "tick"), KeyValuePair.Create("tick", "brim")]), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, bare.StatusCode);
        Assert.Null(Assert.Single(await Plans.ListAsync(Stop)).Sheet);
    }

    [Fact]
    public async Task The_sheet_is_complete_in_the_page_and_a_tick_is_kept_at_once()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        var text = await TextAsync(at);
        foreach (var said in new[] { "Winter hat", "Wind off first", "Wind off", ">Oa<", "first colour: ", "Set-up", "Over, in the round: ", "Under: ", "Weave in", "Join. ", "yes" })
        {
            Assert.Contains(said, text, StringComparison.Ordinal);
        }

        Assert.True(text.IndexOf("id=\"step-brim\"", StringComparison.Ordinal) < text.IndexOf("id=\"step-braid-1\"", StringComparison.Ordinal));
        Assert.True(text.IndexOf("id=\"step-stripe-4\"", StringComparison.Ordinal) < text.IndexOf("id=\"step-crown\"", StringComparison.Ordinal));
        Assert.Equal($"{at}#step-braid-1", await GoAsync(at, "tick", ("tick", "braid 1")));
        Assert.Matches("value=\"braid 1\" aria-pressed=\"true\"", await TextAsync(at));

        // Ticked again from a page that does not know it yet, it stays ticked.
        await GoAsync(at, "tick", ("tick", "braid 1"));
        Assert.Matches("value=\"braid 1\" aria-pressed=\"true\"", await TextAsync(at));
        await GoAsync(at, "tick", ("open", "braid 1"));
        Assert.DoesNotContain("aria-pressed=\"true\"", await TextAsync(at), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Weighed_half_way_the_crown_is_forecast_at_the_rate_just_measured()
    {
        // Worked by hand: 11.6 g used are 29.0 yd against 26.5 planned; 16.0 yd are left for a crown of 15.3.
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        using var early = await PostAsync(at, "weigh", ("ball", "oat"), ("grams", "6,4"), ("core", ""), ("step", "0.1"));
        Assert.Contains("has no part ticked off yet", await early.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        await GoAsync(at, "tick", ("tick", "brim"));
        using var heavy = await PostAsync(at, "weigh", ("ball", "oat"), ("grams", "18"), ("core", ""), ("step", "0.1"));
        Assert.Contains("must be less than the 18 g it weighed", await heavy.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal($"{at}#ahead", await GoAsync(at, "weigh", ("ball", "oat"), ("grams", "6,4"), ("core", ""), ("step", "0.1")));
        var text = Plain(await TextAsync(at));
        foreach (var said in new[]
        {
            "only just", "used 26.5 m / 29.0 yd, planned 24.2 m / 26.5 yd: 9.4 % more than planned", "left 6.4 g, 14.6 m / 16.0 yd",
            "Start the crown only if the ball weighs 6.1 g or more. It takes 14.0 m / 15.3 yd.", "At the end 0.7 m / 0.8 yd (0.3 g) left; probably 0 to ",
            "Knit the crown in Teal, the stripe colour with most left", "Decrease a round sooner",
        })
        {
            Assert.Contains(said, text, StringComparison.Ordinal);
        }

        // The bag still knows the ball as it was; its yarn is kept for the plan all the same.
        Assert.Equal(18m, (await App.Services.GetRequiredService<LeftoverStore>().FindAsync("oat", Stop))!.Left.Value);
        await GoAsync(at, "forget", ("forget", "oat"));
        Assert.DoesNotContain("% more than planned", await TextAsync(at), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_finished_plan_books_what_it_took_and_sets_the_rest_free()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        foreach (var step in new[] { "brim", "braid 1", "stripe 1", "stripe 2", "braid 2", "stripe 3", "stripe 4", "crown" })
        {
            await GoAsync(at, "tick", ("tick", step));
        }

        using var much = await PostAsync(at, "finish", ("left-0", "19"));
        Assert.Contains("cannot be more than the 18 g", await much.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        await GoAsync(at, "finish", ("left-0", "0,4"));
        var plan = Assert.Single(await Plans.ListAsync(Stop));
        Assert.NotNull(plan.FinishedAt);
        var bag = await App.Services.GetRequiredService<LeftoverStore>().ListAsync(Stop);
        Assert.Equal(0.4m, bag.Single(l => l.Id == "oat").Left.Value);
        Assert.All(bag, l => Assert.Equal(0, l.Promised.Millimetres));

        // Teal was not weighed: planned 17.2 yd of 37.5, 2.5 yd to the gram.
        Assert.InRange(bag.Single(l => l.Id == "teal").Left.Value, 8.11m, 8.13m);
        Assert.DoesNotContain("Use it for my next hats", await TextAsync(at), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_plan_of_measurements_taught_is_offered_once_and_used_from_then_on()
    {
        using var logged = await Client.PostAsJsonAsync("/api/v1/leftovers", new { id = "wool", name = "Wool", grams = 120.0, scaleStepGrams = 0.1, label = new { grams = 100, metres = 400 }, weightClass = 1 }, Stop);
        var at = await SaveAsync("Plain hat", "/can-i-make?hat=brim-up-sample&size=A&stripes=4&arrangement=as-it-falls&nextDoor=blend&leftover=wool");
        foreach (var step in Steps().Matches(await TextAsync(at)).Select(m => m.Groups["key"].Value).ToList())
        {
            await GoAsync(at, "tick", ("tick", step));
        }

        await GoAsync(at, "finish", ("left-0", "85"));
        var text = await TextAsync(at);
        var used = Compared().Match(text);
        Assert.True(used.Success, text);
        await GoAsync(at, "learn");
        var known = Assert.Single(await App.Services.GetRequiredService<KnitterStore>().ListAsync(Stop));

        // Most knitters use 1.10 times the yarn in the stitches alone.
        var percent = Math.Round(100 * ((known.Calibration.Factor / 1.10) - 1));
        Assert.Equal(($"{Math.Abs(percent)}", percent > 0 ? "more" : "less"), (used.Groups["percent"].Value, used.Groups["which"].Value));
        Assert.DoesNotContain("Use it for my next hats", await TextAsync(at), StringComparison.Ordinal);

        // The offer is gone, and sending it once more adds nothing.
        using var again = await PostAsync(at, "learn");
        Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);
        Assert.Single(await App.Services.GetRequiredService<KnitterStore>().ListAsync(Stop));
    }

    [Fact]
    public async Task The_file_handed_on_holds_all_it_needs_and_asks_nothing_of_anybody()
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        using var file = await Client.GetAsync(new Uri($"{at}/share", UriKind.Relative), Stop);
        Assert.Equal("attachment", file.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal("winter-hat.html", file.Content.Headers.ContentDisposition.FileName);
        var text = await file.Content.ReadAsStringAsync(Stop);
        Assert.StartsWith("<!DOCTYPE html>", text, StringComparison.Ordinal);
        Assert.Contains("<svg", text, StringComparison.Ordinal);
        Assert.Contains("@media print", text, StringComparison.Ordinal);
        Assert.Contains("Weave in", text, StringComparison.Ordinal);
        foreach (var forbidden in new[] { "<script", "<link", "<button", "<form", "src=", "@import" })
        {
            Assert.DoesNotContain(forbidden, text, StringComparison.Ordinal);
        }

        // A drawing points at its own pieces only.
        Assert.DoesNotMatch("href=\"[^#]|url\\([^#]", text);
    }

    [Theory]
    [InlineData("large")]
    [InlineData("words")]
    public async Task Large_print_and_the_words_say_the_same_without_signs(string form)
    {
        await LogAsync();
        var at = await SaveAsync("Winter hat");
        var text = await TextAsync($"{at}?form={form}");
        Assert.Contains($"class=\"sheet {form}\"", text, StringComparison.Ordinal);
        Assert.Contains("The first colour is", text, StringComparison.Ordinal);
        Assert.Contains("metres or", text, StringComparison.Ordinal);
        Assert.Equal($"{at}?form={form}#step-brim", await GoAsync($"{at}?form={form}", "tick", ("tick", "brim")));
    }

    [Fact]
    public async Task Plans_are_renamed_copied_set_free_kept_again_and_deleted()
    {
        Assert.Contains("You are knitting nothing yet", await TextAsync("/plans"), StringComparison.Ordinal);
        await LogAsync();
        var id = (await SaveAsync("Winter hat"))["/plans/".Length..];
        Assert.Equal("/plans?said=renamed", await GoAsync("/plans", $"rename-{id}", ("name", "Frost hat")));
        Assert.Equal("/plans?said=copied", await GoAsync("/plans", $"copy-{id}"));
        var copy = (await Plans.ListAsync(Stop)).Single(p => p.Id != id);
        Assert.Equal(("Frost hat (2)", false), (copy.Name, copy.Reserves));
        using var clash = await PostAsync("/plans", $"reserve-{copy.Id}");
        Assert.Contains("is kept for Frost hat", await clash.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal("/plans?said=free", await GoAsync("/plans", $"reserve-{id}"));
        Assert.Equal("/plans?said=kept", await GoAsync("/plans", $"reserve-{copy.Id}"));
        Assert.Equal("/plans?said=deleted", await GoAsync("/plans", $"delete-{id}"));
        Assert.Equal("Frost hat (2)", Assert.Single(await Plans.ListAsync(Stop)).Name);
        using var gone = await Client.GetAsync(new Uri($"/plans/{id}", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("\"anything\"", "no sheet")]
    [InlineData("{\"address\":\"/can-i-make?x\",\"allowancePercent\":10,\"hat\":{\"parts\":null}}", "{\"done\":null}")]
    [InlineData("{\"hat\":{}}", "{\"done\":[\"brim\"],\"start\":{\"oat\":{\"grams\":-1,\"tare\":0,\"step\":0}},\"weighed\":{}}")]
    public async Task A_plan_another_program_saved_has_a_sheet_all_the_same(string? question, string? sheet)
    {
        await LogAsync();
        var saved = await Plans.SaveAsync(new NewPlan("From afar", "no-such-hat", "Q", 3, "as-it-falls", [new PlannedPart("oat", "stripe 1", 5_000), new PlannedPart("oat", "a tassel", 500)]) { Question = question }, Stop);
        await Plans.KeepSheetAsync(saved.Id!, sheet, Stop);
        var text = await TextAsync($"/plans/{saved.Id}");
        Assert.Contains("a tassel", text, StringComparison.Ordinal);
        await GoAsync($"/plans/{saved.Id}", "tick", ("tick", "a tassel"));
        Assert.Contains("aria-pressed=\"true\"", await TextAsync($"/plans/{saved.Id}"), StringComparison.Ordinal);
    }

    [GeneratedRegex("name=\"tick\" value=\"(?<key>[^\"]+)\"", RegexOptions.ExplicitCapture)]
    private static partial Regex Steps();

    [GeneratedRegex("You used (?<percent>[0-9]+) % (?<which>more|less) yarn than most knitters", RegexOptions.ExplicitCapture)]
    private static partial Regex Compared();
}
