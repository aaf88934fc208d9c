namespace StashMatch.Web.OpenInterface;

/// <summary>A kit in one cell, its skeins at one weight; where not exact, a better plan may exist.</summary>
public sealed record KitSideBody(
    string Verdict, decimal MarginPercent, string? WeakestPart, string? WeakestSkein, decimal ShortMetres, decimal ShortForAllowanceMetres, bool Exact)
{
    public required string Why { get; init; }

    /// <summary>The rung of the plan that opens: 0 with something short, 0.5 by the label.</summary>
    public double Sureness { get; init; }

    /// <summary>The highest rung over all plans with this word.</summary>
    public double Reach { get; init; }
}

/// <summary>One size, stripe count and arrangement; what cannot be knitted so says why.</summary>
public sealed record KitCellBody(
    string Size,
    int Stripes,
    string Arrangement,
    bool Passes,
    string? Why,
    string? Text,
    decimal? ShortForAllowanceMetres,
    KitSideBody? Nominal,
    KitSideBody? Lightest,
    double? ChanceOfEnough);

/// <summary>So many of one size of skein.</summary>
public sealed record SmallestSkeinBody(double Grams, LabelBody Label, int Count, string? Fibre = null);

/// <summary>The fewest grams that do; no skeins where no number of them will, and why. Brim: what a brim is knitted from at worst, keeps-shape, relaxes, unknown or stretches.</summary>
public sealed record SmallestBody(IReadOnlyList<SmallestSkeinBody> Skeins, decimal? TotalGrams, bool Proven, string? Text, string? Brim = null);

/// <summary>What a kit comes to; skeins left out are those of another weight class than the hat's.</summary>
public sealed record KitCheckAnswer(decimal AllowancePercent, IReadOnlyList<KitCellBody> Cells, SmallestBody? Smallest, IReadOnlyList<string> LeftOut);
