using System.Globalization;
using System.Text;

namespace StashMatch.Web.Pieces;

/// <summary>One length of yarn as it lies on a ruler, in per cent of the ruler.</summary>
/// <param name="Yarn">Its yarn's place among <see cref="StrandArt.Tiles"/>.</param>
/// <param name="Goes">Where what goes in ends.</param>
/// <param name="Held">Where what stays on the ball ends; the same as <paramref name="Goes"/> where nothing stays.</param>
public sealed record Strand(int Yarn, decimal Goes, decimal Held)
{
    /// <summary>Where the length wanted ends, reserve in; null where it is not marked.</summary>
    public decimal? Wanted { get; init; }

    /// <summary>Whether it is too short: its end is frayed and the way to <see cref="Wanted"/> dotted.</summary>
    public bool Short { get; init; }

    /// <summary>Whether its length is a guess: its end is frayed.</summary>
    public bool Guessed { get; init; }
}

/// <summary>
/// Draws strands of yarn as SVG that is never stretched: one tile a yarn, repeated along a length given in per cent. An outline of yarn and graphite
/// keeps dark wool seen in the dark.
/// </summary>
public static class StrandArt
{
    private const int Wave = 144;

    /// <summary>The tiles strands are filled with, one a yarn, in the order of <paramref name="hexes"/>; null is a yarn whose colour is not known.</summary>
    public static string Tiles(IReadOnlyList<string?> hexes)
    {
        ArgumentNullException.ThrowIfNull(hexes);
        var svg = new StringBuilder("""<svg class="tiles" width="0" height="0" aria-hidden="true"><defs>""");
        for (var i = 0; i < hexes.Count; i++)
        {
            Tile(svg, $"yarn-{i}", hexes[i], 46, 8, 1.3);
            Tile(svg, $"proof-{i}", hexes[i], 28, 9.6, 2.4);
        }

        return svg.Append("</defs></svg>").ToString();
    }

    /// <summary>The strand under the word.</summary>
    public static string Proof(Strand strand, string label)
    {
        ArgumentNullException.ThrowIfNull(strand);
        var svg = new StringBuilder($"""<svg class="strand" width="100%" height="28" role="img" aria-label="{Escaped(label)}">""");
        Lie(svg, strand, $"proof-{strand.Yarn}", 14, 28, 4.8);
        return svg.Append("</svg>").ToString();
    }

    /// <summary>The strands of one row: one full, or two thin ones.</summary>
    public static string Row(IReadOnlyList<Strand> strands, IReadOnlyList<string?> hexes)
    {
        ArgumentNullException.ThrowIfNull(strands);
        ArgumentNullException.ThrowIfNull(hexes);
        var svg = new StringBuilder("""<svg class="strand" width="100%" height="46" aria-hidden="true">""");
        if (strands.Count == 1)
        {
            Lie(svg, strands[0], $"yarn-{strands[0].Yarn}", 23, 46, 4);
        }
        else
        {
            for (var i = 0; i < strands.Count; i++)
            {
                Thin(svg, strands[i], hexes[strands[i].Yarn], 17.5 + (11 * i));
            }
        }

        return svg.Append("</svg>").ToString();
    }

    private static void Lie(StringBuilder svg, Strand strand, string tile, double middle, double height, double half)
    {
        if (strand.Goes > 0)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $"""<rect x="{half:0.#}" height="{height:0}" style="width:max(0px, calc({N(strand.Goes)}% - {half:0.#}px))" fill="url(#{tile})"/>""")
                .Append(CultureInfo.InvariantCulture,
                    $"""<svg width="{half:0.#}" height="{height:0}">""")
                .Append(CultureInfo.InvariantCulture, $"""<rect y="{middle - half:0.#}" width="{half * 4:0.#}" height="{half * 2:0.#}" """)
                .Append(CultureInfo.InvariantCulture, $"""rx="{half:0.#}" fill="url(#{tile})"/></svg>""");
        }

        if (strand.Held - strand.Goes > 0.4m)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $"""<rect class="stays" x="{N(strand.Goes)}%" height="{height:0}" width="{N(strand.Held - strand.Goes)}%" fill="url(#{tile})"/>""");
        }

        var end = Math.Max(strand.Goes, strand.Held);
        if (strand.Short || strand.Guessed)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $"""<svg x="{N(end)}%" y="{middle:0}" overflow="visible" class="fray"><path d="M-1-3.5q5 0 9-3M-1 0q5-1 10 1M-1 3q5 0 8 4"/></svg>""");
        }

        if (strand.Wanted is { } wanted)
        {
            var from = end + (strand.Short ? 2 : 0.8m);
            if (wanted - from > 1)
            {
                svg.Append(CultureInfo.InvariantCulture,
                    $"""<line class="wanted" x1="{N(from)}%" x2="{N(wanted - 0.6m)}%" y1="{middle:0.#}" y2="{middle:0.#}"/>""");
            }

            svg.Append(CultureInfo.InvariantCulture,
                $"""<svg x="{N(wanted)}%" y="{middle:0.#}" overflow="visible"><path class="bracket" d="M-6-11H0V11H-6"/></svg>""");
        }
    }

    private static void Thin(StringBuilder svg, Strand strand, string? hex, double middle)
    {
        var colour = hex is null ? "var(--pencil)" : hex;
        var edge = $"color-mix(in srgb,{colour} 62%,var(--graphite))";
        svg.Append(CultureInfo.InvariantCulture,
            $"""<rect x="0.5" y="{middle - 2.5:0.#}" height="5" width="{N(Math.Max(strand.Goes, 0.6m))}%" fill="{colour}" style="stroke:{edge}"/>""");
        var stays = N(strand.Held - strand.Goes);
        if (strand.Held - strand.Goes > 0.3m)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $"""<rect class="stays" x="{N(strand.Goes)}%" y="{middle - 2:0.#}" height="4" width="{stays}%" fill="{colour}" style="stroke:{edge}"/>""");
        }

        if (strand.Short && strand.Wanted is { } wanted)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $"""<line class="wanted" x1="{N(strand.Goes + 1)}%" x2="{N(wanted)}%" y1="{middle:0.#}" y2="{middle:0.#}"/>""");
        }
    }

    // A wave of yarn: its edge, itself, its ply, and a few loose fibres.
    private static void Tile(StringBuilder svg, string id, string? hex, int height, double thick, double swing)
    {
        var colour = hex is null ? "var(--pencil)" : hex;
        var middle = height / 2.0;
        double At(double x) => middle + (swing * Math.Sin(2 * Math.PI * x / Wave)) + (0.25 * swing * Math.Sin((4 * Math.PI * x / Wave) + 1));
        var path = new StringBuilder();
        for (var x = -6; x <= Wave + 6; x += 6)
        {
            path.Append(CultureInfo.InvariantCulture, $"{(path.Length == 0 ? 'M' : 'L')}{x} {At(x):0.#}");
        }

        var (ply, fluff) = (new StringBuilder(), new StringBuilder());
        for (var x = 0; x < Wave; x += 6)
        {
            ply.Append(CultureInfo.InvariantCulture, $"M{x} {At(x) + (thick / 2) - 0.6:0.#}q2.2-2.6 4.2-{thick - 1.2:0.#}");
            if (x % 24 == 6)
            {
                var above = x % 48 == 6 ? -1 : 1;
                fluff.Append(CultureInfo.InvariantCulture, $"M{x} {At(x) + (above * thick / 2):0.#}q1.6 {above * 1.4:0.#} 5 {above * 2.1:0.#}");
            }
        }

        svg.Append(CultureInfo.InvariantCulture, $"""<pattern id="{id}" width="{Wave}" height="{height}" patternUnits="userSpaceOnUse">""")
            .Append(CultureInfo.InvariantCulture,
                $"""<path d="{path}" fill="none" stroke-width="{thick + 1.2:0.#}" style="stroke:color-mix(in srgb,{colour} 62%,var(--graphite))"/>""")
            .Append(CultureInfo.InvariantCulture, $"""<path d="{path}" fill="none" stroke-width="{thick:0.#}" stroke="{colour}"/>""")
            .Append(CultureInfo.InvariantCulture,
                $"""<path d="{ply}" fill="none" stroke-linecap="round" opacity=".55" style="stroke:color-mix(in srgb,{colour} 52%,#201c18)"/>""")
            .Append(CultureInfo.InvariantCulture,
                $"""<path d="{fluff}" fill="none" stroke-width=".7" opacity=".7" style="stroke:color-mix(in srgb,{colour} 72%,var(--graphite))"/></pattern>""");
    }

    private static string N(decimal percent) => Shown.Css(Math.Clamp(percent, 0, 100));

    private static string Escaped(string text) => System.Net.WebUtility.HtmlEncode(text);
}
