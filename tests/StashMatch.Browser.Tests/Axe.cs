using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace StashMatch.Browser.Tests;

/// <summary>Looks a page over for what keeps people out.</summary>
public static class Axe
{
    /// <summary>Fails where axe finds anything, and tells what and where.</summary>
    public static async Task CheckAsync(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var result = await page.RunAxe();
        Assert.True(result.Violations.Length == 0, string.Join("\n", result.Violations.Select(Told)));
    }

    private static string Told(AxeResultItem v) => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}";
}
