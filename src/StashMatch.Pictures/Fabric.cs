using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>What both views share: fills, stitches, ribs, braids.</summary>
internal static class Fabric
{
    private const string OpenFill = "#8d8a80";

    /// <summary>Patterns and gradients; stitches lie across the rows of the view.</summary>
    public static string Definitions(string id, double stitch, double row, bool sideways)
    {
        var (w, h) = sideways ? (row, stitch) : (stitch, row);
        var v = sideways
            ? $"M0 0L{Pen.N(w)} {Pen.N(h / 2)}L0 {Pen.N(h)}"
            : $"M0 0L{Pen.N(w / 2)} {Pen.N(h)}L{Pen.N(w)} 0";
        return $"<pattern id=\"{id}-knit\" width=\"{Pen.N(w)}\" height=\"{Pen.N(h)}\" patternUnits=\"userSpaceOnUse\"><path d=\"{v}\" fill=\"none\" stroke=\"#000\" stroke-opacity=\".16\" stroke-width=\"{Pen.N(Math.Min(w, h) * .3)}\"/></pattern>"
            + $"<pattern id=\"{id}-gap\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path d=\"M0 0V5\" stroke=\"currentColor\" stroke-opacity=\".38\" stroke-width=\".7\"/></pattern>"
            + $"<linearGradient id=\"{id}-round\"><stop offset=\"0\" stop-opacity=\".34\"/><stop offset=\".28\" stop-opacity=\".04\"/><stop offset=\".55\" stop-color=\"#fff\" stop-opacity=\".12\"/><stop offset=\".78\" stop-opacity=\".05\"/><stop offset=\"1\" stop-opacity=\".36\"/></linearGradient>";
    }

    /// <summary>A part's fill: its yarn, or open and hatched where nothing goes in.</summary>
    public static string Fill(string id, PartPaint? paint) => paint switch
    {
        { Hex: { } hex } => $"fill=\"{Pen.Safe(hex)}\"",
        { Leftover: true } => $"fill=\"{OpenFill}\"",
        _ => $"fill=\"url(#{id}-gap)\" stroke=\"currentColor\" stroke-width=\".8\" stroke-dasharray=\"3 2.4\"",
    };

    /// <summary>Ink that can be read on a yarn.</summary>
    public static string InkOn(PartPaint? paint) => paint switch
    {
        { Hex: { } hex } when YarnColour.TryParse(hex, out var colour, out _) => colour.Lab.L > 56 ? "#23262B" : "#F7F5EF",
        { Leftover: true } => "#23262B",
        _ => "currentColor",
    };

    /// <summary>
    /// A two-strand braid: arrowheads in the two strands' colours in turn, along a band whose place (along, across) each 0 to 1
    /// <paramref name="map"/> puts on the drawing.
    /// </summary>
    public static void Braid(Pen pen, IReadOnlyList<HatPart> strands, IReadOnlyDictionary<string, PartPaint> paint, int arrows, Func<double, double, Spot> map)
    {
        var step = 1.0 / arrows;
        for (var turn = 0; turn < strands.Count; turn++)
        {
            var p = paint.GetValueOrDefault(strands[turn].Name);
            pen.Open(strands[turn].Name, p?.Label ?? strands[turn].Name);
            for (var i = -turn; i < arrows; i += strands.Count)
            {
                double Clip(double along) => Math.Clamp(along, 0, 1);
                var (from, to, point) = (Clip(i * step), Clip((i + 1) * step), step * 0.8);
                pen.Shape(
                    [map(from, 0), map(Clip((i * step) + point), 0.5), map(from, 1), map(to, 1), map(Clip(to + point), 0.5), map(to, 0)],
                    Fill(pen.Id, p) + (strands.Count == 1 ? " stroke=\"#000\" stroke-opacity=\".3\" stroke-width=\".6\"" : ""));
            }

            pen.Close();
        }
    }
}
