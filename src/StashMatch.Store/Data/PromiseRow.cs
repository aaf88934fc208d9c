namespace StashMatch.Store.Data;

/// <summary>So much of a leftover, promised to a part of a plan.</summary>
public sealed class PromiseRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public Guid PlanId { get; set; }

    /// <summary>Null once the leftover is gone for good.</summary>
    public Guid? LeftoverId { get; set; }

    /// <summary>What the leftover was called when it was promised.</summary>
    public required string LeftoverName { get; set; }

    public required string Part { get; set; }

    public long Millimetres { get; set; }
}
