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

    /// <summary>The smallest number taken for a mass or a length, in its own unit.</summary>
    public const decimal LeastNumber = 0.001m;

    /// <summary>The largest number taken for a mass or a length, in its own unit.</summary>
    public const decimal MostNumber = 100_000;

    /// <summary>A ratio of a mass to a length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number outside 0.001 to 100,000, or a ratio outside 5 to 5,000 m per 100 g.</exception>
    public LabelRatio(decimal mass, MassUnit massUnit, decimal length, LengthUnit lengthUnit, RatioSource source)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(mass, LeastNumber);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mass, MostNumber);
        ArgumentOutOfRangeException.ThrowIfLessThan(length, LeastNumber);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(length, MostNumber);
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

    /// <summary>How far a guess may be off, either way, as a share: twice its standard deviation, a quarter in words [ours].</summary>
    public const decimal GuessMayBeOff = 0.25m;

    /// <summary>The least a length measured off and weighed may be off, either way, as a share [ours].</summary>
    public const decimal MeasuredMayBeOff = 0.02m;

    /// <summary>How far the ratio may be off, either way, as a share: 0 as printed; measured, half a scale step over the grams weighed, but no less than 2 %; guessed, a quarter.</summary>
    /// <param name="scaleStep">The step of the scale a measured length was weighed on.</param>
    public decimal MayBeOff(Grams scaleStep) => Source switch
    {
        RatioSource.Guessed => GuessMayBeOff,
        RatioSource.Measured => Math.Max(MeasuredMayBeOff, scaleStep.Value / 2 / MassInGrams),
        _ => 0,
    };

    /// <summary>The mass in grams.</summary>
    public decimal MassInGrams => InGrams(Mass, MassUnit);

    /// <summary>The length in metres.</summary>
    public decimal LengthInMetres => InMetres(Length, LengthUnit);

    /// <summary>Metres to 100 g, unrounded.</summary>
    public decimal MetresPer100Grams => LengthInMetres * 100 / MassInGrams;

    /// <summary>Metres to 1 g, unrounded.</summary>
    public decimal MetresPerGram => LengthInMetres / MassInGrams;

    /// <summary>Linear density in tex, grams per kilometre: 100,000 / (metres per 100 g) (ISO 1144).</summary>
    public decimal Tex => 100_000m / MetresPer100Grams;

    /// <summary>Linear density in dtex, grams to 10 km (ISO 1144).</summary>
    public decimal Decitex => Tex * 10;

    /// <summary>Linear density in denier, grams to 9 km (ISO 1144).</summary>
    public decimal Denier => Tex * 9;

    /// <summary>Metric count Nm: metres to 1 g.</summary>
    public decimal MetricCount => MetresPer100Grams / 100;

    /// <summary>English cotton count: hanks of 840 yd to the pound of 453.59237 g.</summary>
    public decimal CottonCount => HanksPerPound(840);

    /// <summary>English worsted count: hanks of 560 yd to the pound of 453.59237 g.</summary>
    public decimal WorstedCount => HanksPerPound(560);

    /// <summary>What so many grams hold, unrounded metres.</summary>
    public decimal MetresIn(decimal grams) => grams * LengthInMetres / MassInGrams;

    /// <summary>The mass of a length, unrounded grams.</summary>
    public decimal GramsOf(Metres length) => length.Value * MassInGrams / LengthInMetres;

    /// <summary>Whether two numbers make a ratio that is taken: each 0.001 to 100,000 in its own unit, and 5 to 5,000 m per 100 g together.</summary>
    public static bool CanBe(decimal mass, MassUnit massUnit, decimal length, LengthUnit lengthUnit) =>
        mass is >= LeastNumber and <= MostNumber && length is >= LeastNumber and <= MostNumber
        && InMetres(length, lengthUnit) * 100 / InGrams(mass, massUnit) is >= LeastMetresPer100G and <= MostMetresPer100G;

    /// <summary>As printed, such as "4 oz / 190 yd".</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Mass:0.####} {(MassUnit == MassUnit.Ounces ? "oz" : "g")} / {Length:0.####} {(LengthUnit == LengthUnit.Yards ? "yd" : "m")}");

    private static decimal InGrams(decimal mass, MassUnit unit) => unit == MassUnit.Ounces ? mass * Grams.PerOunce : mass;

    private static decimal InMetres(decimal length, LengthUnit unit) => unit == LengthUnit.Yards ? length * Metres.PerYard : length;

    private decimal HanksPerPound(decimal yards) => MetresPerGram * 16 * Grams.PerOunce / (yards * Metres.PerYard);
}
