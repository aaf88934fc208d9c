using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.DescribeHat;

/// <summary>A weighed, counted swatch as typed.</summary>
public sealed class SwatchForm
{
    public string Stitches { get; set; } = "";

    public string Rows { get; set; } = "";

    public string GaugeStitches { get; set; } = "";

    public string GaugeRows { get; set; } = "";

    public string Grams { get; set; } = "";

    public string Step { get; set; } = Habits.StepText;

    public string Label { get; set; } = "";

    /// <summary>What it says of the knitter, or null with messages.</summary>
    public Calibration? Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var (stitches, rows) = (errors.Typed("stitches cast on", Stitches, 4, 1_000), errors.Typed("rows knitted", Rows, 4, 5_000));
        var (w, c) = (errors.Typed("stitches to 10 cm", GaugeStitches, Gauge.Least, Gauge.Most), errors.Typed("rows to 10 cm", GaugeRows, Gauge.Least, Gauge.Most));
        var (grams, step) = (errors.TypedGrams("grams", Grams, 0.1m, Weighing.MostGrams), errors.TypedGrams("scale step", Step, 0.001m, 100));
        if (!LabelText.TryParse(Label, RatioSource.Printed, out var ratio, out var label))
        {
            errors.Add("label", $"cannot be read: {label}");
        }

        if (errors.Any)
        {
            return null;
        }

        var calibration = Calibration.FromSwatch(
            (int)stitches!, (int)rows!, Gauge.Of(w!.Value, c!.Value), new Weighing(Knitting.Quantities.Grams.From(grams!.Value), default, Knitting.Quantities.Grams.From(step!.Value)), ratio!);
        if (calibration.Factor is < 0.5 or > 2)
        {
            errors.Add("the swatch", $"comes to {calibration.Factor:0.00} × the yarn in the stitches alone, which no knitter uses: check the numbers");
            return null;
        }

        return calibration;
    }
}
