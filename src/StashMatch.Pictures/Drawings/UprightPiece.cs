using System.Globalization;
using System.Text;
using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>
/// The piece as it is knitted, upright: the first row at the top, so that it stands beside a list of its parts in knitting order. Panel or tube, in true
/// proportion, every row of it; the brim of a sideways panel hangs at its left.
/// </summary>
public sealed class UprightPiece
{
    private const double LeastBraid = 5;
    private readonly StringBuilder svg = new();
    private readonly StringBuilder tiles = new();
    private readonly Dictionary<string, Place> ends = new(StringComparer.Ordinal);
    private readonly Palette palette;
    private readonly RowPlan plan;
    private readonly string id;
    private readonly double perCm;
    private readonly double stitch;
    private readonly double row;

    private UprightPiece(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint, string id, double width, double height)
    {
        (this.plan, this.id) = (plan, SvgPen.SafeId(id));
        palette = new(HatDrawing.Whole(plan.Parts, paint));
        var sideways = plan.Construction == Construction.SideToSide;
        var fold = plan.Construction == Construction.BrimUpRound ? 0.5 : 1;
        var cmWide = sideways ? (double)(plan.BrimDepth.Value + plan.BodyHeight.Value)
            : Math.Max(plan.BodyStitches, plan.BrimStitches) / (double)plan.Gauge.StitchesPerCm * fold;
        var cmHigh = sideways ? (double)plan.Circumference.Value : (double)(plan.BodyHeight.Value + plan.BrimDepth.Value);
        perCm = Math.Min(width / cmWide, height / cmHigh);
        (stitch, row) = (perCm / (double)plan.Gauge.StitchesPerCm, perCm / (double)plan.Gauge.RowsPerCm);
        Width = cmWide * perCm;
        Height = sideways ? Panel() : Tube(fold);
    }

    /// <summary>Where a part's own yarn leaves the piece.</summary>
    /// <param name="X">From the left.</param>
    /// <param name="Y">From the top.</param>
    /// <param name="Below">Whether it leaves at the foot, not at the right.</param>
    public readonly record struct Place(double X, double Y, bool Below);

    /// <summary>How wide it is drawn.</summary>
    public double Width { get; }

    /// <summary>How high it is drawn.</summary>
    public double Height { get; }

    /// <summary>Where the yarn of each part leaves it, by part name.</summary>
    public IReadOnlyDictionary<string, Place> Ends => ends;

    /// <summary>Lays the piece out no wider and no higher than this.</summary>
    public static UprightPiece Of(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint, string id, double width, double height)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paint);
        return new(plan, paint, id, width, height);
    }

    /// <summary>The drawing, to stand in an SVG of its measures.</summary>
    public override string ToString() => $"<defs>{tiles}</defs>{svg}";

    private double Panel()
    {
        var brim = (double)plan.BrimDepth.Value * perCm;
        var (top, right) = (0.0, Width);
        foreach (var section in plan.Sections.Where(s => s.Kind is SectionKind.Stripe or SectionKind.Braid))
        {
            var high = section.Kind == SectionKind.Braid ? Math.Max(LeastBraid, section.Rows * row) : section.Rows * row;
            Lay(section, [new(brim, top), new(right, top), new(right, top + high), new(brim, top + high)], top, high, brim, right);
            top += high;
        }

        if (plan.BrimRounds > 0)
        {
            Cloth(PartNames.Brim, [new(0, 0), new(brim, 0), new(brim, top), new(0, top)],
                Ribs(Math.Max(2.6, perCm / (double)plan.Gauge.StitchesPerCm * 2), flat: true), top, 0);
            ends[PartNames.Brim] = new(brim / 2, top, Below: true);
        }

        ends[PartNames.Seam] = new(right - 10, top, Below: true);
        return top;
    }

    private double Tube(double fold)
    {
        var top = 0.0;
        foreach (var section in plan.Sections)
        {
            var rows = Math.Max(1, section.Kind == SectionKind.Brim ? (int)Math.Round((double)plan.BrimDepth.Value * (double)plan.Gauge.RowsPerCm)
                : section.Rows);
            var high = section.Kind == SectionKind.Braid ? Math.Max(LeastBraid, rows * row) : rows * row;
            var runs = section.Runs.Where(r => section.Kind != SectionKind.Brim || r.Pattern == StitchPattern.Rib).ToList();
            var all = Math.Max(1, runs.Sum(r => r.Rows));
            var (left, right) = (new List<Point>(), new List<Point>());
            var at = 0;
            foreach (var run in runs)
            {
                foreach (var edge in new[] { at, at + run.Rows })
                {
                    var half = Math.Min(Width, run.Stitches * stitch * fold) / 2;
                    var y = top + (high * edge / all);
                    left.Add(new((Width / 2) - half, y));
                    right.Add(new((Width / 2) + half, y));
                }

                at += run.Rows;
            }

            if (left.Count == 0)
            {
                continue;
            }

            Lay(section, [.. left, .. Enumerable.Reverse(right)], top, high, left.Min(p => p.X), right.Average(p => p.X));
            top += high;
        }

        ends[PartNames.Seam] = new(Width / 2, top, Below: true);
        return top;
    }

    private void Lay(PlanSection section, IReadOnlyList<Point> outline, double top, double high, double left, double right)
    {
        var middle = top + (high / 2);
        switch (section.Kind)
        {
            case SectionKind.Braid:
                var (a, b) = (PartNames.Strand(section.Number, 'a'), PartNames.Strand(section.Number, 'b'));
                var tile = Chevrons(section.Number, a, b, high, left, top);
                svg.Append(CultureInfo.InvariantCulture,
                    $"""<g class="part" data-part="{PartNames.Braid(section.Number)}"><path d="{Path(outline)}" fill="url(#{tile})"/></g>""");
                (ends[a], ends[b]) = (new(right, middle - 2, false), new(right, middle + 2, false));
                break;
            case SectionKind.Brim:
                Cloth(PartNames.Brim, outline, Ribs(Math.Max(2.6, stitch * 2), flat: false), high, top);
                ends[PartNames.Brim] = new(right, middle, false);
                break;
            default:
                var name = section.Kind == SectionKind.Crown ? PartNames.Crown : PartNames.Stripe(section.Number);
                Cloth(name, outline, Stitches(), high, top);
                ends[name] = new(right, middle, false);
                break;
        }
    }

    private void Cloth(string part, IReadOnlyList<Point> outline, string tile, double high, double top)
    {
        svg.Append(CultureInfo.InvariantCulture, $"""<g class="part" data-part="{part}">""");
        var path = Path(outline);
        var lacks = palette.IsOpen(part) ? 1 : palette.Lacks(part);
        if (lacks > 0)
        {
            svg.Append(CultureInfo.InvariantCulture, $"""<path class="ghost" d="{path}"/>""");
        }

        if (lacks < 1)
        {
            // The last rows are the ones that lack yarn; a sideways brim lacks the rounds furthest from the panel.
            var clip = "";
            if (lacks > 0)
            {
                var (x, width) = part == PartNames.Brim && plan.Construction == Construction.SideToSide ? (outline.Max(p => p.X) * lacks, Width) : (0, Width);
                var bottom = x > 0 ? high : high * (1 - lacks);
                tiles.Append(CultureInfo.InvariantCulture,
                    $"""<clipPath id="{id}-{part.Replace(' ', '-')}"><rect x="{x:0.#}" y="{top:0.#}" width="{width:0.#}" height="{bottom:0.#}"/></clipPath>""");
                clip = $" clip-path=\"url(#{id}-{part.Replace(' ', '-')})\"";
            }

            var hex = palette.Hex(part);
            svg.Append(CultureInfo.InvariantCulture,
                $"""<g{clip}><path d="{path}" fill="{hex ?? "var(--pencil)"}"/><path d="{path}" fill="url(#{tile})"/></g>""");
        }

        svg.Append("</g>");
    }

    private string Stitches()
    {
        var name = $"{id}-knit";
        if (tiles.ToString().Contains($"id=\"{name}\"", StringComparison.Ordinal))
        {
            return name;
        }

        // Each stitch is a V; drawn at twice its size where it would be a blur.
        var (w, h) = (stitch * (stitch < 3 ? 2 : 1), row * (row < 2.2 ? 2 : 1));
        tiles.Append(CultureInfo.InvariantCulture, $"""<pattern id="{name}" width="{w:0.##}" height="{h:0.##}" patternUnits="userSpaceOnUse">""")
            .Append(CultureInfo.InvariantCulture,
                $"""<path d="M0 {h * .1:0.##}L{w / 2:0.##} {h * .9:0.##}L{w:0.##} {h * .1:0.##}" fill="none" """)
            .Append(CultureInfo.InvariantCulture, $"""stroke="#000" stroke-opacity=".17" stroke-width="{h * .34:0.##}"/>""")
            .Append(CultureInfo.InvariantCulture,
                $"""<path d="M0 {h * .55:0.##}L{w / 2:0.##} {h * 1.35:0.##}L{w:0.##} {h * .55:0.##}" fill="none" """)
            .Append(CultureInfo.InvariantCulture, $"""stroke="#fff" stroke-opacity=".13" stroke-width="{h * .3:0.##}"/></pattern>""");
        return name;
    }

    private string Ribs(double wide, bool flat)
    {
        var name = $"{id}-rib";
        var turn = flat ? " patternTransform=\"rotate(90)\"" : "";
        tiles.Append(CultureInfo.InvariantCulture, $"""<pattern id="{name}" width="{wide:0.##}" height="8" patternUnits="userSpaceOnUse"{turn}>""")
            .Append(CultureInfo.InvariantCulture,
                $"""<path d="M{wide * .2:0.##} 0V8" stroke="#000" stroke-opacity=".2" stroke-width="{wide * .3:0.##}"/>""")
            .Append(CultureInfo.InvariantCulture, $"""<path d="M{wide * .7:0.##} 0V8" stroke="#fff" """)
            .Append(CultureInfo.InvariantCulture, $"""stroke-opacity=".12" stroke-width="{wide * .3:0.##}"/></pattern>""");
        return name;
    }

    // Two leaves that lean together, the strands in turn.
    private string Chevrons(int number, string a, string b, double high, double left, double top)
    {
        var (name, leaf) = ($"{id}-braid-{number}", Math.Max(2.6, stitch * 1.1));
        string Leaf(string part, double x)
        {
            var fill = palette.IsOpen(part) ? "none" : palette.Hex(part) ?? "var(--pencil)";
            var d = string.Create(CultureInfo.InvariantCulture,
                $"M{x:0.##} 0h{leaf:0.##}l{leaf * .9:0.##} {high / 2:0.##}l{-leaf * .9:0.##} {high / 2:0.##}h{-leaf:0.##}l{leaf * .9:0.##} {-high / 2:0.##}z");
            var edge = fill == "none" ? "currentColor" : fill;
            return $"""<path d="{d}" fill="{fill}" style="stroke:color-mix(in srgb,{edge} 60%,#201c18)" stroke-width=".5"/>""";
        }

        tiles.Append(CultureInfo.InvariantCulture,
            $"""<pattern id="{name}" x="{left:0.##}" y="{top:0.##}" width="{leaf * 2:0.##}" height="{high:0.##}" patternUnits="userSpaceOnUse">""")
            .Append(Leaf(b, -leaf)).Append(Leaf(a, 0)).Append(Leaf(b, leaf)).Append(Leaf(a, -leaf * 2)).Append("</pattern>");
        return name;
    }

    private static string Path(IReadOnlyList<Point> outline) => SvgWriter.Path([outline], close: true);
}
