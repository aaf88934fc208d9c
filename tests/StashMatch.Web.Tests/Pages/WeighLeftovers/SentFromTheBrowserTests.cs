using System.Text;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using StashMatch.Pictures;
using Xunit;
using Page = StashMatch.Web.Pages.WeighLeftovers.WeighLeftovers;
using TestContext = Xunit.TestContext;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

/// <summary>Photos and pasted rows, as the browser sends them and as it never should.</summary>
public sealed class SentFromTheBrowserTests : PageContext
{
    [Fact]
    public async Task A_photo_s_colours_are_named_and_the_one_chosen_is_the_leftover_s()
    {
        await ReadyAsync();
        Sends("pixels", Photo());
        var page = await OnPhotoAsync();
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".ring").Count));
        Assert.Equal("1", page.FindAll(".ring")[0].TextContent);
        await page.Find(".found").KeyDownAsync(new Microsoft.AspNetCore.Components.Web.KeyboardEventArgs { Key = "2" });
        Assert.Contains("dark green, #27512F", page.Find(".chosen").TextContent, StringComparison.Ordinal);
        Assert.Equal("#27512F", page.Find("#colour").GetAttribute("value"));
    }

    [Theory]
    [InlineData(1, "This browser cannot read the photo")]
    [InlineData(3, "The photo has a size that cannot be read.")]
    [InlineData(300, "The photo arrived incomplete.")]
    [InlineData(PixelBlock.MostBytes + 1, "The photo did not arrive")]
    public async Task Pixels_of_any_wrong_length_are_a_message_and_nothing_else(int length, string message)
    {
        await ReadyAsync();
        var bytes = new byte[length];
        if (length >= 4)
        {
            (bytes[0], bytes[2]) = (20, 20);
        }

        Sends("pixels", bytes);
        var page = await OnPhotoAsync();
        page.WaitForAssertion(() => Assert.Contains(message, page.Find(".photo-colour .field-message").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".ring"));
    }

    [Fact]
    public async Task Nothing_of_a_table_is_kept_before_somebody_says_so_and_bad_rows_have_number_and_reason()
    {
        await ReadyAsync();
        Sends("pasted", Encoding.UTF8.GetBytes("name;grams;label;fibre;shop\nMoss;34;100 g / 210 yd;wool;x\nBad;minus;;;\nOat;2,5;4 oz / 190 yd;90% wool, 30% silk;\nPlum;18,6;20 g / 80 m;;\n"));
        var page = Render<Page>();
        await Button(page, "Check").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("2 rows can be saved. 2 rows cannot be read. Nothing is saved yet.", page.Find(".sum").TextContent, StringComparison.Ordinal));
        Assert.Equal(["Row 3: grams must be a number, such as 34 or 34.5.", "Row 4: fibre the shares come to 120 %, not 100 %."], page.FindAll(".bad li").Select(l => l.TextContent));
        Assert.Contains("Not used: the column shop", page.Find(".many").TextContent, StringComparison.Ordinal);
        Assert.Empty(await Leftovers.ListAsync(TestContext.Current.CancellationToken));
        await Button(page, "Keep the 2 good rows").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("2 rows are saved", page.Find("p.said").TextContent, StringComparison.Ordinal));
        Assert.Equal(["Moss", "Plum"], (await Leftovers.ListAsync(TestContext.Current.CancellationToken)).Select(l => l.Name).Order(StringComparer.Ordinal));
        Assert.Equal(2, page.FindAll(".list > li.row").Count);
    }

    [Fact]
    public async Task A_table_that_cannot_be_read_at_all_says_why()
    {
        await ReadyAsync();
        Sends("pasted", Encoding.UTF8.GetBytes("Moss;34\nOat;2"));
        var page = Render<Page>();
        await Button(page, "Check").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("The first row must name the columns", page.Find(".many .field-message").TextContent, StringComparison.Ordinal));
    }

    private static byte[] Photo()
    {
        const int side = 40;
        var bytes = new byte[PixelBlock.HeadBytes + (side * side * 3)];
        (bytes[0], bytes[2]) = (side, side);
        for (var pixel = 0; pixel < side * side; pixel++)
        {
            byte[] colour = pixel % side is > 12 and < 26 ? [0x27, 0x51, 0x2F] : [0xF0, 0xEA, 0xE0];
            colour.CopyTo(bytes, PixelBlock.HeadBytes + (3 * pixel));
        }

        return bytes;
    }

    private static AngleSharp.Dom.IElement Button(IRenderedComponent<Page> page, string text) =>
        page.FindAll("button").First(b => b.TextContent.StartsWith(text, StringComparison.Ordinal));

    private void Sends(string name, byte[] bytes)
    {
        var script = JSInterop.SetupModule("./js/weigh.js");
        script.Mode = JSRuntimeMode.Loose;
        script.Setup<IJSStreamReference>(name, _ => true).SetResult(new SentBytes(bytes));
    }

    private async Task<IRenderedComponent<Page>> OnPhotoAsync()
    {
        var page = Render<Page>();
        await page.Find("button.choose").ClickAsync();
        await Button(page, "from a photo").ClickAsync();
        await page.Find("#photo").ChangeAsync(new ChangeEventArgs());
        return page;
    }
}
