using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>So many like mini-skeins of a kit.</summary>
/// <param name="Name">What they are called; unique in a kit.</param>
/// <param name="Grams">What each should weigh, over 0 and at most 5,000 g.</param>
/// <param name="Count">How many, 1 or more.</param>
/// <param name="Label">Their label ratio.</param>
public sealed record KitSkein(string Name, Grams Grams, int Count, LabelRatio Label)
{
    /// <summary>Their colour; null where nobody said.</summary>
    public YarnColour? Colour { get; init; }

    /// <summary>What they are spun of; unknown unless said.</summary>
    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    /// <summary>Their weight class; null where nobody said.</summary>
    public WeightClass? Class { get; init; }

    /// <summary>How much less each may lawfully weigh: the directive's error from 5 to 1,000 g [source]; its nearest share outside [ours].</summary>
    public Grams TolerableError => Grams.Value switch
    {
        < 5 => Grams.From(Grams.Value * 0.09m),
        > 1_000 => Grams.From(Grams.Value * 0.015m),
        var nominal => Grams.From(PackTolerance.ErrorGrams(nominal)),
    };
}

/// <summary>A designer's set of mini-skeins under test.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Skeins">Its skeins.</param>
public sealed record Kit(string Name, IReadOnlyList<KitSkein> Skeins)
{
    /// <summary>All skeins together, nominal.</summary>
    public Grams Total => Grams.FromMilligrams(Skeins.Sum(s => s.Grams.Milligrams * s.Count));

    /// <summary>The skeins as leftovers of their nominal weight, which nobody has read off a scale: they have no band. How much lighter they may lawfully be is what <see cref="AtLightest"/> tells.</summary>
    public IReadOnlyList<Leftover> AtNominal() => Each(s => s.Grams);

    /// <summary>The skeins as leftovers, each as light as is lawful, or so many per cent under its nominal weight.</summary>
    /// <param name="lightestPercent">0 to 90, or null for the lawful limit.</param>
    public IReadOnlyList<Leftover> AtLightest(decimal? lightestPercent) => Each(s => lightestPercent is { } percent
        ? Grams.FromMilligrams(Math.Max(1, (long)Math.Floor(s.Grams.Milligrams * (100 - percent) / 100)))
        : s.Grams - s.TolerableError);

    private List<Leftover> Each(Func<KitSkein, Grams> weight) =>
        [.. Skeins.SelectMany(s => Enumerable.Range(1, s.Count).Select(i =>
        {
            var name = s.Count == 1 ? s.Name : $"{s.Name} {i}";
            return new Leftover($"{s.Name}\n{i:0000}", name, Weighing.Stated(weight(s)), s.Label) { Colour = s.Colour, Fibre = s.Fibre, Class = s.Class };
        }))];
}
