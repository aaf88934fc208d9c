using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Pictures;

namespace StashMatch.Benchmarks;

/// <summary>The hat painted as wool: processor time and the file's size.</summary>
internal static class WoolTables
{
    private static readonly (byte Red, byte Green, byte Blue)[] Yarns = [(0x60, 0x70, 0x7D), (0xA8, 0xB4, 0x5C), (0xB4, 0x36, 0x2C), (0xE0, 0xAE, 0x35),
        (0x26, 0x37, 0x4F), (0x8F, 0x6C, 0x97)];

    public static void Pictures(HatDesign design, int times)
    {
        Table.Head("Hats as wool", "picture", "pixels", "median", "worst", "KB");
        foreach (var (name, stripes, width, tilt) in new[]
        {
            ("front", 6, 440, WoolView.Front), ("from above", 6, 440, WoolView.Above), ("24 stripes", 24, 440, WoolView.Front),
                ("on a phone", 6, 220, WoolView.Front), ("thumbnail", 6, 110, WoolView.Front),
        })
        {
            if (!(design with { StripeCounts = StripeCounts.Any }).TryNeeds("F", stripes, out var needs, out _))
            {
                continue;
            }

            var wool = needs.Parts.Select((p, i) => (p.Name, Look: new YarnLook([Of(Yarns[i % Yarns.Length])]))).ToDictionary(p => p.Name, p =>
                new PartWool(p.Look), StringComparer.Ordinal);
            var (hat, view) = (WoolHat.Of(needs, wool), new WoolView(width, Tilt: tilt));
            var (taken, size) = (new List<double>(), 0);
            for (var i = -3; i < times; i++)
            {
                var (milliseconds, png) = Race.Once(() => WoolPicture.Png(hat, view));
                size = png.Length;
                if (i >= 0)
                {
                    taken.Add(milliseconds);
                }
            }

            Table.Row(name, $"{width}", Table.Figure(Table.Median(taken)), Table.Figure(taken.Max()), $"{size / 1024.0:0.0}");
        }
    }

    private static YarnColour Of((byte Red, byte Green, byte Blue) c) => YarnColour.FromRgb(c.Red, c.Green, c.Blue);
}
