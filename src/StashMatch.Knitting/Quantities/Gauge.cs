namespace StashMatch.Knitting.Quantities;

/// <summary>Stitches and rows to 10 cm of the blocked fabric, 4 to 80 each. <c>default</c> is no gauge at all and is refused wherever one is asked for.</summary>
public readonly record struct Gauge
{
    /// <summary>The smallest count to 10 cm that is taken as a gauge.</summary>
    public const decimal Least = 4;

    /// <summary>The largest count to 10 cm that is taken as a gauge.</summary>
    public const decimal Most = 80;

    private Gauge(decimal stitches, decimal rows) => (StitchesPer10Cm, RowsPer10Cm) = (stitches, rows);

    /// <summary>Stitches to 10 cm.</summary>
    public decimal StitchesPer10Cm { get; }

    /// <summary>Rows or rounds to 10 cm.</summary>
    public decimal RowsPer10Cm { get; }

    /// <summary>Stitches to 1 cm.</summary>
    public decimal StitchesPerCm => StitchesPer10Cm / 10;

    /// <summary>Rows to 1 cm.</summary>
    public decimal RowsPerCm => RowsPer10Cm / 10;

    /// <summary>The depth of so many rows, 0 or more.</summary>
    public Centimetres DepthOf(int rows) => Centimetres.From(rows / RowsPerCm);

    /// <summary>A gauge of stitches and rows to 10 cm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Either count outside 4 to 80.</exception>
    public static Gauge Of(decimal stitchesPer10Cm, decimal rowsPer10Cm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stitchesPer10Cm, Least);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(stitchesPer10Cm, Most);
        ArgumentOutOfRangeException.ThrowIfLessThan(rowsPer10Cm, Least);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rowsPer10Cm, Most);
        return new(stitchesPer10Cm, rowsPer10Cm);
    }
}
