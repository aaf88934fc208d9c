using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>
/// Drawings of a hat as inline SVG. The paint's keys are part names. Yarn colours are plain fills; ink, notes and gaps carry the classes
/// <c>ink</c>, <c>note</c>, <c>gap</c> and <c>paper</c> and fall back on <c>currentColor</c>. Each part is a group with its name in <c>data-part</c>.
/// </summary>
public static class HatDrawing
{
    /// <summary>The hat as it is knitted, stitch-true: panel or tube, the running yarn with a knot where a leftover joins.</summary>
    public static string OffTheNeedles(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint, string id, string title) =>
        Svg(id, pen => FlatDrawing.Draw(Flat.Lay(plan), new Palette(Whole(plan.Parts, paint)), pen, title));

    /// <summary>The hat on the head, from the front; side to side also from above, so that no stripe is hidden.</summary>
    public static string OnTheHead(RowPlan plan, IReadOnlyDictionary<string, PartPaint> paint, string id, string title) =>
        Svg(id, pen => WornDrawing.Draw(WornHat.Of(plan), new Palette(Whole(plan.Parts, paint)), pen, title));

    /// <summary>A hat known only by its printed lengths, on the head: bands as high as their lengths are long.</summary>
    public static string Sketch(IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint, string id, string title) =>
        Svg(id, pen => WornDrawing.Draw(WornHat.Of(parts), new Palette(paint), pen, title));

    // A sideways braid has one strand; it is drawn as a rope of that strand alone.
    internal static IReadOnlyDictionary<string, PartPaint> Whole(IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint)
    {
        var lone = parts.Where(p => p.Strand == 'a' && paint.ContainsKey(p.Name) && !parts.Any(q => q.Strand == 'b' && q.Number == p.Number)).ToList();
        return lone.Count == 0
            ? paint
            : paint.Concat(lone.Select(p => KeyValuePair.Create(PartNames.Strand(p.Number, 'b'), paint[p.Name]))).ToDictionary(StringComparer.Ordinal);
    }

    private static string Svg(string id, Action<IPen> draw)
    {
        var pen = new SvgPen(SvgPen.SafeId(id));
        draw(pen);
        return pen.ToString();
    }
}
