using System.Globalization;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>The unit a label gives its mass in.</summary>
public enum MassUnit
{
    /// <summary>Grams.</summary>
    Grams,

    /// <summary>Ounces of 28.349523125 g.</summary>
    Ounces,
}

/// <summary>The unit a label gives its length in.</summary>
public enum LengthUnit
{
    /// <summary>Metres.</summary>
    Metres,

    /// <summary>Yards of 0.9144 m.</summary>
    Yards,
}

/// <summary>Where a label ratio comes from.</summary>
public enum RatioSource
{
    /// <summary>Printed on the label.</summary>
    Printed,

    /// <summary>A length measured off and weighed.</summary>
    Measured,

    /// <summary>A guess.</summary>
    Guessed,
}

/// <summary>So much length to so much mass, with the two numbers and units kept as printed ("4 oz / 190 yd"), 5 to 5,000 m per 100 g.</summary>
public sealed record LabelRatio
{
    /// <summary>The coarsest ratio taken, in metres per 100 g.</summary>
    public const decimal LeastMetresPer100G = 5;

    /// <summary>The finest ratio taken, in metres per 100 g.</summary>
    public const decimal MostMetresPer100G = 5_000;

    /// <summary>A ratio of a mass to a length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number that is not over 0 and at most 100,000, or a ratio outside 5 to 5,000 m per 100 g.</exception>
    public LabelRatio(decimal mass, MassUnit massUnit, decimal length, LengthUnit lengthUnit, RatioSource source)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mass, 100_000m);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(length, 100_000m);
        (Mass, MassUnit, Length, LengthUnit, Source) = (mass, massUnit, length, lengthUnit, source);
        ArgumentOutOfRangeException.ThrowIfLessThan(MetresPer100Grams, LeastMetresPer100G, nameof(length));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(MetresPer100Grams, MostMetresPer100G, nameof(length));
    }

    /// <summary>The mass as printed, in <see cref="MassUnit"/>.</summary>
    public decimal Mass { get; }

    /// <summary>The unit of <see cref="Mass"/>.</summary>
    public MassUnit MassUnit { get; }

    /// <summary>The length as printed, in <see cref="LengthUnit"/>.</summary>
    public decimal Length { get; }

    /// <summary>The unit of <see cref="Length"/>.</summary>
    public LengthUnit LengthUnit { get; }

    /// <summary>Printed, measured or guessed.</summary>
    public RatioSource Source { get; }

    /// <summary>The mass in grams.</summary>
    public decimal MassInGrams => MassUnit == MassUnit.Ounces ? Mass * Grams.PerOunce : Mass;

    /// <summary>The length in metres.</summary>
    public decimal LengthInMetres => LengthUnit == LengthUnit.Yards ? Length * Metres.PerYard : Length;

    /// <summary>Metres to 100 g, unrounded.</summary>
    public decimal MetresPer100Grams => LengthInMetres * 100 / MassInGrams;

    /// <summary>Metres to 1 g, unrounded.</summary>
    public decimal MetresPerGram => LengthInMetres / MassInGrams;

    /// <summary>Linear density in tex, grams per kilometre: 100,000 / (metres per 100 g) (ISO 1144).</summary>
    public decimal Tex => 100_000m / MetresPer100Grams;

    /// <summary>Metric count Nm: metres to 1 g.</summary>
    public decimal MetricCount => MetresPer100Grams / 100;

    /// <summary>What so many grams hold, unrounded metres.</summary>
    public decimal MetresIn(decimal grams) => grams * LengthInMetres / MassInGrams;

    /// <summary>The mass of a length, unrounded grams.</summary>
    public decimal GramsOf(Metres length) => length.Value * MassInGrams / LengthInMetres;

    /// <summary>As printed, such as "4 oz / 190 yd".</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Mass:0.####} {(MassUnit == MassUnit.Ounces ? "oz" : "g")} / {Length:0.####} {(LengthUnit == LengthUnit.Yards ? "yd" : "m")}");
}
