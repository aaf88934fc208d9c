using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>Yarns held together: tex adds (ISO 1144), so 1/M = Σ 1/Mi; each strand runs the full length, so the shorter one governs.</summary>
/// <param name="Length">How long they run together.</param>
/// <param name="MetresPer100Grams">Metres to 100 g of them together.</param>
/// <param name="Left">What stays on each, in the order given; a yarn held with itself leaves nothing.</param>
public sealed record HeldTogether(Metres Length, decimal MetresPer100Grams, IReadOnlyList<Metres> Left)
{
    /// <summary>The weight class of them together, by their computed ratio; coarser than any label is the coarsest class.</summary>
    public WeightClass Class => WeightClasses.Guess(new LabelRatio(
        100, MassUnit.Grams, Math.Max(MetresPer100Grams, LabelRatio.LeastMetresPer100G), LengthUnit.Metres, RatioSource.Guessed));

    /// <summary>One ball held double with itself: half its length.</summary>
    public static HeldTogether Doubled(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return new(
            Metres.FromMillimetres(leftover.Held.Millimetres / 2),
            Ratio([leftover.Ratio.MetresPer100Grams, leftover.Ratio.MetresPer100Grams]),
            [Metres.FromMillimetres(leftover.Held.Millimetres % 2)]);
    }

    /// <summary>Two or more leftovers held together.</summary>
    /// <exception cref="ArgumentException">Fewer than two.</exception>
    public static HeldTogether Of(params IReadOnlyList<Leftover> leftovers)
    {
        ArgumentNullException.ThrowIfNull(leftovers);
        if (leftovers.Count < 2)
        {
            throw new ArgumentException("Two leftovers or more are held together.", nameof(leftovers));
        }

        var shortest = leftovers.Min(l => l.Held);
        return new(shortest, Ratio([.. leftovers.Select(l => l.Ratio.MetresPer100Grams)]), [.. leftovers.Select(l => l.Held - shortest)]);
    }

    /// <summary>Metres to 100 g of yarns held together.</summary>
    /// <param name="metresPer100Grams">One or more, each over 0.</param>
    public static decimal Ratio(IReadOnlyList<decimal> metresPer100Grams)
    {
        ArgumentNullException.ThrowIfNull(metresPer100Grams);
        return 1 / metresPer100Grams.Sum(m => 1 / m);
    }

    /// <summary>
    /// Leftovers held together as one, and what stays of the longer ones beside it. One named twice is held double with itself.
    /// The mix is known as well as its least known ratio; its colour is the mean of theirs, unknown if one is.
    /// </summary>
    /// <param name="id">What the two together are known by.</param>
    /// <param name="first">A leftover longer than a metre.</param>
    /// <param name="second">Another, or the same again.</param>
    public static (Leftover Together, IReadOnlyList<Leftover> StaysOver) AsOne(string id, Leftover first, Leftover second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var itself = first.Id == second.Id;
        var held = itself ? Doubled(first) : Of(first, second);
        var (a, b) = (1 / first.Ratio.MetresPer100Grams, 1 / second.Ratio.MetresPer100Grams);
        var grams = held.Length.Value * 100 / held.MetresPer100Grams;
        var source = (RatioSource)Math.Max((int)first.Ratio.Source, (int)second.Ratio.Source);
        var together = new Leftover(
            id,
            itself ? $"{first.Name} held double" : $"{first.Name} with {second.Name}",
            itself ? Weighing.Together(Grams.From(grams), first.Weighing) : Weighing.Together(Grams.From(grams), first.Weighing, second.Weighing),
            new LabelRatio(100, MassUnit.Grams, Math.Max(held.MetresPer100Grams, LabelRatio.LeastMetresPer100G), LengthUnit.Metres, source))
        {
            Class = held.Class,
            Fibre = FibreBlend.Mix([(first.Fibre, first.Superwash, a / (a + b)), (second.Fibre, second.Superwash, b / (a + b))]),
            Colour = first.Colour is { } x && second.Colour is { } y
                ? Colours.YarnColour.FromRgb((byte)((x.Red + y.Red) / 2), (byte)((x.Green + y.Green) / 2), (byte)((x.Blue + y.Blue) / 2))
                : null,
            Care = first.Care is null && second.Care is null ? null : Care.Merge(first.Care ?? Care.Unknown, second.Care ?? Care.Unknown),
        };
        IEnumerable<Leftover> rest = itself ? [] : new[] { first, second }.Zip(held.Left, Rest).OfType<Leftover>();
        return (together, [.. rest]);
    }

    // What stays, as a weighing of its own; less than a decimetre is nothing.
    private static Leftover? Rest(Leftover of, Metres left) => left.Millimetres < 100 || Grams.From(of.Ratio.GramsOf(left)) is var grams && grams <= default(Grams)
        ? null
        : of with { Weighing = Weighing.Together(grams, of.Weighing) };
}
