namespace StashMatch.Knitting.Colours;

/// <summary>A colour in CIELAB under D65; L* 0 to 100.</summary>
/// <param name="L">Lightness.</param>
/// <param name="A">Green to red.</param>
/// <param name="B">Blue to yellow.</param>
public readonly record struct Lab(double L, double A, double B);

/// <summary>A colour in OKLab (Ottosson 2020); L 0 to 1.</summary>
/// <param name="L">Lightness.</param>
/// <param name="A">Green to red.</param>
/// <param name="B">Blue to yellow.</param>
public readonly record struct OkLab(double L, double A, double B)
{
    /// <summary>How strong the colour is, 0 for greys to about 0.32.</summary>
    public double Chroma => Math.Sqrt((A * A) + (B * B));
}
