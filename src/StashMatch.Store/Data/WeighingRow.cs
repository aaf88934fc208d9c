using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store.Data;

/// <summary>One reading of the scale; appended, never changed.</summary>
public sealed class WeighingRow : IOwned
{
    public long Id { get; set; }

    public Guid OwnerId { get; set; }

    public Guid LeftoverId { get; set; }

    public long GrossMilligrams { get; set; }

    public long TareMilligrams { get; set; }

    public long StepMilligrams { get; set; }

    public DateTimeOffset At { get; set; }

    internal static WeighingRow Of(Weighing weighing, Guid leftover, DateTimeOffset at) => new()
    {
        LeftoverId = leftover,
        GrossMilligrams = weighing.Gross.Milligrams,
        TareMilligrams = weighing.Tare.Milligrams,
        StepMilligrams = weighing.ScaleStep.Milligrams,
        At = at,
    };

    internal Weighing ToWeighing() =>
        new(Grams.FromMilligrams(GrossMilligrams), Grams.FromMilligrams(TareMilligrams), Grams.FromMilligrams(StepMilligrams));
}
