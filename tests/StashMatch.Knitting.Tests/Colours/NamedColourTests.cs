using StashMatch.Knitting.Colours;
using Xunit;

namespace StashMatch.Knitting.Tests.Colours;

public sealed class NamedColourTests
{
    [Fact]
    public void Every_name_is_its_own_and_looks_like_itself()
    {
        Assert.True(NamedColour.All.Count > 40);
        Assert.Equal(NamedColour.All.Count, NamedColour.All.Select(n => n.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(NamedColour.All, n => Assert.Equal(n, NamedColour.Nearest(n.Colour)));
    }

    [Fact]
    public void No_two_names_look_alike()
    {
        foreach (var (n, i) in NamedColour.All.Select((n, i) => (n, i)))
        {
            Assert.All(NamedColour.All.Skip(i + 1), m => Assert.True(ColourDifference.Ciede2000(n.Colour.Lab, m.Colour.Lab) > 5, $"{n.Name} {m.Name}"));
        }
    }

    [Theory]
    [InlineData("#000000", "black")]
    [InlineData("#FFFFFF", "white")]
    [InlineData("#E2D3B2", "cream")]
    [InlineData("#1F3A6E", "dark blue")]
    [InlineData("#5B7A3A", "green")]
    [InlineData("#523063", "dark purple")]
    [InlineData("#8896A4", "blue-grey")]
    [InlineData("#E0AE35", "mustard")]
    public void A_colour_has_the_name_a_knitter_would_give_it(string code, string name)
    {
        Assert.True(YarnColour.TryParse(code, out var colour, out _));
        Assert.Equal(name, NamedColour.Nearest(colour).Name);
    }

    [Theory]
    [InlineData("Dark Green", "#27512F")]
    [InlineData("blue grey", "#8595A5")]
    [InlineData(" #5b7a3a ", "#5B7A3A")]
    [InlineData("5B7", "#55BB77")]
    [InlineData("light blue", "#C2DAEA")]
    [InlineData("Light Green", "#CADCB9")]
    [InlineData("light grey", "#D6D5D1")]
    [InlineData("gray", "#A09F9B")]
    [InlineData("light-gray", "#D6D5D1")]
    [InlineData("teal", "#1F7476")]
    [InlineData("burgundy", "#641B2E")]
    [InlineData("bright red", "#E2161F")]
    [InlineData("light brown", "#BDA999")]
    [InlineData("dark teal", "#134647")]
    [InlineData("bright grey", "#A09F9B")]
    public void A_name_or_a_code_is_read(string typed, string code)
    {
        Assert.True(NamedColour.TryRead(typed, out var colour, out _));
        Assert.Equal(code, colour.Hex);
    }

    [Theory]
    [InlineData("baby blue", "pale blue")]
    [InlineData("olive green", "olive")]
    [InlineData("navy blue", "navy")]
    [InlineData("burgundy red", "burgundy")]
    [InlineData("dark olive green", "dark olive")]
    [InlineData("greyish pink", "pink")]
    [InlineData("Pinkish", "pink")]
    [InlineData("reddish", "red")]
    public void A_word_more_than_needed_is_read_too(string typed, string like)
    {
        Assert.True(NamedColour.TryRead(typed, out var colour, out _));
        Assert.True(NamedColour.TryRead(like, out var plain, out _));
        Assert.Equal(plain, colour);
        Assert.False(NamedColour.TryRead(typed + " elephant", out _, out _));
    }

    [Theory]
    [InlineData("maroon")]
    [InlineData("natural")]
    [InlineData("ecru")]
    [InlineData("aqua")]
    [InlineData("lime")]
    [InlineData("denim")]
    public void A_word_people_type_is_read_though_no_colour_is_called_by_it(string typed)
    {
        Assert.True(NamedColour.TryRead(typed, out var colour, out _));
        Assert.NotEqual(typed, NamedColour.Nearest(colour).Name);
    }

    [Fact]
    public void Light_is_lighter_and_dark_darker_for_every_word()
    {
        foreach (var n in NamedColour.All.Concat(NamedColour.Also).Where(n => n.Name is not ("white" or "black") && !n.Name.Contains("pale", StringComparison.Ordinal) && !n.Name.Contains("dark", StringComparison.Ordinal)))
        {
            Assert.True(NamedColour.TryRead($"light {n.Name}", out var light, out _) && light.Lab.L > n.Colour.Lab.L, n.Name);
            Assert.True(NamedColour.TryRead($"dark {n.Name}", out var dark, out _) && dark.Lab.L < n.Colour.Lab.L, n.Name);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("moonlight")]
    [InlineData("light")]
    [InlineData("light moonlight")]
    [InlineData("light light red")]
    [InlineData("#12345")]
    public void Anything_else_is_a_message(string typed)
    {
        Assert.False(NamedColour.TryRead(typed, out _, out var message));
        Assert.StartsWith("must be a colour such as", message, StringComparison.Ordinal);
    }
}
