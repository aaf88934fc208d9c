namespace StashMatch.Knitting.Yarns;

/// <summary>What is known of the weight classes: gauge by the Craft Yarn Council's guideline [source], metres per 100 g by our own envelopes [ours].</summary>
public static class WeightClasses
{
    private static readonly IReadOnlyList<Row> Rows = [.. SeedData.Rows<Row>("weight-classes.json").OrderBy(r => r.Class)];

    /// <summary>The class's name, such as "Super Fine".</summary>
    public static string Name(WeightClass weightClass) => Rows[(int)weightClass].Name;

    /// <summary>What people call a class [memory, practice], the usual name first: "fingering", "sock", "4-ply".</summary>
    public static IReadOnlyList<string> CalledOf(WeightClass weightClass) => Rows[(int)weightClass].Called;

    /// <summary>Reads a class by its number, its name or what people call it: "1", "Super Fine", "fingering", "4 ply". What stands in brackets does not count.</summary>
    public static bool TryRead(string? text, out WeightClass weightClass)
    {
        var typed = Bare((text ?? "").Split('(')[0]);
        var row = typed.Length is 0 or > 30 ? null : Rows.FirstOrDefault(r => typed == $"{r.Class}" || typed == Bare(r.Name) || r.Called.Any(c => Bare(c) == typed));
        weightClass = (WeightClass)(row?.Class ?? 0);
        return row is not null;
    }

    /// <summary>The classes whose guideline holds so many stockinette stitches to 4 in, to the nearest whole stitch, half up; 23 and 24 belong to two. Empty outside 1 to 40.</summary>
    public static IReadOnlyList<WeightClass> ForGauge(decimal stitchesPer4In)
    {
        var stitches = Math.Round(stitchesPer4In, MidpointRounding.AwayFromZero);
        return [.. Rows.Where(r => r.StitchesPer4InLeast <= stitches && stitches <= r.StitchesPer4InMost).Select(r => (WeightClass)r.Class)];
    }

    /// <summary>The class whose envelope holds a label ratio [ours].</summary>
    public static WeightClass Guess(LabelRatio ratio)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        var metres = ratio.MetresPer100Grams;
        return Rows.FirstOrDefault(r => r.MetresPer100GLeast <= metres && metres < r.MetresPer100GBelow) is { } row
            ? (WeightClass)row.Class
            : WeightClass.Lace;
    }

    /// <summary>Whether a ratio lies more than a quarter outside the class's envelope [ours]: label or class may be mistyped.</summary>
    public static bool IsFarFrom(WeightClass weightClass, LabelRatio ratio)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        var row = Rows[(int)weightClass];
        return ratio.MetresPer100Grams < row.MetresPer100GLeast * 0.75m || ratio.MetresPer100Grams > row.MetresPer100GBelow * 1.25m;
    }

    /// <summary>Metres to 100 g usual for a class [ours].</summary>
    public static decimal TypicalMetresPer100Grams(WeightClass weightClass) => Rows[(int)weightClass].MetresPer100GUsual;

    // Letters and digits alone: "4-ply", "4 ply" and "4ply" are the same.
    private static string Bare(string text) => string.Concat(text.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant();

    private sealed record Row(
        int Class,
        string Name,
        IReadOnlyList<string> Called,
        decimal StitchesPer4InLeast,
        decimal StitchesPer4InMost,
        decimal MetresPer100GLeast,
        decimal MetresPer100GBelow,
        decimal MetresPer100GUsual,
        string Source);
}
