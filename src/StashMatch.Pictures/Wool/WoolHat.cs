using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>
/// A hat laid out to be drawn as wool: its measures, its areas in knitting order and their yarns. Made from a row plan, or for a printed hat
/// from its parts; <see cref="WoolPicture"/> paints it, <see cref="Json"/> hands it to the page's script, which paints the same.
/// </summary>
public sealed class WoolHat
{
    internal WoolHat()
    {
    }

    /// <summary>Names of the areas a person can point at, in knitting order: "stripe 1", "braid 1" (both strands), "brim", "crown", "seam",
    /// "pom-pom".</summary>
    public IReadOnlyList<string> AreaNames => [.. Areas.Select(a => a.Name)];

    /// <summary>The model as JSON, for the page's script; see <c>wool.js</c>.</summary>
    public string Json => WoolJson.Of(this);

    internal bool Sideways { get; init; }

    // Worked flat: a seam at the back. In the round: a jog there.
    internal bool Flat { get; init; }

    // Around the body, cm, as knitted.
    internal double Around { get; init; }

    // The body above the brim along the fabric, cm.
    internal double Above { get; init; }

    internal int Stitches { get; init; }

    internal int Rows { get; init; }

    internal int CrownRows { get; init; }

    internal int Gores { get; init; }

    internal WoolBrim? Brim { get; init; }

    internal WoolArea[] Areas { get; init; } = [];

    internal WoolYarn[] Yarns { get; init; } = [];

    // The area of each row of the body.
    internal int[] RowAreas { get; init; } = [];

    // The first row of each area.
    internal int[] FirstRows { get; init; } = [];

    internal int SeamArea { get; init; }

    internal int PomPomArea { get; init; }

    /// <summary>A hat as the matcher sees it; a printed one, which has no row plan, gets a likely one from its parts.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="wool">What each part is knitted in, by its name; a part left out is undyed.</param>
    /// <param name="ribRepeat">Stitches in one repeat of the rib, 2 or 4.</param>
    public static WoolHat Of(HatNeeds hat, IReadOnlyDictionary<string, PartWool> wool, int ribRepeat = 2)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(wool);
        return hat.Plan is { } plan ? new WoolLayout(plan, hat.Parts, wool, ribRepeat).Hat() : WoolLayout.Printed(hat.Parts, wool).Hat();
    }

    /// <summary>A hat with a row plan.</summary>
    /// <param name="plan">The row plan.</param>
    /// <param name="wool">What each part is knitted in, by its name; a part left out is undyed. None at all: the undyed hat of an empty bag.</param>
    /// <param name="ribRepeat">Stitches in one repeat of the rib, 2 or 4.</param>
    public static WoolHat Of(RowPlan plan, IReadOnlyDictionary<string, PartWool> wool, int ribRepeat = 2)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(wool);
        return new WoolLayout(plan, plan.Parts, wool, ribRepeat).Hat();
    }

    /// <summary>The area a part lies in; null where the hat has no such part.</summary>
    public string? AreaOf(string part) => Areas.FirstOrDefault(a => a.Name == part || a.Parts.Contains(part, StringComparer.Ordinal))?.Name;

    /// <summary>How far to turn the hat so that an area is in front; null where it goes all round, or there is none of that name.</summary>
    public double? YawOf(string area)
    {
        var at = Array.FindIndex(Areas, a => a.Name == area);
        return !Sideways || at < 0 || Areas[at].Rows == 0 ? null : (0.5 - ((FirstRows[at] + (Areas[at].Rows / 2.0)) / Rows)) * Grain.Round;
    }
}
