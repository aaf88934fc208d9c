using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.OpenInterface;

/// <summary>A label ratio as printed: one mass, one length.</summary>
public sealed record LabelBody(double? Grams, double? Ounces, double? Metres, double? Yards)
{
    public static LabelBody? Of(LabelRatio? ratio) => ratio is null ? null : new LabelBody(
        ratio.MassUnit == MassUnit.Grams ? (double)ratio.Mass : null,
        ratio.MassUnit == MassUnit.Ounces ? (double)ratio.Mass : null,
        ratio.LengthUnit == LengthUnit.Metres ? (double)ratio.Length : null,
        ratio.LengthUnit == LengthUnit.Yards ? (double)ratio.Length : null);
}
