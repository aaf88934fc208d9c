using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>A flat scrap of stockinette in a yarn, to stand beside its name.</summary>
internal sealed class WoolSwatch(YarnLook look)
{
    private readonly WoolYarn yarn = new(look, ahead: false, 0);
    private readonly WoolLoops loops = new();

    /// <summary>The colour at a place, in mm: stitches are 3.6 wide and 2.6 high, rows go up.</summary>
    public Ink At(double x, double y)
    {
        const double wide = 3.6;
        const double high = 2.6;
        loops.Clear();
        loops.Knit(x / wide, -y / high, wide, high, 11);
        var k = 0.52 * (1.12 - (0.3 * yarn.Halo));
        double nx = -k * loops.SlopeWale, ny = -k * loops.SlopeCourse;
        var towards = ((nx * -0.46) + (ny * 0.66) + 0.62) / Math.Sqrt((nx * nx) + (ny * ny) + 1);
        var height = loops.Height > 1 ? 1 : loops.Height * (1.28 - (0.28 * loops.Height));
        var light = (0.34 + (0.74 * Clamp((towards + 0.42) / 1.42, 0, 1))) * Mix(0.34, 1.03, height) * (0.95 + (0.1 * Hash(loops.Leg, 0, 12))) * 1.28;
        var row = Math.Max(0, loops.Row + 1000);
        var ink = yarn.Inks[(int)(((x / wide / 9) + (row * 0.6)) * WoolYarn.Steps) % yarn.Inks.Length];
        return new(Byte(ink.Red * light), Byte(ink.Green * light), Byte(ink.Blue * light), 1);
    }
}
