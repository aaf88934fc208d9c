using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.DescribeHat;

/// <summary>A finished hat's weight as typed: all of it knitted from one yarn, or the parts of one.</summary>
public sealed class FinishedForm
{
    public string Hat { get; set; } = "";

    public string Size { get; set; } = "";

    public string Stripes { get; set; } = "";

    /// <summary>The whole hat, or a part's name.</summary>
    public string Part { get; set; } = HatWords.WholeHat;

    public string Grams { get; set; } = "";

    public string Step { get; set; } = Habits.StepText;

    public string Label { get; set; } = "";

    /// <summary>What it says of the knitter, or null with messages.</summary>
    public Calibration? Read(IReadOnlyList<ListedHat> hats, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(hats);
        ArgumentNullException.ThrowIfNull(errors);
        var design = hats.FirstOrDefault(h => h.Id == Hat)?.Hat as HatDesign;
        HatNeeds? needs = null;
        if (design is null)
        {
            errors.Add("the hat", "must be one described by measurements");
        }
        else if (!int.TryParse(Stripes, out var count))
        {
            errors.Add("stripes", "must be a whole number");
        }
        else if (!design.TryNeeds(Size.Trim(), count, out needs, out var why))
        {
            errors.Add("the hat", $"cannot be knitted: {why.Reason}");
        }

        var (grams, step) = (errors.TypedGrams("grams", Grams, 0.1m, Weighing.MostGrams), errors.TypedGrams("scale step", Step, 0.001m, 100));
        if (!LabelText.TryParse(Label, RatioSource.Printed, out var ratio, out var label))
        {
            errors.Add("label", $"cannot be read: {label}");
        }

        var parts = needs?.Parts.Where(p => Part.Trim() is HatWords.WholeHat or "all" || p.Name == Part.Trim()).ToList() ?? [];
        if (needs is not null && parts.Count == 0)
        {
            errors.Add("part", $"must be {HatWords.WholeHat}, or one such as brim or stripe 1");
        }

        if (errors.Any)
        {
            return null;
        }

        // Ends hold yarn too, but no factor of the knitter's.
        var weighing = new Weighing(Knitting.Quantities.Grams.From(grams!.Value), default, Knitting.Quantities.Grams.From(step!.Value));
        var used = (double)ratio!.MetresIn(grams.Value);
        var (bare, ends) = (parts.Sum(p => p.BareMetres), parts.Sum(p => p.EndsMetres));
        var calibration = Calibration.FromUse(bare, weighing, ratio) with { Factor = (used - ends) / bare };
        if (calibration.Factor is < 0.5 or > 2)
        {
            errors.Add("the hat", $"comes to {calibration.Factor:0.00} × the yarn in the stitches alone, which no knitter uses: check the numbers");
            return null;
        }

        return calibration;
    }
}
