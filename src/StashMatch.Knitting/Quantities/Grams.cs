using System.Globalization;

namespace StashMatch.Knitting.Quantities;

/// <summary>A mass as a kitchen scale gives it, held in whole milligrams. Never negative; <c>default</c> is 0 g.</summary>
/// <remarks>Exact definitions: 1 oz = 28.349523125 g (international avoirdupois pound of 1959, 453.59237 g).</remarks>
public readonly record struct Grams : IComparable<Grams>
{
    /// <summary>Grams in one ounce, exact.</summary>
    public const decimal PerOunce = 28.349523125m;

    private Grams(long milligrams) => Milligrams = milligrams;

    /// <summary>Whole milligrams, 0 or more.</summary>
    public long Milligrams { get; }

    /// <summary>The mass in grams.</summary>
    public decimal Value => Milligrams / 1000m;

    /// <summary>A mass of whole milligrams.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
    public static Grams FromMilligrams(long milligrams)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(milligrams);
        return new(milligrams);
    }

    /// <summary>A mass in grams, to the nearest milligram, half up.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0 or over 1,000,000 g.</exception>
    public static Grams From(decimal grams)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(grams);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(grams, 1_000_000m);
        return new((long)Math.Round(grams * 1000m, MidpointRounding.AwayFromZero));
    }

    /// <summary>The sum of two masses.</summary>
    public static Grams operator +(Grams a, Grams b) => new(a.Milligrams + b.Milligrams);

    /// <summary>What is left when <paramref name="b"/> is taken from <paramref name="a"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More is taken than is there.</exception>
    public static Grams operator -(Grams a, Grams b) => FromMilligrams(a.Milligrams - b.Milligrams);

    /// <summary>Lighter than.</summary>
    public static bool operator <(Grams a, Grams b) => a.Milligrams < b.Milligrams;

    /// <summary>Heavier than.</summary>
    public static bool operator >(Grams a, Grams b) => a.Milligrams > b.Milligrams;

    /// <summary>Not heavier than.</summary>
    public static bool operator <=(Grams a, Grams b) => a.Milligrams <= b.Milligrams;

    /// <summary>Not lighter than.</summary>
    public static bool operator >=(Grams a, Grams b) => a.Milligrams >= b.Milligrams;

    /// <inheritdoc/>
    public int CompareTo(Grams other) => Milligrams.CompareTo(other.Milligrams);

    /// <summary>Grams with as many digits as are held, such as "23.5 g".</summary>
    public override string ToString() => Value.ToString("0.###", CultureInfo.InvariantCulture) + " g";
}
