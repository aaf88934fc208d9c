using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests;

/// <summary>Hats and leftovers the tests share; all invented.</summary>
internal static class Samples
{
    private static readonly (string Size, decimal Head)[] Heads =
        [("A", 48), ("B", 50), ("C", 52), ("D", 54), ("E", 55), ("F", 57), ("G", 59), ("H", 61)];

    public static IReadOnlyList<HatSize> Sizes { get; } = [.. Heads.Select(h => HatSize.ForHead(h.Size, Centimetres.From(h.Head)))];

    public static HatDesign SideToSide { get; } = new()
    {
        Name = "side to side",
        Construction = Construction.SideToSide,
        Gauge = Gauge.Of(28, 40),
        WeightClass = WeightClass.SuperFine,
        Brim = new Brim(Centimetres.From(5), Folded: true, BindOff: EdgeKind.Tubular),
        Braids = new Braids(BraidPlaces.BetweenStripes, StrandSource.Scraps),
        StripeCounts = new StripeCounts(4, 12),
        Sizes = Sizes,
    };

    public static HatDesign BrimUp { get; } = SideToSide with
    {
        Name = "brim up",
        Construction = Construction.BrimUpRound,
        Brim = new Brim(Centimetres.From(5)),
    };

    /// <summary>The practice hat's printed table, yards, all figures invented.</summary>
    public static PrintedHat Practice { get; } = MakePractice();

    public static HatNeeds Needs(this Hat hat, string size, int stripes) =>
        hat.TryNeeds(size, stripes, out var needs, out var why) ? needs : throw new InvalidOperationException(why.Reason);

    public static RowPlan PlanOf(this HatDesign hat, string size, int stripes) => hat.Needs(size, stripes).Plan!;

    /// <summary>A leftover of so many grams at so many yards to a gram.</summary>
    public static Leftover Yards(string id, decimal grams, decimal yardsPerGram, WeightClass weightClass = WeightClass.Light) => new(
        id, id, new Weighing(Grams.From(grams), default, Grams.From(0.1m)), new LabelRatio(1, MassUnit.Grams, yardsPerGram, LengthUnit.Yards, RatioSource.Printed))
    {
        Class = weightClass,
    };

    /// <summary>A leftover that holds so many metres, at 4 m to a gram.</summary>
    public static Leftover OfMetres(string id, decimal metres, WeightClass weightClass = WeightClass.SuperFine) => new(
        id, id, new Weighing(Grams.From(metres / 4), default, Grams.From(0.1m)), new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed))
    {
        Class = weightClass,
    };

    private static PrintedHat MakePractice()
    {
        var table = new (string Size, decimal Brim, decimal Crown, decimal Stripe, decimal Strand)[]
        {
            ("A", 19.0m, 10.0m, 10.0m, 2.4m), ("B", 20.9m, 11.0m, 11.0m, 2.6m), ("C", 22.7m, 12.0m, 12.0m, 2.8m),
            ("D", 26.5m, 13.9m, 13.9m, 3.3m), ("E", 28.3m, 14.9m, 14.9m, 3.5m),
        };
        return new PrintedHat
        {
            Name = "practice hat",
            WeightClass = WeightClass.Light,
            AllowanceIncluded = false,
            Sizes = [.. table.Select(t => new PrintedSize(t.Size, null,
            [
                Line("brim", "M", t.Brim), Line("braid 1 strand a", "S1", t.Strand), Line("braid 1 strand b", "S2", t.Strand),
                Line("stripe 1", "S1", t.Stripe), Line("stripe 2", "S2", t.Stripe), Line("braid 2 strand a", "S3", t.Strand),
                Line("braid 2 strand b", "S4", t.Strand), Line("stripe 3", "S3", t.Stripe), Line("stripe 4", "S4", t.Stripe),
                Line("crown", "M", t.Crown),
            ]))],
        };
        static PrintedLine Line(string part, string yarn, decimal yards) => new(part, yarn, yards * Metres.PerYard);
    }
}
