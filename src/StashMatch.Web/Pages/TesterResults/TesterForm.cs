using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.Pages.TesterResults;

/// <summary>One part on the scale, as typed.</summary>
public sealed class TypedPart(string name, string? inside)
{
    public string Name { get; } = name;

    public string? Inside { get; } = inside;

    public string Before { get; set; } = "";

    public string After { get; set; } = "";
}

/// <summary>A tester's result as typed.</summary>
public sealed class TesterForm
{
    public string Tester { get; set; } = "";

    public string Size { get; set; } = "";

    public string Stripes { get; set; } = "";

    public string Label { get; set; } = "";

    public string Step { get; set; } = "0.1";

    public string WrittenStitches { get; set; } = "";

    public string WrittenRows { get; set; } = "";

    public string Stitches { get; set; } = "";

    public string Rows { get; set; } = "";

    public string ExtraRounds { get; set; } = "0";

    public bool OtherYarn { get; set; }

    public bool ByDesigner { get; set; }

    public string Changes { get; set; } = "";

    public IReadOnlyList<TypedPart> Parts { get; private set; } = [];

    /// <summary>Lays the parts of a size and count out; what was typed stays where the part does.</summary>
    public void Lay(Sheet? sheet)
    {
        var before = Parts.ToDictionary(p => p.Name, StringComparer.Ordinal);
        Parts = sheet is null ? [] : [.. sheet.Pieces.Select(p => before.GetValueOrDefault(p.Name) is { } kept && kept.Inside == sheet.Inside(p) ? kept : new TypedPart(p.Name, sheet.Inside(p)))];
    }

    /// <summary>What stays when one tester is saved and the next is typed.</summary>
    public void Next()
    {
        (Tester, Stitches, Rows, ExtraRounds, Changes, OtherYarn) = ("", "", "", "0", "", false);
        foreach (var part in Parts)
        {
            (part.Before, part.After) = ("", "");
        }
    }

    /// <summary>The description as far as it can be read; numbers that are none go to <paramref name="errors"/>.</summary>
    public TesterDescription Read(Hat hat, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        decimal? Number(string field, string typed)
        {
            if (string.IsNullOrWhiteSpace(typed))
            {
                return null;
            }

            if (TypedNumber.TryRead(typed, out var value, out var message))
            {
                return value;
            }

            errors.Add(field, message);
            return null;
        }

        var rounds = 0;
        if (!string.IsNullOrWhiteSpace(ExtraRounds) && !int.TryParse(ExtraRounds.Trim().TrimStart('+'), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out rounds))
        {
            errors.Add("extra rounds", "must be a whole number, such as 2 or -1");
        }

        int? stripes = null;
        if (hat is HatDesign)
        {
            stripes = int.TryParse(Stripes, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 0;
        }

        var weighed = Parts.Where(p => p.Before.Trim().Length + p.After.Trim().Length > 0).ToList();
        return new TesterDescription
        {
            Tester = Tester.Trim(),
            Size = Size,
            Stripes = stripes,
            Label = Label,
            ScaleStepGrams = Number("scale step", Step),
            WrittenStitches = hat is HatDesign ? null : Number("gauge as written, stitches", WrittenStitches),
            WrittenRows = hat is HatDesign ? null : Number("gauge as written, rows", WrittenRows),
            Stitches = Number("gauge, stitches", Stitches),
            Rows = Number("gauge, rows", Rows),
            ExtraRounds = rounds,
            OtherYarn = OtherYarn,
            ByDesigner = ByDesigner,
            Changes = string.IsNullOrWhiteSpace(Changes) ? null : Changes.Trim(),
            Parts = [.. weighed.Select(p => new TesterPartDescription(p.Name, Number($"{p.Name}, before", p.Before), Number($"{p.Name}, after", p.After)))],
        };
    }
}
