using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Tests;

namespace StashMatch.Pictures.Tests;

/// <summary>Hats to paint as wool. All invented.</summary>
internal static class Wools
{
    private static readonly string[] Yarns = ["#60707D", "#A8B45C", "#B4362C", "#E0AE35", "#26374F", "#8F6C97"];
    private static readonly string[] Codes = ["Wt", "Go", "Ro", "Gr", "So", "Hb"];
    private static readonly StripeCounts Any = new(1, 24);

    public static YarnLook Yarn(params string[] hexes) =>
        new([.. hexes.Select(h => YarnColour.TryParse(h, out var colour, out _) ? colour : throw new ArgumentException($"{h} is no colour", nameof(hexes)))]);

    /// <summary>Wool for every part, none like its neighbours.</summary>
    public static Dictionary<string, PartWool> For(IEnumerable<HatPart> parts) => parts.ToDictionary(p => p.Name, p => p.Kind switch
    {
        PartKind.Brim => new PartWool(Yarn("#A9845F"), Code: "Hr"),
        PartKind.Seam => new PartWool(Yarn("#523063"), Code: "Da"),
        PartKind.Crown => new PartWool(Yarn("#D8C7A5"), Code: "Oa"),
        PartKind.PomPom => new PartWool(Yarn("#F0E8D8"), Code: "Oa"),
        PartKind.Strand => new PartWool(Yarn(p.Strand == 'a' ? "#F5F0E0" : "#101820"), Code: p.Strand == 'a' ? "Pa" : "In"),
        _ => new PartWool(Yarn(Yarns[Math.Max(0, p.Number - 1) % 6]), Code: Codes[Math.Max(0, p.Number - 1) % 6]),
    }, StringComparer.Ordinal);

    public static WoolHat Hat(this RowPlan plan) => WoolHat.Of(plan, For(plan.Parts));

    /// <summary>Hats of every construction, brim and braid, by a name.</summary>
    public static IEnumerable<(string Name, WoolHat Hat)> All()
    {
        var (side, up) = (Samples.SideToSide, Samples.BrimUp with { Braids = new Braids(BraidPlaces.None) });
        var single = new Brim(Centimetres.From(5));
        yield return ("side", side.PlanOf("F", 6).Hat());
        yield return ("side-single", (side with { Brim = single }).PlanOf("C", 5).Hat());
        yield return ("side-none", (side with { Brim = null }).PlanOf("A", 4).Hat());
        yield return ("side-24", (side with { StripeCounts = Any }).PlanOf("F", 24).Hat());
        yield return ("side-1", (side with { StripeCounts = Any }).PlanOf("F", 1).Hat());
        yield return ("side-one-strand", (side with { Braids = new Braids(BraidPlaces.BetweenStripes, StrandSource.Scraps, 1) }).PlanOf("C", 6).Hat());
        yield return ("up", up.PlanOf("F", 8).Hat());
        yield return ("up-flat", (up with { Construction = Construction.BrimUpFlat }).PlanOf("C", 6).Hat());
        yield return ("up-none", (up with { Brim = null }).PlanOf("F", 6).Hat());
        yield return ("up-folded-braids", (up with { Brim = side.Brim, Braids = new Braids(BraidPlaces.BesideBrimToo) }).PlanOf("F", 5).Hat());
        yield return ("up-24", (up with { StripeCounts = Any }).PlanOf("F", 24).Hat());
        yield return ("up-own-crown", (up with { Crown = new Crown(8, CrownYarn.Own) }).PlanOf("C", 6).Hat());
        var practice = Samples.Practice.Needs("C", 4);
        yield return ("printed", WoolHat.Of(practice, For(practice.Parts)));
        var ball = (up with { PomPom = Metres.FromMillimetres(20_000) }).Needs("F", 6);
        yield return ("pom-pom", WoolHat.Of(ball, For(ball.Parts)));
        yield return ("undyed", WoolHat.Of(side.PlanOf("F", 6), new Dictionary<string, PartWool>()));
    }
}
