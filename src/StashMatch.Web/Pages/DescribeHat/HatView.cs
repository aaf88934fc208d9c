using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Pictures;
using StashMatch.Store;
using StashMatch.Web.Pieces;
using HatText = StashMatch.Questions.HatText;

namespace StashMatch.Web.Pages.DescribeHat;

/// <summary>What is understood of the hat so far: its drawing, its totals, what comes out at another gauge.</summary>
public sealed class HatView
{
    private static readonly string[] Undyed = ["#d9c9a8", "#b9a98a", "#efe6d2"];

    private HatView(Hat hat, string size, HatNeeds? needs, CannotBeKnitted? cannot)
    {
        (Hat, Size, Needs, Cannot) = (hat, size, needs, cannot);
        Row = needs is null ? null : Yardage.Table(hat, [size], [needs.Stripes], 10)[0];
        Paint = needs?.Parts.ToDictionary(
            p => p.Name,
            p => new PartPaint(
                p.Kind == PartKind.Strand ? (p.Strand == 'a' ? Undyed[2] : "#8f7f63") : p.Kind == PartKind.Stripe ? Undyed[p.Number % 2] : Undyed[2],
                null,
                p.Name,
                false),
            StringComparer.Ordinal) ?? [];
    }

    public Hat Hat { get; }

    public string Size { get; }

    public HatNeeds? Needs { get; }

    public CannotBeKnitted? Cannot { get; }

    public YardageRow? Row { get; }

    public IReadOnlyDictionary<string, PartPaint> Paint { get; }

    /// <summary>What to mind about gauge and weight class, without stopping anybody; null if nothing.</summary>
    public string? Mind => Hat is HatDesign design && WeightClasses.ForGauge(design.Gauge.StitchesPer10Cm * 1.016m) is var usual && !usual.Contains(design.WeightClass)
        ? HatWords.UnusualGauge(design.Gauge.StitchesPer10Cm, usual, design.WeightClass)
        : null;

    /// <summary>Reads a form; null with messages where it cannot be read.</summary>
    public static HatView? Of(HatForm form, string size, int? stripes, Usage usage, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(form);
        var description = form.Read(errors);
        if (HatText.Read(new Reading(description, errors)) is not { } read || errors.Any)
        {
            return null;
        }

        var hat = KnitterStore.With(usage, read);
        var wanted = hat.SizeNames.Contains(size, StringComparer.Ordinal) ? size : hat.SizeNames[hat.SizeNames.Count / 2];
        var counts = hat.CountsFor(wanted);
        var count = stripes is { } asked && counts.Contains(asked) ? asked : counts.FirstOrDefault(c => c >= 6, counts[^1]);
        return hat.TryNeeds(wanted, count, out var needs, out var cannot)
            ? new HatView(hat, wanted, needs, null)
            : new HatView(hat, wanted, null, cannot);
    }

    /// <summary>What size comes out at another gauge with the same counts, and what it takes.</summary>
    public (RowPlan Plan, Metres Total)? AtGauge(string stitches, string rows, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (Hat is not HatDesign design || Needs?.Plan is not { } plan || string.IsNullOrWhiteSpace(stitches) || string.IsNullOrWhiteSpace(rows))
        {
            return null;
        }

        var (w, c) = (errors.Typed("mine.stitches", stitches, Gauge.Least, Gauge.Most), errors.Typed("mine.rows", rows, Gauge.Least, Gauge.Most));
        if (w is null || c is null)
        {
            return null;
        }

        var mine = OwnGauge.At(design, plan, Gauge.Of(w.Value, c.Value));
        return (mine, Metres.FromMillimetres(mine.Parts.Sum(p => p.Need(design.Usage).Millimetres)));
    }

    /// <summary>The size for a head, by the sizes' own heads; null where none is near.</summary>
    public string? SizeFor(decimal headCm) => Hat is not HatDesign design ? null
        : design.Sizes.Where(s => s.Head is not null).OrderBy(s => Math.Abs(s.Head!.Value.Value - headCm)).FirstOrDefault() is { } near
            && Math.Abs(near.Head!.Value.Value - headCm) <= 3 ? near.Size : null;
}
