namespace StashMatch.Store.Data;

/// <summary>A plan saved by name.</summary>
public sealed class PlanRow : IOwned, IRaced
{
    public Guid Id { get; set; }

    public Guid OwnerId { get; set; }

    public Guid Version { get; set; }

    /// <summary>What the open interface knows it by; unique for its owner.</summary>
    public required string PublicId { get; set; }

    /// <summary>Unique for its owner.</summary>
    public required string Name { get; set; }

    public required string Hat { get; set; }

    public required string Size { get; set; }

    public int Stripes { get; set; }

    public required string Arrangement { get; set; }

    /// <summary>The question it answers, as JSON.</summary>
    public string? Question { get; set; }

    /// <summary>How far its knitting sheet is, as JSON.</summary>
    public string? Sheet { get; set; }

    /// <summary>Whether its yarn is promised to it.</summary>
    public bool Reserves { get; set; }

    public DateTimeOffset SavedAt { get; set; }

    public DateTimeOffset? FinishedAt { get; set; }

    public ICollection<PromiseRow> Promises { get; } = new List<PromiseRow>();
}
