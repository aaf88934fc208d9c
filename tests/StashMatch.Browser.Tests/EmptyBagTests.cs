using Xunit;
using static Microsoft.Playwright.Assertions;

namespace StashMatch.Browser.Tests;

/// <summary>The answer page while nothing is weighed yet.</summary>
public sealed class EmptyBagTests(LiveApp app) : IClassFixture<LiveApp>
{
    [Fact]
    public async Task The_hat_and_the_first_thing_to_do_stand_above_the_fold()
    {
        Assert.SkipWhen(LiveApp.NoBrowser is not null, LiveApp.NoBrowser ?? "");
        foreach (var (width, height, line, _) in AnswerPageTests.Places)
        {
            var page = await app.PageAsync(width, height: height);
            await page.GotoAsync("/");
            await AnswerPageTests.AboveAsync(page, line, ".pic .wool", ".empty h1", ".empty .go");
            await Expect(page.Locator(".empty .go")).ToHaveTextAsync("Weigh your first ball");
            await page.Context.CloseAsync();
        }
    }
}
