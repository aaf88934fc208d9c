using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Pictures;

/// <summary>How a yarn looks in a hat.</summary>
/// <param name="Colours">Its colours, none (undyed) to four; more are left out.</param>
/// <param name="Halo">How far its fibres stand off, 0 (smooth cotton) to 1 (mohair); what is outside is brought in.</param>
public sealed record YarnLook(IReadOnlyList<YarnColour> Colours, double Halo = YarnLook.UnknownHalo)
{
    /// <summary>The most colours of one yarn that are drawn.</summary>
    public const int MostColours = 4;

    /// <summary>The halo of a yarn nobody knows the fibre of.</summary>
    public const double UnknownHalo = 0.4;

    /// <summary>Wool that was never dyed.</summary>
    public static YarnLook Undyed { get; } = new([]);

    /// <summary>A yarn of one colour; null: its colour is not known, so it is drawn undyed.</summary>
    public static YarnLook Of(YarnColour? colour, FibreBlend? fibre = null, bool superwash = false, YarnMake make = YarnMake.Plied) =>
        new(colour is { } known ? [known] : [], HaloOf(fibre ?? FibreBlend.Unknown, superwash, make));

    /// <summary>What a leftover looks like.</summary>
    public static YarnLook Of(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return Of(leftover.Colour, leftover.Fibre, leftover.Superwash, leftover.Make);
    }

    /// <summary>How far a yarn's fibres stand off, 0 to 1: each fibre's, by its share [ours]; singles a little more than plied yarn.</summary>
    public static double HaloOf(FibreBlend fibre, bool superwash, YarnMake make)
    {
        ArgumentNullException.ThrowIfNull(fibre);
        var (sum, all) = (0.0, 0.0);
        foreach (var share in fibre.Shares)
        {
            sum += (double)share.Percent * HaloOf(share.Fibre, superwash);
            all += (double)share.Percent;
        }

        return Math.Clamp((all > 0 ? sum / all : UnknownHalo) + (make == YarnMake.Singles ? 0.08 : 0), 0, 1);
    }

    private static double HaloOf(Fibre fibre, bool superwash) => fibre.Name switch
    {
        "mohair" or "angora" => 1,
        "alpaca" or "qiviut" => 0.85,
        "cashmere" or "yak" or "camel" or "llama" => 0.65,
        "silk" => 0.1,
        _ => fibre.Family switch
        {
            FibreFamily.Wool => superwash ? 0.2 : 0.45,
            FibreFamily.SuperwashWool => 0.2,
            FibreFamily.OtherAnimal => 0.6,
            FibreFamily.Plant or FibreFamily.Regenerated => 0.06,
            FibreFamily.Synthetic or FibreFamily.Elastane => 0.22,
            _ => UnknownHalo,
        },
    };
}
