using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>Everything about a leftover but what it weighs, as typed.</summary>
public class DetailsForm
{
    private LeftoverDetails? _was;

    public string Name { get; set; } = "";

    public string Code { get; set; } = "";

    public string Label { get; set; } = "";

    public RatioSource From { get; set; }

    public string Class { get; set; } = "";

    public string Fibre { get; set; } = "";

    public string Colour { get; set; } = "";

    public string Care { get; set; } = "";

    public YarnMake Make { get; set; }

    public bool Singles
    {
        get => Make == YarnMake.Singles;
        set => Make = value ? YarnMake.Singles : YarnMake.Plied;
    }

    public bool Superwash { get; set; }

    /// <summary>Which bag it goes in.</summary>
    public string Bag { get; set; } = "";

    public string Lot { get; set; } = "";

    public string KeptIn { get; set; } = "";

    public string KeptBackFor { get; set; } = "";

    public bool NotForHats { get; set; }

    public bool Crumb { get; set; }

    public string Note { get; set; } = "";

    /// <summary>A logged leftover as it would have been typed.</summary>
    public static DetailsForm Of(LoggedLeftover logged)
    {
        ArgumentNullException.ThrowIfNull(logged);
        var form = new DetailsForm
        {
            Name = logged.Name,
            Code = logged.Code,
            Label = logged.Ratio?.ToString() ?? "",
            From = logged.Ratio?.Source ?? RatioSource.Printed,
            Class = logged.Class is { } c ? Pieces.Terms.Short(c) : "",
            Fibre = logged.Fibre.IsUnknown ? "" : logged.Fibre.ToString(),
            Colour = logged.Colour?.Hex ?? "",
            Care = logged.Care?.ToString() ?? "",
            Make = logged.Make,
            Superwash = logged.Superwash,
            Bag = logged.Bag ?? "",
            Lot = logged.Lot ?? "",
            KeptIn = logged.KeptIn ?? "",
            KeptBackFor = logged.KeptBackFor ?? "",
            NotForHats = logged.NotForHats,
            Crumb = logged.Crumb,
            Note = logged.Note ?? "",
        };
        form._was = form.ReadDetails(new FieldErrors());
        return form;
    }

    /// <summary>What was typed, or null with a message for each field that cannot be read.</summary>
    public LeftoverDetails? ReadDetails(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (string.IsNullOrWhiteSpace(Name))
        {
            errors.Add("name", "is empty: type a name you will know it by");
        }

        foreach (var (field, text, most) in new[]
        {
            ("name", Name, LeftoverStore.MostName), ("bag", Bag, LeftoverStore.MostName), ("lot", Lot, LeftoverStore.MostName), ("kept in", KeptIn, LeftoverStore.MostName),
            ("keep for", KeptBackFor, LeftoverStore.MostName), ("note", Note, LeftoverDetails.MostNote),
        })
        {
            if (text.Trim().Length > most)
            {
                errors.Add(field, $"must be at most {most} characters");
            }
        }

        var ratio = string.IsNullOrWhiteSpace(Label) ? null : ReadLabel(errors);
        if (!FibreBlend.TryParse(Fibre, out var fibre, out var fibreMessage))
        {
            errors.Add("fibre", $"cannot be read: {fibreMessage}");
        }

        var colour = ReadColour(errors);
        Knitting.Yarns.Care? care = null;
        if (!string.IsNullOrWhiteSpace(Care) && !Knitting.Yarns.Care.TryParse(Care, out care, out var careMessage))
        {
            errors.Add("care", $"cannot be read: {careMessage}");
        }

        var weightClass = ReadClass(errors);
        if (Code.Trim() is { Length: > 0 } code && code is not [>= 'A' and <= 'Z', >= 'a' and <= 'z'])
        {
            errors.Add("two letters", "must be a capital and a small letter, such as Oa");
        }

        return errors.Any ? null : new LeftoverDetails(Name.Trim(), ratio)
        {
            Code = OrNone(Code),
            Class = weightClass,
            Fibre = fibre!,
            Colour = colour,
            Superwash = Superwash,
            Care = care,
            Make = Make,
            Bag = OrNone(Bag),
            Lot = OrNone(Lot),
            KeptIn = OrNone(KeptIn),
            KeptBackFor = OrNone(KeptBackFor),
            NotForHats = NotForHats,
            Crumb = Crumb,
            Note = OrNone(Note),
        };
    }

    /// <summary>The change to make: what was typed over, and nothing else, so that what another browser changed meanwhile stays.</summary>
    public Func<LeftoverDetails, LeftoverDetails>? ReadChange(FieldErrors errors)
    {
        if (ReadDetails(errors) is not { } now)
        {
            return null;
        }

        var was = _was ?? now;
        return d => d with
        {
            Name = Pick(was.Name, now.Name, d.Name),
            Code = Pick(was.Code, now.Code, d.Code),
            Ratio = Pick(was.Ratio, now.Ratio, d.Ratio),
            Class = Pick(was.Class, now.Class, d.Class),
            Fibre = was.Fibre.ToString() == now.Fibre.ToString() ? d.Fibre : now.Fibre,
            Colour = Pick(was.Colour, now.Colour, d.Colour),
            Superwash = Pick(was.Superwash, now.Superwash, d.Superwash),
            Care = was.Care?.ToString() == now.Care?.ToString() ? d.Care : now.Care,
            Make = Pick(was.Make, now.Make, d.Make),
            Bag = Pick(was.Bag, now.Bag, d.Bag),
            Lot = Pick(was.Lot, now.Lot, d.Lot),
            KeptIn = Pick(was.KeptIn, now.KeptIn, d.KeptIn),
            KeptBackFor = Pick(was.KeptBackFor, now.KeptBackFor, d.KeptBackFor),
            NotForHats = Pick(was.NotForHats, now.NotForHats, d.NotForHats),
            Crumb = Pick(was.Crumb, now.Crumb, d.Crumb),
            Note = Pick(was.Note, now.Note, d.Note),
        };
    }

    /// <summary>The label as typed, or null with a message.</summary>
    protected LabelRatio? ReadLabel(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (LabelText.TryParse(Label, From, out var ratio, out var message))
        {
            return ratio;
        }

        errors.Add("label", $"cannot be read: {message}");
        return null;
    }

    private static T Pick<T>(T was, T now, T there) => EqualityComparer<T>.Default.Equals(was, now) ? there : now;

    private static string? OrNone(string typed) => typed.Trim() is { Length: > 0 } text ? text : null;

    private YarnColour? ReadColour(FieldErrors errors)
    {
        if (string.IsNullOrWhiteSpace(Colour))
        {
            return null;
        }

        if (NamedColour.TryRead(Colour, out var colour, out _))
        {
            return colour;
        }

        errors.Add("colour", "is not a colour we know: choose it with the button beside it, or leave it empty");
        return null;
    }

    private WeightClass? ReadClass(FieldErrors errors)
    {
        if (WeightClasses.TryRead(Class, out var read))
        {
            return read;
        }

        if (!string.IsNullOrWhiteSpace(Class))
        {
            errors.Add("class", "must be one such as fingering, sport, DK, worsted or bulky");
        }

        return null;
    }
}
