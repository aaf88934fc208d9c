using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Hats;

/// <summary>Published yardages of plain hats, each with its source in the table; described as a brim-up hat in one stripe.</summary>
internal static class PublishedHats
{
    public const int Rows = 13;

    public static IEnumerable<(HatDesign Hat, double StatedMetres)> All() => CheckTable.Read("published-hats", Rows).Rows.Select(row =>
    {
        var gauge = Gauge.Of(row.Number("gauge_sts_per_10cm"), row.Number("gauge_rows_per_10cm"));
        var counted = row["circumference_cm"].Length == 0;
        int? body = counted ? int.Parse(row["stitch_counts"].Split("body ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture) : null;
        var around = counted ? body!.Value / gauge.StitchesPerCm : row.Number("circumference_cm");
        return (new HatDesign
        {
            Name = row["source"],
            Construction = Construction.BrimUpRound,
            Gauge = gauge,
            WeightClass = WeightClass.Medium,
            Brim = new Brim(Centimetres.From(counted ? 5.08m : 4), Fit: counted ? BrimFit.Snug : BrimFit.Easy),
            Crown = new Crown(counted ? 16 : 8),
            Sizes = [new HatSize("X", Centimetres.From(around), Centimetres.From(row.Number("height_cm")), null, body)],
        }, row.Real("stated_m"));
    });
}
