using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>The entry line as typed, and what is understood of it so far.</summary>
public sealed class WeighForm
{
    private (string Typed, string Key) _sent = ("", "");

    public string Name { get; set; } = "";

    public string Grams { get; set; } = "";

    public string Tare { get; set; } = "";

    public string Label { get; set; } = "";

    public string Class { get; set; } = "";

    public string Fibre { get; set; } = "";

    public string Colour { get; set; } = "";

    /// <summary>The step the scale counts in; a whole gram, as most kitchen scales, until somebody says otherwise.</summary>
    public string Step { get; set; } = "1";

    public RatioSource From { get; set; }

    public bool Singles { get; set; }

    public bool Superwash { get; set; }

    public string Care { get; set; } = "";

    /// <summary>Takes a label, thickness and fibre over from a leftover of the same yarn, knowingly.</summary>
    public void SameYarnAs(LoggedLeftover other)
    {
        ArgumentNullException.ThrowIfNull(other);
        Label = other.Ratio?.ToString() ?? "";
        From = other.Ratio?.Source ?? RatioSource.Printed;
        Class = other.Class is { } c ? $"{(int)c}" : "";
        Fibre = other.Fibre.IsUnknown ? "" : other.Fibre.ToString();
        (Superwash, Singles, Care) = (other.Superwash, other.Make == YarnMake.Singles, other.Care?.ToString() ?? "");
    }

    /// <summary>Ready for the next ball: scale step and where ratios come from stay.</summary>
    public void Next()
    {
        (Name, Grams, Tare, Label, Class, Fibre, Colour, Care, Singles, Superwash) = ("", "", "", "", "", "", "", "", false, false);
        _sent = ("", "");
    }

    /// <summary>One key for one entry as typed, so that an entry sent twice is logged once.</summary>
    public string Once()
    {
        var typed = string.Join('\n', Name, Grams, Tare, Label, Class, Fibre, Colour, Care, Step, From, Singles, Superwash);
        if (_sent.Typed != typed)
        {
            _sent = (typed, Guid.NewGuid().ToString("N"));
        }

        return _sent.Key;
    }

    /// <summary>The metres and yards as far as they can be told, with the scale's band; null while grams or label are missing or wrong.</summary>
    public string? Live()
    {
        var errors = new FieldErrors();
        if (ReadWeighing(errors) is not { } weighing)
        {
            return null;
        }

        if (string.IsNullOrWhiteSpace(Label))
        {
            return $"{Shown.Grams(weighing.Net.Value, weighing.ScaleStep)}, no label: kept as a crumb, left out of plans";
        }

        if (ReadLabel(errors) is not { } ratio)
        {
            return null;
        }

        var leftover = new Leftover("typed", "typed", weighing, ratio);
        var band = leftover.Held.Millimetres == 0 ? 0 : Math.Round(100 * (leftover.HeldAtMost.Value / leftover.Held.Value - 1), MidpointRounding.AwayFromZero);
        return Shown.Both(leftover.Held) + (band >= 1 ? $", give or take {band}\u00A0%" : "");
    }

    /// <summary>What to mind about the reading, without stopping anybody; null if nothing.</summary>
    public string? Mind()
    {
        var errors = new FieldErrors();
        if (ReadWeighing(errors) is not { } weighing)
        {
            return null;
        }

        var step = weighing.ScaleStep.Value;
        if (weighing.Gross.Value % step != 0)
        {
            return $"The reading is finer than a scale step of {step:0.###} g. If the scale counts finer, say so beside “scale step”.";
        }

        if (step > weighing.Net.Value / 10)
        {
            return "One step of the scale is over a tenth of this reading: weigh several together, or on a finer scale.";
        }

        return From == RatioSource.Measured && !string.IsNullOrWhiteSpace(Label) && ReadLabel(errors) is { } ratio && step > ratio.MassInGrams / 10
            ? "One step of the scale is over a tenth of what was measured off and weighed: measure a longer length, 20 to 40 m."
            : null;
    }

    /// <summary>The leftover, or null with a message for each field that cannot be read.</summary>
    public NewLeftover? Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (string.IsNullOrWhiteSpace(Name))
        {
            errors.Add("name", "is empty: call it something you will know it by");
        }
        else if (Name.Length > LeftoverStore.MostName)
        {
            errors.Add("name", $"must be at most {LeftoverStore.MostName} characters");
        }

        var weighing = ReadWeighing(errors);
        var ratio = string.IsNullOrWhiteSpace(Label) ? null : ReadLabel(errors);
        WeightClass? weightClass = null;
        if (Class.Trim() is { Length: > 0 } typed)
        {
            if (typed is [>= '0' and <= '7'])
            {
                weightClass = (WeightClass)(typed[0] - '0');
            }
            else
            {
                errors.Add("class", "must be a whole number from 0 to 7");
            }
        }

        if (!FibreBlend.TryParse(Fibre, out var fibre, out var fibreMessage))
        {
            errors.Add("fibre", $"cannot be read: {fibreMessage}");
        }

        YarnColour? colour = null;
        if (Colour.Trim().Length > 0)
        {
            if (YarnColour.TryParse(Colour, out var read, out var colourMessage))
            {
                colour = read;
            }
            else
            {
                errors.Add("colour", colourMessage);
            }
        }

        Knitting.Yarns.Care? care = null;
        if (!string.IsNullOrWhiteSpace(Care) && !Knitting.Yarns.Care.TryParse(Care, out care, out var careMessage))
        {
            errors.Add("care", $"cannot be read: {careMessage}");
        }

        return errors.Any ? null : new NewLeftover(Name.Trim(), weighing!, ratio)
        {
            Class = weightClass,
            Fibre = fibre!,
            Colour = colour,
            Superwash = Superwash,
            Care = care,
            Make = Singles ? YarnMake.Singles : YarnMake.Plied,
        };
    }

    /// <summary>Reads a weighing out of three typed numbers.</summary>
    public static Weighing? ReadWeighing(string grams, string tare, string step, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var gross = errors.Typed("grams", grams, 0.001m, Weighing.MostGrams);
        var core = string.IsNullOrWhiteSpace(tare) ? 0 : errors.Typed("core or bowl", tare, 0, Weighing.MostGrams);
        var fine = errors.Typed("scale step", step, 0.001m, 100);
        if (gross is null || core is null || fine is null)
        {
            return null;
        }

        var (whole, empty) = (Knitting.Quantities.Grams.From(gross.Value), Knitting.Quantities.Grams.From(core.Value));
        if (empty >= whole)
        {
            errors.Add("core or bowl", "must be less than the reading");
            return null;
        }

        return new Weighing(whole, empty, Knitting.Quantities.Grams.From(fine.Value));
    }

    private Weighing? ReadWeighing(FieldErrors errors) => ReadWeighing(Grams, Tare, Step, errors);

    private LabelRatio? ReadLabel(FieldErrors errors)
    {
        if (LabelText.TryParse(Label, From, out var ratio, out var message))
        {
            return ratio;
        }

        errors.Add("label", $"cannot be read: {message}");
        return null;
    }
}
