using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.Pieces;

/// <summary>A leftover with what a list asks of it again and again, worked out once.</summary>
public sealed record Listed(LoggedLeftover Of)
{
    /// <summary>The yarn; null without a label.</summary>
    public Leftover? Yarn { get; } = Of.ToLeftover();

    /// <summary>What it holds; 0 without a label, or knitted up.</summary>
    public Metres Held { get; } = Of.KnittedUp ? default : Of.ToLeftover()?.Held ?? default;

    /// <summary>What is left, grams; 0 once it is knitted up.</summary>
    public decimal Grams => Of.KnittedUp ? 0 : Of.Weighing.Net.Value;

    /// <summary>How far its metres may be off, as the end of a sentence; nothing where it is under half a per cent.</summary>
    public static string GiveOrTake(Leftover yarn)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        var off = Math.Round(100 * yarn.MayBeOff, MidpointRounding.AwayFromZero);
        return off >= 1 ? $", give or take {off}\u00A0%" : "";
    }

    /// <summary>The plain word for its colour.</summary>
    public string? ColourName { get; } = Of.Colour is { } colour ? NamedColour.Nearest(colour).Name : null;

    /// <summary>Its weight class, said or guessed by the label; null where neither is there.</summary>
    public WeightClass? Class => Of.Class ?? Yarn?.ClassOrGuess;

    /// <summary>Where its ratio comes from, as its frame shows it.</summary>
    public string Frame => Of.Ratio?.Source switch
    {
        null => "crumb",
        RatioSource.Measured => "measured",
        RatioSource.Guessed => "guessed",
        _ => "printed",
    };
}
