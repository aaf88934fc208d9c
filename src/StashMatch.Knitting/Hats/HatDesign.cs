using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>The stripe counts a hat may be knitted with, 1 to 24.</summary>
/// <param name="Least">Fewest stripes.</param>
/// <param name="Most">Most stripes, not below <paramref name="Least"/>.</param>
public sealed record StripeCounts(int Least, int Most)
{
    /// <summary>4 to 12 are usual [practice].</summary>
    public static StripeCounts Usual { get; } = new(4, 12);

    /// <summary>Every count there can be.</summary>
    public static StripeCounts Any { get; } = new(1, 24);
}

/// <summary>What a pattern or a measured description says of a hat: everything a row plan is compiled from.</summary>
public sealed record HatDesign : Hat
{
    /// <summary>How it is put together.</summary>
    public required Construction Construction { get; init; }

    /// <summary>The gauge of its body.</summary>
    public required Gauge Gauge { get; init; }

    /// <summary>Its brim, or null for none.</summary>
    public Brim? Brim { get; init; }

    /// <summary>Its braids.</summary>
    public Braids Braids { get; init; } = new();

    /// <summary>Its crown (brim-up hats only).</summary>
    public Crown Crown { get; init; } = new();

    /// <summary>The stripe counts it may have; null where nobody said: then any from 1 to 24 can be asked for, and 4 to 12 are tried.</summary>
    public StripeCounts? StripeCounts { get; init; }

    /// <summary>Stripes that are not all alike, one value for each; null for equal stripes.</summary>
    public StripeDepths? Stripes { get; init; }

    /// <summary>What a pom-pom in yarn takes, as typed, no factor and no tails: it can eat as much as half the hat. Null for none.</summary>
    public Metres? PomPom { get; init; }

    /// <summary>Its sizes, smallest first.</summary>
    public required IReadOnlyList<HatSize> Sizes { get; init; }

    /// <summary>What its knitter uses above the bare metres.</summary>
    public Usage Usage { get; init; } = Usage.Uncalibrated;

    /// <inheritdoc/>
    public override IReadOnlyList<string> SizeNames => [.. Sizes.Select(s => s.Size)];

    /// <inheritdoc/>
    public override IReadOnlyList<int> CountsFor(string size) =>
        !Sizes.Any(s => s.Size == size) ? []
            : Stripes is { } own ? [own.Values.Count]
            : (StripeCounts ?? StripeCounts.Usual) is var counts ? [.. Enumerable.Range(counts.Least, counts.Most - counts.Least + 1)] : [];

    /// <inheritdoc/>
    public override bool TryNeeds(string size, int stripes, [NotNullWhen(true)] out HatNeeds? needs, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        needs = null;
        if (!RowPlanner.TryCompile(this, size, stripes, out var plan, out why))
        {
            return false;
        }

        var head = Sizes.First(s => s.Size == size).Head;
        IReadOnlyList<HatPart> parts = PomPom is { } pomPom
            ? [.. plan.Parts, new HatPart(PartNames.PomPom, PartKind.PomPom, 0, null, 0, default, 0, (double)pomPom.Value)]
            : plan.Parts;
        needs = new HatNeeds(Name, size, head, stripes, WeightClass, parts, Usage, Braids.Strands, plan);
        return true;
    }
}
