using System.Globalization;

namespace StashMatch.Knitting.Quantities;

/// <summary>A measure of the hat itself (circumference, height, depth), 0 to 1,000 cm, kept in decimal so that a half stitch is a half stitch. <c>default</c> is 0 cm.</summary>
/// <remarks>Exact definition: 1 in = 2.54 cm.</remarks>
public readonly record struct Centimetres : IComparable<Centimetres>
{
    /// <summary>Centimetres in one inch, exact.</summary>
    public const decimal PerInch = 2.54m;

    private Centimetres(decimal value) => Value = value;

    /// <summary>The measure in centimetres.</summary>
    public decimal Value { get; }

    /// <summary>The measure in inches, unrounded.</summary>
    public decimal Inches => Value / PerInch;

    /// <summary>A measure in centimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0 or over 1,000 cm.</exception>
    public static Centimetres From(decimal centimetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(centimetres);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(centimetres, 1_000m);
        return new(centimetres);
    }

    /// <inheritdoc/>
    public int CompareTo(Centimetres other) => Value.CompareTo(other.Value);

    /// <summary>Shorter than.</summary>
    public static bool operator <(Centimetres a, Centimetres b) => a.Value < b.Value;

    /// <summary>Longer than.</summary>
    public static bool operator >(Centimetres a, Centimetres b) => a.Value > b.Value;

    /// <summary>Not longer than.</summary>
    public static bool operator <=(Centimetres a, Centimetres b) => a.Value <= b.Value;

    /// <summary>Not shorter than.</summary>
    public static bool operator >=(Centimetres a, Centimetres b) => a.Value >= b.Value;

    /// <summary>Centimetres to a tenth, such as "46.8 cm".</summary>
    public override string ToString() => Value.ToString("0.#", CultureInfo.InvariantCulture) + " cm";
}
