using StashMatch.Knitting.Yarns;

namespace StashMatch.Store.Data;

/// <summary>What a person prefers; one row each.</summary>
public sealed class SettingsRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public LengthUnit FirstUnit { get; set; }

    public long ScaleStepMilligrams { get; set; }

    public decimal AllowancePercent { get; set; }
}
