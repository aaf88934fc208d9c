namespace StashMatch.Store;

/// <summary>A hat as it is written in JSON: by measurements, or by its printed table.</summary>
public sealed record HatDescription
{
    public string? Name { get; init; }

    public int? WeightClass { get; init; }

    public string? Construction { get; init; }

    public GaugeDescription? Gauge { get; init; }

    public BrimDescription? Brim { get; init; }

    public BraidsDescription? Braids { get; init; }

    public CrownDescription? Crown { get; init; }

    public StripeCountsDescription? StripeCounts { get; init; }

    public StripesDescription? Stripes { get; init; }

    public IReadOnlyList<SizeDescription?>? Sizes { get; init; }

    public PomPomDescription? PomPom { get; init; }

    public UsageDescription? Usage { get; init; }

    public PrintedDescription? Printed { get; init; }
}

/// <summary>Stitches and rows to 10 cm, 4 to 80 each.</summary>
public sealed record GaugeDescription(double? StitchesPer10cm, double? RowsPer10cm);

/// <summary>A ribbed brim.</summary>
public sealed record BrimDescription(double? DepthCm, bool? Folded, string? Fit, int? Rib, string? BindOff);

/// <summary>Where braids lie and what their strands are.</summary>
public sealed record BraidsDescription(string? Where, string? Strands, int? StrandCount = null);

/// <summary>Stripes that are not all alike: one depth for each in centimetres, or one proportion for each.</summary>
public sealed record StripesDescription(IReadOnlyList<double>? DepthsCm, IReadOnlyList<double>? Proportions);

/// <summary>A crown drawn in by decreases.</summary>
public sealed record CrownDescription(int? DecreaseLines, string? Yarn);

/// <summary>The stripe counts a hat may have, 1 to 24.</summary>
public sealed record StripeCountsDescription(int? Least, int? Most);

/// <summary>A size: a head alone, or a circumference with a height; stitches fixed by hand win.</summary>
public sealed record SizeDescription(string? Size, double? HeadCm, double? HeightCm, double? CircumferenceCm, int? Stitches);

/// <summary>A pom-pom in yarn and the metres its maker says it takes.</summary>
public sealed record PomPomDescription(double? Metres);

/// <summary>A knitter's own usage factor.</summary>
public sealed record UsageDescription(double? Factor, double? SpreadPercent);

/// <summary>A printed table of lengths.</summary>
public sealed record PrintedDescription(string? Unit, bool? AllowanceIncluded, IReadOnlyList<PrintedSizeDescription?>? Sizes);

/// <summary>One size of a printed table.</summary>
public sealed record PrintedSizeDescription(string? Size, double? HeadCm, IReadOnlyList<PrintedPartDescription?>? Parts);

/// <summary>One printed length; without a part it is the letter's total.</summary>
public sealed record PrintedPartDescription(string? Part, string? Yarn, double? Length);
