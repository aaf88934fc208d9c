using System.Globalization;

namespace StashMatch.Knitting.Quantities;

/// <summary>A length of yarn, held in whole millimetres so that shares add up exactly. Never negative; <c>default</c> is 0 m.</summary>
/// <remarks>Exact definition: 1 yd = 0.9144 m. What a knitter has rounds down, what a hat needs rounds up, once each.</remarks>
public readonly record struct Metres : IComparable<Metres>
{
    /// <summary>Metres in one yard, exact (international yard of 1959).</summary>
    public const decimal PerYard = 0.9144m;

    private Metres(long millimetres) => Millimetres = millimetres;

    /// <summary>Whole millimetres, 0 or more.</summary>
    public long Millimetres { get; }

    /// <summary>The length in metres.</summary>
    public decimal Value => Millimetres / 1000m;

    /// <summary>The length in yards, unrounded.</summary>
    public decimal Yards => Value / PerYard;

    /// <summary>A length of whole millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
    public static Metres FromMillimetres(long millimetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(millimetres);
        return new(millimetres);
    }

    /// <summary>What a knitter has: metres, rounded down to the millimetre.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0 or over 1,000,000,000 m.</exception>
    public static Metres Held(decimal metres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(metres);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(metres, 1_000_000_000m);
        return new((long)Math.Floor(metres * 1000m));
    }

    /// <summary>What a hat needs: metres, rounded up to the millimetre (a millionth of a millimetre over is arithmetic noise, not yarn).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, below 0, or over 1,000,000,000 m.</exception>
    public static Metres Needed(double metres)
    {
        if (!(metres >= 0 && metres <= 1e9))
        {
            throw new ArgumentOutOfRangeException(nameof(metres), metres, "A need is 0 or more metres.");
        }

        return new((long)Math.Ceiling((metres * 1000) - 1e-6));
    }

    /// <summary>This length and the allowance on top, rounded up to the millimetre.</summary>
    /// <param name="allowancePercent">0 or more.</param>
    public Metres WithAllowance(decimal allowancePercent) =>
        FromMillimetres((long)Math.Ceiling(Millimetres * (100m + allowancePercent) / 100m));

    /// <summary>The sum of two lengths.</summary>
    public static Metres operator +(Metres a, Metres b) => new(a.Millimetres + b.Millimetres);

    /// <summary>What is left when <paramref name="b"/> is taken from <paramref name="a"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More is taken than is there.</exception>
    public static Metres operator -(Metres a, Metres b) => FromMillimetres(a.Millimetres - b.Millimetres);

    /// <summary>Shorter than.</summary>
    public static bool operator <(Metres a, Metres b) => a.Millimetres < b.Millimetres;

    /// <summary>Longer than.</summary>
    public static bool operator >(Metres a, Metres b) => a.Millimetres > b.Millimetres;

    /// <summary>Not longer than.</summary>
    public static bool operator <=(Metres a, Metres b) => a.Millimetres <= b.Millimetres;

    /// <summary>Not shorter than.</summary>
    public static bool operator >=(Metres a, Metres b) => a.Millimetres >= b.Millimetres;

    /// <inheritdoc/>
    public int CompareTo(Metres other) => Millimetres.CompareTo(other.Millimetres);

    /// <summary>Metres with as many digits as are held, such as "20.331 m".</summary>
    public override string ToString() => Value.ToString("0.###", CultureInfo.InvariantCulture) + " m";
}
