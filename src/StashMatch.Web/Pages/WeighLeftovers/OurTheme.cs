using MudBlazor;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>Our paper and ink for the pieces that come from the component library.</summary>
internal static class OurTheme
{
    private static readonly string[] Body = ["Atkinson Hyperlegible Next", "system-ui", "sans-serif"];

    public static MudTheme Home { get; } = new()
    {
        PaletteLight = new PaletteLight { Primary = "#2c4f73", Secondary = "#93372c", Background = "#f3f1ea", Surface = "#fbfaf5", TextPrimary = "#23262b", TextSecondary = "#55585c", ActionDefault = "#55585c" },
        PaletteDark = new PaletteDark { Primary = "#9fc3e6", Secondary = "#eb9a8c", Background = "#1e2023", Surface = "#292b2f", TextPrimary = "#eeebe2", TextSecondary = "#b9b5aa" },
        Typography = new Typography { Default = new DefaultTypography { FontFamily = Body } },
    };
}
