using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover as logged, with what is left of it.</summary>
public sealed record LoggedLeftover : LeftoverDetails
{
    /// <summary>Details of a leftover that is logged.</summary>
    public LoggedLeftover(LeftoverDetails details)
        : base(details)
    {
    }

    public required string Id { get; init; }

    /// <summary>The two letters on its tag.</summary>
    public new string Code => base.Code ?? "";

    /// <summary>What is left as a reading: the last one less what was knitted from it since; the last one itself where nothing is left.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>What is left, yarn alone; 0 once it is knitted up.</summary>
    public required Grams Left { get; init; }

    /// <summary>What of it is promised to plans.</summary>
    public required Metres Promised { get; init; }

    public required DateTimeOffset WeighedAt { get; init; }

    /// <summary>How often it was weighed, 1 or more.</summary>
    public required int Weighings { get; init; }

    public required bool IsDemo { get; init; }

    /// <summary>Another one after each step taken with it.</summary>
    public Guid Version { get; init; }

    /// <summary>Whether a small picture of it is kept.</summary>
    public bool HasPicture { get; init; }

    /// <summary>Nothing is left of it.</summary>
    public bool KnittedUp => Left == default;

    /// <summary>Whether it may go into a hat: a label, not knitted up, no crumb, not kept back.</summary>
    public bool ForHats => Ratio is not null && !KnittedUp && !Crumb && !NotForHats && KeptBackFor is null;

    /// <summary>The leftover the matcher takes; null without a label.</summary>
    public Leftover? ToLeftover() => ToLeftover(Id, Weighing);

    /// <summary>What of it is not promised to plans, as a leftover; null without a label, or where nothing is free. Grams rounded down.</summary>
    public Leftover? ToFreeLeftover()
    {
        if (ToLeftover() is not { } all || Promised == default)
        {
            return ToLeftover();
        }

        var free = all.Held > Promised ? Math.Floor(Left.Milligrams - (1000 * all.Ratio.GramsOf(Promised))) : 0;
        var (tare, step) = (Weighing.Tare, Weighing.ScaleStep);
        return free < 1 ? null : all with { Weighing = new Weighing(tare + Grams.FromMilligrams((long)free), tare, step) };
    }

    internal static LoggedLeftover Of(LeftoverRow row, Ledger ledger, long promisedMillimetres, bool hasPicture = false) => new(row.ToDetails())
    {
        Id = row.PublicId,
        Version = row.Version,
        Weighing = ledger.Reading,
        Left = ledger.Left,
        Promised = Metres.FromMillimetres(promisedMillimetres),
        HasPicture = hasPicture,
        WeighedAt = ledger.Last.At,
        Weighings = ledger.Weighings,
        IsDemo = row.IsDemo,
    };
}
