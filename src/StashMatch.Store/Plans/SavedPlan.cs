using StashMatch.Knitting.Quantities;

namespace StashMatch.Store;

/// <summary>So much of a leftover that a plan takes for a part.</summary>
/// <param name="Leftover">The leftover's id; null once it is gone for good.</param>
/// <param name="Name">What it was called when the plan was saved.</param>
/// <param name="Part">The part's name.</param>
/// <param name="Length">How much of it.</param>
/// <param name="Mass">The same in grams by its label, to the milligram; null without a label.</param>
public sealed record SavedPart(string? Leftover, string Name, string Part, Metres Length, Grams? Mass);

/// <summary>A plan as saved.</summary>
public sealed record SavedPlan
{
    public required string Id { get; init; }

    /// <summary>Renewed at each change; a change that names a stale one loses.</summary>
    public required Guid Version { get; init; }

    public required string Name { get; init; }

    public required string Hat { get; init; }

    public required string Size { get; init; }

    public required int Stripes { get; init; }

    public required string Arrangement { get; init; }

    public required IReadOnlyList<SavedPart> Parts { get; init; }

    public required string? Question { get; init; }

    /// <summary>How far its knitting sheet is, as JSON of the page's own.</summary>
    public required string? Sheet { get; init; }

    /// <summary>Whether its yarn is promised to it. A finished plan promises nothing.</summary>
    public required bool Reserves { get; init; }

    public required DateTimeOffset SavedAt { get; init; }

    public required DateTimeOffset? FinishedAt { get; init; }
}
