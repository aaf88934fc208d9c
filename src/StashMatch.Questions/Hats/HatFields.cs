using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Questions;

/// <summary>The fields of a hat as it is described: by measurements, or by its printed table.</summary>
public static class HatFields
{
    /// <summary>The most sizes.</summary>
    public const int MostSizes = 40;

    /// <summary>What the hat is called.</summary>
    public static readonly Field Name = Field.Text("name");
    internal static readonly Field WeightClass = Field.Whole("weightClass", 0, 7);
    internal static readonly Field Construction = Field.Word<Construction>("construction");

    internal static readonly Field StitchesPer10Cm = Field.Number("stitchesPer10cm", Knitting.Quantities.Gauge.Least, Knitting.Quantities.Gauge.Most);
    internal static readonly Field RowsPer10Cm = Field.Number("rowsPer10cm", Knitting.Quantities.Gauge.Least, Knitting.Quantities.Gauge.Most);
    internal static readonly Field Gauge = Field.Of("gauge", StitchesPer10Cm, RowsPer10Cm);

    internal static readonly Field DepthCm = Field.NumberOver("depthCm", 0, 30);
    internal static readonly Field Folded = Field.YesNo("folded");
    internal static readonly Field Fit = Field.Word<BrimFit>("fit");
    internal static readonly Field Rib = Field.Whole("rib", 2, 4) with { Says = "2 for knit 1, purl 1; 4 for knit 2, purl 2." };
    internal static readonly Field BindOff = Field.Word<EdgeKind>("bindOff");
    internal static readonly Field Brim = Field.Of("brim", DepthCm, Folded, Fit, Rib, BindOff) with { Says = "null for none." };

    internal static readonly Field Where = Field.Word<BraidPlaces>("where");
    internal static readonly Field Strands = Field.Word<StrandSource>("strands");
    internal static readonly Field StrandCount = Field.Whole("strandCount", 1, 2);
    internal static readonly Field Braids = Field.Of("braids", Where, Strands, StrandCount);

    internal static readonly Field DecreaseLines = Field.Whole("decreaseLines", 4, 16);
    internal static readonly Field CrownYarn = Field.Word<CrownYarn>("yarn");
    internal static readonly Field Crown = Field.Of("crown", DecreaseLines, CrownYarn);

    internal static readonly Field Least = Field.Whole("least", 1, 24);
    internal static readonly Field Most = Field.Whole("most", 1, 24) with { Must = "must be a whole number from the least to 24" };
    internal static readonly Field StripeCounts = Field.Of("stripeCounts", Least, Most);

    internal static readonly Field DepthsCm = Field.NumberOver("depthsCm", 0, 100).Several(24);
    internal static readonly Field Proportions = Field.NumberOver("proportions", 0, 100).Several(24);
    internal static readonly Field Stripes = Field.Of("stripes", DepthsCm, Proportions);

    internal static readonly Field Size = Field.Text("size", 20);
    internal static readonly Field HeadCm = Field.Number("headCm", 30, 75);
    internal static readonly Field HeightCm = Field.NumberOver("heightCm", 0, 200);
    internal static readonly Field CircumferenceCm = Field.NumberOver("circumferenceCm", 0, 200);
    internal static readonly Field Stitches = Field.Whole("stitches", 2, 2_000);
    internal static readonly Field Sizes = Field.Of("sizes", Size, HeadCm, HeightCm, CircumferenceCm, Stitches).Several(MostSizes);

    internal static readonly Field PomPomMetres = Field.NumberOver("metres", 0, 1_000);
    internal static readonly Field PomPom = Field.Of("pomPom", PomPomMetres);

    internal static readonly Field Factor = Field.Number("factor", 0.5m, 2);
    internal static readonly Field SpreadPercent = Field.Number("spreadPercent", 0, 50);
    internal static readonly Field Usage = Field.Of("usage", Factor, SpreadPercent);

    internal static readonly Field Part = Field.Text("part");
    internal static readonly Field Yarn = Field.Text("yarn", 20);
    internal static readonly Field Length = Field.NumberOver("length", 0, 100_000);
    internal static readonly Field Parts = Field.Of("parts", Part, Yarn, Length).Several(120);
    internal static readonly Field PrintedSizes = Field.Of("sizes", Size, HeadCm, Parts).Several(MostSizes);
    internal static readonly Field Unit = Field.Word("unit", "m", "yd");
    internal static readonly Field AllowanceIncluded = Field.YesNo("allowanceIncluded");
    internal static readonly Field Printed = Field.Of("printed", Unit, AllowanceIncluded, PrintedSizes);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Field> All { get; } =
        [Name, WeightClass, Construction, Gauge, Brim, Braids, Crown, StripeCounts, Stripes, Sizes, PomPom, Usage, Printed];
}
