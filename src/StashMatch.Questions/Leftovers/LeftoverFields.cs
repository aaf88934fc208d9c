using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>
/// The details of a leftover, each with its name, how it is written, read and checked. Rows, ledgers, kept files, tables, forms and the open
/// interface all go by this one list, in its order.
/// </summary>
public static class LeftoverFields
{
    /// <summary>The label's mass and length, or both as printed.</summary>
    public static readonly Field Label = LabelReading.Field("label");

    /// <summary>Where the ratio comes from.</summary>
    public static readonly Field RatioFrom = Field.Word<RatioSource>("ratioFrom");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<LeftoverField> All { get; } =
    [
        Words("name", LeftoverDetails.MostName, d => d.Name, (d, text) => d with { Name = text?.Trim() ?? "" }),
        new(Field.Text("code", 2), d => Said.Exact(d.Code), ReadCode),
        new(Label, d => LabelReading.Say(d.Ratio), ReadRatio),
        new(RatioFrom, d => d.Ratio is { } r ? Said.Exact(Names.Of(r.Source)) : Said.Nothing, ReadSource),
        Of(Field.Whole("weightClass", 0, 7), d => d.Class is { } c ? Number((int)c) : Said.Nothing, (d, r, f) => d with { Class = (WeightClass?)r.Whole(f) }),
        Of(Field.Text("fibre", 300), d => Said.Exact(d.Fibre.ToString()), (d, r, f) => d with { Fibre = r.Fibre(f) }),
        YesNo("superwash", d => d.Superwash, (d, yes) => d with { Superwash = yes }),
        Of(Field.Word<YarnMake>("make"), d => Said.Exact(Names.Of(d.Make)), (d, r, f) => d with { Make = r.Word<YarnMake>(f) ?? YarnMake.Plied }),
        YesNo("singles", d => d.Make == YarnMake.Singles, (d, yes) => d with { Make = yes ? YarnMake.Singles : YarnMake.Plied }) with { IsAnotherWay = true },
        Of(Field.Text("colour", 60), d => Said.Exact(d.Colour?.Hex), (d, r, f) => d with { Colour = r.Colour(f) }),
        Of(Field.Text("care", 200), d => Said.Exact(d.Care?.ToString()), (d, r, f) => d with { Care = r.Care(f) }),
        Words("lot", 80, d => d.Lot, (d, text) => d with { Lot = text }),
        Words("bag", 80, d => d.Bag, (d, text) => d with { Bag = text }),
        Words("keptIn", 80, d => d.KeptIn, (d, text) => d with { KeptIn = text }),
        Words("keptBackFor", 80, d => d.KeptBackFor, (d, text) => d with { KeptBackFor = text }),
        YesNo("notForHats", d => d.NotForHats, (d, yes) => d with { NotForHats = yes }),
        YesNo("crumb", d => d.Crumb, (d, yes) => d with { Crumb = yes }),
        Words("note", LeftoverDetails.MostNote, d => d.Note, (d, text) => d with { Note = text }),
    ];

    /// <summary>Their names and bounds.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [.. All.Select(f => f.Field)];

    /// <summary>Those a table has a column for, an edit remembers and files keep.</summary>
    public static IReadOnlyList<LeftoverField> Kept { get; } = [.. All.Where(f => !f.IsAnotherWay)];

    /// <summary>The columns of those.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. Kept.SelectMany(f => f.Columns)];

    /// <summary>What is said of a leftover.</summary>
    public static Said Say(LeftoverDetails details) => Said.Of(Kept.Select(f => (f.Field, f.Write(details))));

    /// <summary>The same with every other way to say it.</summary>
    public static Said SayAll(LeftoverDetails details) => Said.Of(All.Select(f => (f.Field, f.Write(details))));

    /// <summary>New details; null where something is wrong.</summary>
    public static LeftoverDetails? Read(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var before = reading.Errors.Count;
        var details = Change(new LeftoverDetails("", null), reading);
        if (details.Name.Length == 0)
        {
            reading.Wrong(All[0].Field, "is missing: call it something you will know it by");
        }

        return reading.Errors.Count > before ? null : details;
    }

    /// <summary>The details with the fields that are named changed; nothing said of one clears it. What is wrong is told, and stays as it was.</summary>
    public static LeftoverDetails Change(LeftoverDetails details, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return All.Where(f => reading.Names(f.Field)).Aggregate(details, (d, f) => f.Read(d, reading));
    }

    /// <summary>One column's text; empty where nothing is said.</summary>
    public static string Text(Said said, string column)
    {
        ArgumentNullException.ThrowIfNull(said);
        var field = Kept.First(f => f.Columns.Contains(column, StringComparer.Ordinal));
        return (field.Field.Inside.Count == 0 ? said[field.Field] : said[field.Field][field.Field.Inside.First(i => field.Column(i) == column)]).Words ?? "";
    }

    /// <summary>What the columns of a table say; null or empty where nothing is said.</summary>
    public static Said OfColumns(Func<string, string?> text) => Said.Of(All.Select(f => (f.Field, OfColumns(f, text))).Where(f => !f.Item2.IsNothing));

    private static Said OfColumns(LeftoverField field, Func<string, string?> text)
    {
        if (field.Field.Inside.Count == 0)
        {
            return Said.Typed(text(field.Field.Name));
        }

        var inside = field.Field.Inside.Select(i => (i, Said.Typed(text(field.Column(i))?.Trim()))).Where(i => !i.Item2.IsNothing).ToList();
        return inside.Count == 0 ? Said.Nothing : Said.Of(inside);
    }

    private static LeftoverField Of(Field field, Func<LeftoverDetails, Said> write, Func<LeftoverDetails, Reading, Field, LeftoverDetails> read) =>
        new(field, write, (d, r) => read(d, r, field));

    private static LeftoverField Words(string name, int longest, Func<LeftoverDetails, string?> text, Func<LeftoverDetails, string?, LeftoverDetails> with) =>
        Of(Field.Text(name, longest), d => Said.Exact(text(d)), (d, r, f) => with(d, r.Text(f) is { Length: > 0 } said ? said : null)) with { IsOwnWords = true };

    private static LeftoverField YesNo(string name, Func<LeftoverDetails, bool> yes, Func<LeftoverDetails, bool, LeftoverDetails> with) =>
        Of(Field.YesNo(name), d => Said.Exact(yes(d) ? "yes" : "no"), (d, r, f) => with(d, r.YesNo(f) ?? false));

    private static Said Number(int number) => Said.Exact(Said.Number(number));

    private static LeftoverDetails ReadCode(LeftoverDetails details, Reading reading)
    {
        var field = All[1].Field;
        var code = reading.Said[field].Words?.Trim();
        if (string.IsNullOrEmpty(code))
        {
            return details with { Code = null };
        }

        if (code is [>= 'A' and <= 'Z', >= 'a' and <= 'z'])
        {
            return details with { Code = code };
        }

        reading.Wrong(field, "must be a capital and a small letter, such as Oa");
        return details;
    }

    private static LeftoverDetails ReadRatio(LeftoverDetails details, Reading reading) =>
        details with { Ratio = reading.Has(Label) ? LabelReading.Read(reading, Label, RatioSource.Printed) ?? details.Ratio : null };

    // The label's own field has been read by now.
    private static LeftoverDetails ReadSource(LeftoverDetails details, Reading reading)
    {
        if (reading.Word<RatioSource>(RatioFrom) is not { } source)
        {
            return details;
        }

        if (details.Ratio is { } ratio)
        {
            return details with { Ratio = new LabelRatio(ratio.Mass, ratio.MassUnit, ratio.Length, ratio.LengthUnit, source) };
        }

        if (!reading.Has(Label) && reading.Said[RatioFrom].IsExact)
        {
            reading.Wrong(RatioFrom, "needs a label, and there is none");
        }

        return details;
    }
}
