using System.Runtime.CompilerServices;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace StashMatch.Pictures.Tests;

/// <summary>Small pictures kept beside this file. Where a change is meant, delete them and run again: what is missing is painted, and fails once.</summary>
public sealed class WoolGoldenTests
{
    private static readonly Dictionary<string, WoolView> Views = new(StringComparer.Ordinal)
    {
        ["side"] = new(110),
        ["up"] = new(110, Tilt: WoolView.Above),
        ["up-folded-braids"] = new(110, 3.0, OnDark: true),
        ["side-single"] = new(110, 1, WoolView.Half),
        ["printed"] = new(110, Height: 100),
    };

    public static TheoryData<string> Names => [.. Views.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_hat_looks_as_it_did(string name)
    {
        var file = Path.Combine(Here(), "golden", $"{name}.png");
        var now = WoolPicture.Png(Wools.All().First(h => h.Name == name).Hat, Views[name]);
        if (!File.Exists(file))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllBytes(file, now);
            Assert.Fail($"{file} was not there; it is now. Look at it.");
        }

        Assert.InRange(Apart(File.ReadAllBytes(file), now), 0, 0.004);
    }

    [Fact]
    public void Another_colour_or_a_turn_of_a_stripe_would_be_seen()
    {
        var hat = Wools.All().First(h => h.Name == "side").Hat;
        Assert.True(Apart(WoolPicture.Png(hat, new(110)), WoolPicture.Png(hat, new(110, 0))) > 0.02);
    }

    // The mean difference of all channels, colours weighed by their opacity; 0 to 1.
    private static double Apart(byte[] a, byte[] b)
    {
        using var first = Image.Load<Rgba32>(a);
        using var second = Image.Load<Rgba32>(b);
        Assert.Equal((first.Width, first.Height), (second.Width, second.Height));
        var sum = 0.0;
        for (var y = 0; y < first.Height; y++)
        {
            for (var x = 0; x < first.Width; x++)
            {
                var (p, q) = (first[x, y], second[x, y]);
                sum += Math.Abs((p.R * p.A) - (q.R * q.A)) + Math.Abs((p.G * p.A) - (q.G * q.A)) + Math.Abs((p.B * p.A) - (q.B * q.A))
                    + (255 * Math.Abs(p.A - q.A));
            }
        }

        return sum / (first.Width * first.Height * 4.0 * 255 * 255);
    }

    private static string Here([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
}
