using System.Globalization;
using CsvHelper;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.Pages.DescribeHat;

/// <summary>One size as typed: a head alone, or a circumference with a height.</summary>
public sealed class SizeLine
{
    public string Size { get; set; } = "";

    public string Head { get; set; } = "";

    public string Around { get; set; } = "";

    public string Height { get; set; } = "";

    public string Stitches { get; set; } = "";
}

/// <summary>A hat as typed, by measurements or by its printed table.</summary>
public sealed class HatForm
{
    public bool Printed { get; set; }

    public string Name { get; set; } = "";

    public string WeightClass { get; set; } = "1";

    public string Construction { get; set; } = "side-to-side";

    public string Stitches { get; set; } = "28";

    public string Rows { get; set; } = "40";

    public bool Inches { get; set; }

    public string BrimDepth { get; set; } = "5";

    public bool BrimFolded { get; set; } = true;

    public string BrimFit { get; set; } = "snug";

    public string Rib { get; set; } = "2";

    public string BindOff { get; set; } = "tubular";

    public string BraidsWhere { get; set; } = "between-stripes";

    public string Strands { get; set; } = "scraps";

    public string StrandCount { get; set; } = "2";

    public string DecreaseLines { get; set; } = "8";

    public string CrownYarn { get; set; } = "stripes";

    public string Least { get; set; } = "4";

    public string Most { get; set; } = "12";

    public string PomPom { get; set; } = "";

    /// <summary>"equal", "proportions" or "depths".</summary>
    public string StripeKind { get; set; } = "equal";

    public string StripeValues { get; set; } = "";

    public IList<SizeLine> Sizes { get; } = (List<SizeLine>)
        [.. Knitting.Hats.HatSizes.Default.Select(s => new SizeLine { Size = s.Size, Head = Text((double)s.Head!.Value.Value) })];

    public string Unit { get; set; } = "yd";

    public bool AllowanceIncluded { get; set; }

    public string Table { get; set; } = "";

    /// <summary>"centimetres" or "inches".</summary>
    public string Measures
    {
        get => Inches ? "inches" : "centimetres";
        set => Inches = value == "inches";
    }

    /// <summary>"folded" or "single".</summary>
    public string BrimWorn
    {
        get => BrimFolded ? "folded" : "single";
        set => BrimFolded = value == "folded";
    }

    /// <summary>"included" or "not included".</summary>
    public string Allowance
    {
        get => AllowanceIncluded ? "included" : "not included";
        set => AllowanceIncluded = value == "included";
    }

    /// <summary>Starts from another hat.</summary>
    public void CopyFrom(HatDescription d)
    {
        ArgumentNullException.ThrowIfNull(d);
        (Name, WeightClass, Printed, Inches) = ($"{d.Name}, changed", Text(d.WeightClass), d.Printed is not null, false);
        if (d.Printed is { } printed)
        {
            (Unit, AllowanceIncluded, Table) = (printed.Unit ?? "yd", printed.AllowanceIncluded ?? false, TableOf(printed));
            return;
        }

        (Construction, Stitches, Rows) = (d.Construction ?? Construction, Text(d.Gauge?.StitchesPer10cm), Text(d.Gauge?.RowsPer10cm));
        (BrimDepth, BrimFolded, BrimFit) = (Text(d.Brim?.DepthCm), d.Brim?.Folded ?? false, d.Brim?.Fit ?? "snug");
        (Rib, BindOff) = (Text(d.Brim?.Rib ?? 2), d.Brim?.BindOff ?? "ordinary");
        (BraidsWhere, Strands, StrandCount) = (d.Braids?.Where ?? "none", d.Braids?.Strands ?? "neighbours", Text(d.Braids?.StrandCount ?? 2));
        (DecreaseLines, CrownYarn) = (Text(d.Crown?.DecreaseLines ?? 8), d.Crown?.Yarn ?? "stripes");
        (Least, Most) = (Text(d.StripeCounts?.Least), Text(d.StripeCounts?.Most));
        PomPom = Text(d.PomPom?.Metres);
        StripeKind = d.Stripes is null ? "equal" : d.Stripes.DepthsCm is null ? "proportions" : "depths";
        StripeValues = string.Join(' ', (d.Stripes?.DepthsCm ?? d.Stripes?.Proportions ?? []).Select(v => Text(v)));
        if (d.Sizes is { } sizes)
        {
            Sizes.Clear();
            foreach (var s in sizes.OfType<SizeDescription>())
            {
                Sizes.Add(new SizeLine
                {
                    Size = s.Size ?? "",
                    Head = Text(s.HeadCm),
                    Around = Text(s.CircumferenceCm),
                    Height = Text(s.HeightCm),
                    Stitches = Text(s.Stitches),
                });
            }
        }
    }

    /// <summary>The description as far as it can be read; numbers that are none go to <paramref name="errors"/> under the field's name.</summary>
    public HatDescription Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        double? Number(string field, string typed, bool measure = false)
        {
            if (string.IsNullOrWhiteSpace(typed))
            {
                return null;
            }

            if (TypedNumber.TryRead(typed, out var value, out var message))
            {
                return (double)(measure && Inches ? value * Centimetres.PerInch : value);
            }

            errors.Add(field, message);
            return null;
        }

        int? Whole(string field, string typed)
        {
            if (Number(field, typed) is not { } value)
            {
                return null;
            }

            if (value == Math.Floor(value))
            {
                return (int)value;
            }

            errors.Add(field, "must be a whole number");
            return null;
        }

        var start = new HatDescription { Name = Name, WeightClass = Whole("weightClass", WeightClass) };
        if (Printed)
        {
            return start with { Printed = ReadTable(errors) };
        }

        var sideways = Construction == "side-to-side";
        var values = StripeKind == "equal" ? null
            : StripeValues.Split([' ', ';', '\n'], StringSplitOptions.RemoveEmptyEntries).Select((v, i) => Number($"stripes[{i}]", v, StripeKind == "depths") ?? 0).ToList();
        return start with
        {
            Construction = Construction,
            Gauge = new(Number("gauge.stitchesPer10cm", Stitches), Number("gauge.rowsPer10cm", Rows)),
            Brim = string.IsNullOrWhiteSpace(BrimDepth) ? null : new(Number("brim.depthCm", BrimDepth, measure: true), BrimFolded, BrimFit, Whole("brim.rib", Rib), BindOff),
            Braids = new(BraidsWhere, Strands, Whole("braids.strandCount", StrandCount)),
            Crown = sideways ? null : new(Whole("crown.decreaseLines", DecreaseLines), CrownYarn),
            StripeCounts = values is not null || (string.IsNullOrWhiteSpace(Least) && string.IsNullOrWhiteSpace(Most)) ? null
                : new(Whole("stripeCounts.least", Least), Whole("stripeCounts.most", Most)),
            Stripes = values is null ? null : StripeKind == "depths" ? new(values, null) : new(null, values),
            PomPom = string.IsNullOrWhiteSpace(PomPom) ? null : new(Number("pomPom.metres", PomPom)),
            Sizes = [.. Sizes.Select((s, i) => new SizeDescription(
                s.Size, Number($"sizes[{i}].headCm", s.Head, true), Number($"sizes[{i}].heightCm", s.Height, true), Number($"sizes[{i}].circumferenceCm", s.Around, true), Whole($"sizes[{i}].stitches", s.Stitches)))],
        };
    }

    // A first row of names: part, yarn, then the sizes; each further row a part (or none, for a letter's total), its letter, its lengths.
    private PrintedDescription ReadTable(FieldErrors errors)
    {
        var separator = Table.Contains('\t', StringComparison.Ordinal) ? '\t' : Table.Contains(';', StringComparison.Ordinal) ? ';' : ',';
        var rows = new List<string[]>();
        try
        {
            using var csv = CsvReader.FromText(Table.Length > 100_000 ? Table[..100_000] : Table, new CsvReaderOptions { Separator = separator, HasHeader = false });
            while (csv.Read())
            {
                rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i).Trim())]);
            }
        }
        catch (CsvFormatException)
        {
            errors.Add("printed.table", "cannot be read as rows and columns");
        }

        if (rows.Count < 2 || rows[0].Length < 3)
        {
            errors.Add("printed.table", "needs a first row of part, yarn and the sizes, and a row for each length");
            return new(Unit, AllowanceIncluded, []);
        }

        var sizes = rows[0].Skip(2).Select((name, column) => new PrintedSizeDescription(
            name,
            null,
            [.. rows.Skip(1).Where(r => r.Length > column + 2).Select((r, line) =>
            {
                if (!TypedNumber.TryRead(r[column + 2], out var length, out var message))
                {
                    errors.Add("printed.table", $"row {line + 2}, size {name} {message}");
                }

                return new PrintedPartDescription(r[0].Length == 0 ? null : PartOf(r[0]), r[1], (double)length);
            })])).ToList();
        return new(Unit, AllowanceIncluded, sizes);
    }

    private static string TableOf(PrintedDescription printed)
    {
        var sizes = printed.Sizes?.OfType<PrintedSizeDescription>().ToList() ?? [];
        var lines = sizes.FirstOrDefault()?.Parts?.OfType<PrintedPartDescription>().ToList() ?? [];
        var head = string.Join('\t', sizes.Select(s => s.Size).Prepend("yarn").Prepend("part"));
        return head + "\n" + string.Join('\n', lines.Select((l, i) => string.Join('\t', new[] { Typed(l.Part), l.Yarn }.Concat(sizes.Select(s => Text(s.Parts?[i]?.Length))))));
    }

    // A braid's two yarns are typed as people call them: "braid 1 first colour".
    private static string PartOf(string typed)
    {
        var plain = typed.ToLowerInvariant();
        return plain.Replace(":", "", StringComparison.Ordinal).Split(' ') is ["braid", var number, "first" or "second", "colour"] words && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var braid)
            ? Knitting.Hats.PartNames.Strand(braid, words[2] == "first" ? 'a' : 'b')
            : plain;
    }

    private static string Typed(string? part) => Pieces.Words.Part(part ?? "").Replace(":", "", StringComparison.Ordinal);

    private static string Text(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";

}
