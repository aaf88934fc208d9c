using StashMatch.Knitting.Quantities;

namespace StashMatch.Store;

/// <summary>A plan that has yarn promised to it.</summary>
public sealed record OtherPlan(string Id, string Name, Metres Promised);

/// <summary>A leftover of which a plan wants more than is free.</summary>
/// <param name="Leftover">Its id.</param>
/// <param name="Name">Its name; the id where there is no such leftover.</param>
/// <param name="Wanted">What the plan wants of it.</param>
/// <param name="Free">What is left of it and promised to nobody.</param>
/// <param name="Others">The plans that have some of it.</param>
public sealed record PromiseClash(string Leftover, string Name, Metres Wanted, Metres Free, IReadOnlyList<OtherPlan> Others)
{
    /// <summary>In words, both units.</summary>
    public override string ToString()
    {
        var others = string.Join(" and ", Others.Select(o => $"“{o.Name}” has {Both(o.Promised)}"));
        return $"{Name}: {Both(Wanted)} wanted, {Both(Free)} free{(others.Length > 0 ? $"; {others}" : "")}";
    }

    private static string Both(Metres length) => FormattableString.Invariant($"{length.Value:0.0} m ({length.Yards:0.0} yd)");
}

/// <summary>What became of a change to a plan: saved, or why not, with nothing changed.</summary>
public sealed record PlanOutcome
{
    /// <summary>The plan's id where it was saved; null where it was not.</summary>
    public string? Id { get; init; }

    /// <summary>There is no such plan.</summary>
    public bool NotThere { get; init; }

    /// <summary>Somebody else changed the plan meanwhile: look at it again.</summary>
    public bool ChangedMeanwhile { get; init; }

    /// <summary>What is wrong, by field.</summary>
    public FieldErrors Errors { get; init; } = new();

    /// <summary>Leftovers of which more is wanted than is free.</summary>
    public IReadOnlyList<PromiseClash> Clashes { get; init; } = [];

    public bool Saved => Id is not null;
}
