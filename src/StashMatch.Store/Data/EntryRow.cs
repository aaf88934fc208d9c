using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store.Data;

/// <summary>One line of a leftover's ledger; appended, never changed.</summary>
public sealed class EntryRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public Guid LeftoverId { get; set; }

    public EntryKind Kind { get; set; }

    /// <summary>The reading, core or bowl included; 0 unless weighed.</summary>
    public long GrossMilligrams { get; set; }

    public long TareMilligrams { get; set; }

    public long StepMilligrams { get; set; }

    /// <summary>What was knitted from it; 0 unless used.</summary>
    public long UsedMilligrams { get; set; }

    /// <summary>What it was used for.</summary>
    public string? For { get; set; }

    /// <summary>What an edit changed: each field's text before and after, as JSON.</summary>
    public string? Changes { get; set; }

    /// <summary>The line this one undoes.</summary>
    public long? Undoes { get; set; }

    public DateTimeOffset At { get; set; }

    internal static EntryRow Of(Weighing weighing, Guid leftover, DateTimeOffset at) => new()
    {
        LeftoverId = leftover,
        Kind = EntryKind.Weighed,
        GrossMilligrams = weighing.Gross.Milligrams,
        TareMilligrams = weighing.Tare.Milligrams,
        StepMilligrams = weighing.ScaleStep.Milligrams,
        At = at,
    };

    internal Weighing ToWeighing() =>
        new(Grams.FromMilligrams(GrossMilligrams), Grams.FromMilligrams(TareMilligrams), Grams.FromMilligrams(StepMilligrams));
}
