using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>How a yarn is made up, as far as a brim cares.</summary>
public enum YarnMake
{
    /// <summary>Two strands or more twisted together, or not known.</summary>
    Plied,

    /// <summary>A single strand.</summary>
    Singles,

    /// <summary>Chainette, tape and the like, made to drape.</summary>
    Drape,
}

/// <summary>What is left of a ball, as weighed, with a label ratio to reckon its metres by.</summary>
/// <param name="Id">What it is known by; unique in a bag.</param>
/// <param name="Name">What the knitter calls it.</param>
/// <param name="Weighing">The last reading of the scale.</param>
/// <param name="Ratio">The label ratio, printed, measured or guessed.</param>
public sealed record Leftover(string Id, string Name, Weighing Weighing, LabelRatio Ratio)
{
    /// <summary>The weight class, or null where nobody said.</summary>
    public WeightClass? Class { get; init; }

    /// <summary>What it is spun of; unknown unless said.</summary>
    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    /// <summary>Whether its wool is machine-washable.</summary>
    public bool Superwash { get; init; }

    /// <summary>Plied unless said.</summary>
    public YarnMake Make { get; init; }

    /// <summary>Its colour, or null where nobody said.</summary>
    public YarnColour? Colour { get; init; }

    /// <summary>How its label says to wash it; null where nobody said.</summary>
    public Care? Care { get; init; }

    /// <summary>Dye lot or set, or null.</summary>
    public string? Lot { get; init; }

    /// <summary>What it holds at the nominal reading, rounded down to the millimetre.</summary>
    public Metres Held => Metres.Held(Ratio.MetresIn(Weighing.Net.Value));

    /// <summary>What it holds if the scale read as much too high as its step allows.</summary>
    public Metres HeldAtLeast => Metres.Held(Ratio.MetresIn(Math.Max(0, Weighing.Net.Value - Weighing.BandGrams)));

    /// <summary>What it holds if the scale read as much too low as its step allows.</summary>
    public Metres HeldAtMost => Metres.Held(Ratio.MetresIn(Weighing.Net.Value + Weighing.BandGrams));

    /// <summary>How far what it holds may be off, either way, as a share: the scale's band and the ratio's own doubt, which do not know of each other, so root of the sum of squares [ours].</summary>
    public decimal MayBeOff
    {
        get
        {
            var (scale, ratio) = ((double)(Weighing.BandGrams / Weighing.Net.Value), (double)Ratio.MayBeOff(Weighing.ScaleStep));
            return ratio == 0 ? Weighing.BandGrams / Weighing.Net.Value : (decimal)Math.Sqrt((scale * scale) + (ratio * ratio));
        }
    }

    /// <summary>How far what it holds may be off, either way: <see cref="MayBeOff"/> of what it holds, and no more than that.</summary>
    public Metres Doubt => Metres.FromMillimetres((long)(Held.Millimetres * Math.Min(1, MayBeOff)));

    /// <summary>The weight class said, else the one whose label envelope holds the ratio.</summary>
    public WeightClass ClassOrGuess => Class ?? WeightClasses.Guess(Ratio);

    /// <summary>How well it keeps a brim's shape.</summary>
    public BrimRating Brim => BrimRule.Rate(Fibre, Superwash, Make);
}
