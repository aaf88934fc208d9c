using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>The entry line as typed, and what is understood of it so far.</summary>
public sealed class WeighForm : DetailsForm
{
    private (string Typed, string Key) _sent = ("", "");
    private (string Name, string Label)? _borrowed;

    public string Grams { get; set; } = "";

    public string Tare { get; set; } = "";

    /// <summary>The step the scale counts in; a whole gram, as most kitchen scales, until somebody says otherwise.</summary>
    public string Step { get; set; } = "1";

    /// <summary>A small picture of the photo its colour was taken from.</summary>
    public byte[]? Picture { get; set; }

    /// <summary>The reading as far as it can be read; null where it cannot.</summary>
    public Weighing? Reading => ReadWeighing(new FieldErrors());

    /// <summary>The scale's step, grams; the usual one where it cannot be read.</summary>
    public decimal StepGrams =>
        new Reading(Said.Of((LeftoverText.ScaleStepGrams, Said.Typed(Step))), new FieldErrors()).Number(LeftoverText.ScaleStepGrams) ?? Habits.Now.ScaleStep.Value;

    /// <summary>Takes a label, thickness and fibre over from a leftover of the same yarn, knowingly.</summary>
    public void SameYarnAs(LoggedLeftover other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var theirs = Of(other);
        (Label, From, Class, Fibre) = (theirs.Label, theirs.From, theirs.Class, theirs.Fibre);
        (Superwash, Make, Care) = (theirs.Superwash, theirs.Make, theirs.Care);
        _borrowed = (other.Name, Label);
    }

    /// <summary>Takes a ratio measured or guessed.</summary>
    public void Take(LabelRatio ratio)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        (Label, From) = (ratio.ToString(), ratio.Source);
    }

    /// <summary>Whose ratio stands there while it is another leftover's; null once it is typed over.</summary>
    public string? Borrowed() => _borrowed is { } from && from.Label == Label && Label.Length > 0
        ? WeighWords.Borrowed(Label, from.Name)
        : null;

    /// <summary>Puts back what was typed before, by the ids of the fields.</summary>
    public void PutBack(IReadOnlyDictionary<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string Text(string field, string otherwise) => typed.TryGetValue(field, out var text) ? text : otherwise;
        (Name, Grams, Tare, Label) = (Text("name", Name), Text("grams", Grams), Text("core-or-bowl", Tare), Text("label", Label));
        (Class, Fibre, Colour, Care) = (Text("class", Class), Text("fibre", Fibre), Text("colour", Colour), Text("care", Care));
        (Step, Bag) = (Text("scale-step", Step), Text("bag", Bag));
        (Singles, Superwash) = (Text("singles", "") == "yes", Text("superwash", "") == "yes");
        From = Enum.TryParse<RatioSource>(Text("from", ""), out var from) ? from : From;
    }

    /// <summary>Ready for the next ball: scale step and bag stay, but a ratio measured or guessed was of its one ball.</summary>
    public void Next()
    {
        (Name, Grams, Tare, Label, Class, Fibre, Colour, Care, Singles, Superwash, Picture) = ("", "", "", "", "", "", "", "", false, false, null);
        (_sent, _borrowed, From) = (("", ""), null, RatioSource.Printed);
    }

    /// <summary>One key for one entry as typed, so that an entry sent twice is logged once.</summary>
    public string Once()
    {
        var typed = string.Join('\n', Name, Grams, Tare, Label, Class, Fibre, Colour, Care, Step, From, Singles, Superwash, Bag);
        if (_sent.Typed != typed)
        {
            _sent = (typed, Guid.NewGuid().ToString("N"));
        }

        return _sent.Key;
    }

    /// <summary>The metres and yards as far as they can be told, and how far they may be off; null while grams or label are missing or wrong.</summary>
    public string? Live()
    {
        var errors = new FieldErrors();
        if (ReadWeighing(errors) is not { } weighing)
        {
            return null;
        }

        if (string.IsNullOrWhiteSpace(Label))
        {
            return WeighWords.NoLabelYet(Shown.Grams(weighing.Net.Value, weighing.ScaleStep));
        }

        if (ReadLabel(errors) is not { } ratio)
        {
            return null;
        }

        var leftover = new Leftover("typed", "typed", weighing, ratio);
        return Shown.Both(leftover.Held) + Listed.GiveOrTake(leftover);
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
            return WeighWords.FinerThanScale(step);
        }

        if (step > weighing.Net.Value / 10)
        {
            return WeighWords.ScaleTooCoarse;
        }

        return From == RatioSource.Measured && !string.IsNullOrWhiteSpace(Label) && ReadLabel(errors) is { } ratio && NoLabelForm.IsCoarse(ratio, step)
            ? NoLabelForm.LongerLength
            : null;
    }

    /// <summary>The leftover, or null with a message for each field that cannot be read.</summary>
    public NewLeftover? Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var weighing = ReadWeighing(errors);
        var details = ReadDetails(errors);
        return details is null || weighing is null ? null : new NewLeftover(details, weighing);
    }

    /// <summary>Reads a weighing out of three typed numbers.</summary>
    public static Weighing? ReadWeighing(string grams, string tare, string step, FieldErrors errors) => LeftoverText.ReadWeighing(new Reading(
        Said.Of((LeftoverText.Grams, Said.Typed(grams)), (LeftoverText.TareGrams, Said.Typed(tare)), (LeftoverText.ScaleStepGrams, Said.Typed(step))), errors));

    private Weighing? ReadWeighing(FieldErrors errors) => ReadWeighing(Grams, Tare, Step, errors);
}
