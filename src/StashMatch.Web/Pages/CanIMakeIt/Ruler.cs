using System.Globalization;
using System.Text;
using StashMatch.Knitting.Quantities;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>The one ruler of the page: metres on one edge, yards on the other, the knitter's own first.</summary>
/// <param name="FullMetres">Where it ends.</param>
public sealed record Ruler(decimal FullMetres)
{
    private static readonly decimal[] Steps = [1, 2, 5, 10, 20, 40, 50, 100, 200, 500, 1000, 2000, 5000, 10000];

    /// <summary>A ruler on which the longest of these has room.</summary>
    public static Ruler For(IEnumerable<Metres> lengths)
    {
        var longest = lengths.Select(l => l.Value).DefaultIfEmpty(10).Max();
        return new Ruler(Math.Max(5, longest * 1.06m));
    }

    /// <summary>Where a length lies, in per cent.</summary>
    public decimal At(Metres length) => Math.Clamp(length.Value / FullMetres * 100, 0, 100);

    /// <summary>How far apart the lines across the rows are, in per cent: the marks of the first edge.</summary>
    public decimal Step => Marked(Own ? FullMetres : FullMetres / Metres.PerYard, 6) / (Own ? FullMetres : FullMetres / Metres.PerYard) * 100;

    private static bool Own => Habits.Now.FirstUnit == Knitting.Yarns.LengthUnit.Metres;

    /// <summary>Drawn with so many figures at most on an edge.</summary>
    public string Draw(int figures)
    {
        var svg = new StringBuilder("""<svg class="ruler-art" width="100%" height="36" aria-hidden="true">""")
            .Append("""<rect x=".5" y=".5" height="35" style="width:calc(100% - 1px)"/>""");
        var (metres, yards) = ((FullMetres, "m"), (FullMetres / Metres.PerYard, "yd"));
        Edge(svg, Own ? metres : yards, figures, top: true);
        Edge(svg, Own ? yards : metres, figures, top: false);
        return svg.Append("</svg>").ToString();
    }

    private static void Edge(StringBuilder svg, (decimal Full, string Unit) edge, int figures, bool top)
    {
        var step = Marked(edge.Full, figures);
        var parts = figures > 3 ? 4 : 2;
        for (var i = 1; i * step / parts < edge.Full * 0.985m; i++)
        {
            var at = i * step / parts;
            var percent = at / edge.Full * 100;
            var reach = i % parts == 0 ? 8 : i % 2 == 0 ? 5 : 3.5;
            svg.Append(CultureInfo.InvariantCulture,
                $"""<line x1="{percent:0.##}%" x2="{percent:0.##}%" y1="{(top ? 0 : 36)}" y2="{(top ? reach : 36 - reach):0.#}"/>""");
            if (i % parts == 0 && percent < 90)
            {
                svg.Append(CultureInfo.InvariantCulture,
                    $"""<text x="{percent:0.##}%" y="{(top ? 14 : 32)}" dx="3">{at:0.#}{(i == parts ? " " + edge.Unit : "")}</text>""");
            }
        }
    }

    private static decimal Marked(decimal full, int figures) => Array.Find(Steps, s => full / s <= figures) is > 0 and var found ? found : Steps[^1];
}
