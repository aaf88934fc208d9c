using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Makes a tester's result of a description, or says field by field what stands in the way.</summary>
public static class TesterReader
{
    private const int MostText = 500;

    /// <summary>Reads a description against the hat it is of; null where <paramref name="errors"/> got something.</summary>
    public static TesterResult? Read(TesterDescription description, Hat hat, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(description);
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(errors);
        if (string.IsNullOrWhiteSpace(description.Tester) || description.Tester.Length > 80)
        {
            errors.Add("tester", "is missing, or longer than 80 characters");
        }

        if (description.Changes is { Length: > MostText })
        {
            errors.Add("changes", $"must be at most {MostText} characters");
        }

        if (description.ExtraRounds is < -1_000 or > 1_000)
        {
            errors.Add("extra rounds", "must be from -1000 to 1000");
        }

        decimal? Gauge(string field, decimal? value) => value is null ? null : errors.Number(field, (double)value, Knitting.Quantities.Gauge.Least, Knitting.Quantities.Gauge.Most);
        var (writtenStitches, writtenRows) = (Gauge("gauge as written, stitches", description.WrittenStitches), Gauge("gauge as written, rows", description.WrittenRows));
        var (stitches, rows) = (Gauge("gauge, stitches", description.Stitches), Gauge("gauge, rows", description.Rows));
        var step = errors.Number("scale step", (double?)(description.ScaleStepGrams ?? 0.1m), 0.001m, 100);
        if (!LabelText.TryParse(description.Label, RatioSource.Printed, out var label, out var message))
        {
            errors.Add("label", $"cannot be read: {message}");
        }

        var parts = ReadParts(description, hat, errors);
        return errors.Any ? null : new TesterResult(description.Tester!.Trim(), description.Size!, StripesOf(description, hat)!.Value, label!, Grams.From(step!.Value), parts)
        {
            StitchesPer10Cm = stitches,
            RowsPer10Cm = rows,
            Written = writtenStitches is null && writtenRows is null ? null : new WrittenGauge(writtenStitches, writtenRows),
            ExtraRounds = description.ExtraRounds ?? 0,
            OtherYarn = description.OtherYarn ?? false,
            Changes = string.IsNullOrWhiteSpace(description.Changes) ? null : description.Changes,
            ByDesigner = description.ByDesigner ?? false,
        };
    }

    // A printed hat has one count, which need not be said.
    private static int? StripesOf(TesterDescription description, Hat hat) =>
        description.Stripes ?? (hat.CountsFor(description.Size ?? "") is [var only] ? only : null);

    private static List<TesterPart> ReadParts(TesterDescription description, Hat hat, FieldErrors errors)
    {
        HatNeeds? needs = null;
        if (description.Size is null || !hat.SizeNames.Contains(description.Size, StringComparer.Ordinal))
        {
            errors.Add("size", $"must be one of {string.Join(", ", hat.SizeNames)}");
        }
        else if (StripesOf(description, hat) is not (>= 1 and <= 24 and var stripes))
        {
            errors.Add("stripes", "must be a whole number from 1 to 24");
        }
        else if (!hat.TryNeeds(description.Size, stripes, out needs, out var why))
        {
            errors.Add(why.Field == "stripes" ? "stripes" : "size", $"cannot be knitted: {why.Reason}");
        }

        var names = needs is null ? [] : Piece.Of(needs).Select(p => p.Name).ToList();
        var parts = new List<TesterPart>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        if (description.Parts is not { Count: >= 1 and <= 200 })
        {
            errors.Add("part", "must be weighed: at least one");
        }

        foreach (var part in description.Parts?.Take(200) ?? [])
        {
            var name = part?.Part ?? "";
            if (needs is not null && !names.Contains(name, StringComparer.Ordinal))
            {
                errors.Add("part", $"{Short(name)} is not one of {string.Join(", ", names.Take(12))}{(names.Count > 12 ? " and so on" : "")}");
            }
            else if (!seen.Add(name))
            {
                errors.Add("part", $"{Short(name)} is there twice");
            }

            var before = errors.Number("before", (double?)part?.BeforeGrams, 0, Weighing.MostGrams, leastItself: false);
            var after = errors.Number("after", (double?)part?.AfterGrams, 0, Weighing.MostGrams);
            if (before is not { } b || after is not { } a)
            {
                continue;
            }

            if (Grams.From(a) >= Grams.From(b))
            {
                errors.Add("after", $"must be less than before, for {Short(name)}");
            }
            else
            {
                parts.Add(new TesterPart(name, Grams.From(b), Grams.From(a)));
            }
        }

        return parts;
    }

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
