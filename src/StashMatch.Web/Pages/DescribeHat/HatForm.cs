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
        [.. Knitting.Hats.HatSizes.Default.Select(s => new SizeLine { Size = s.Size, Head = s.Head!.Value.Value.ToString("0.###", CultureInfo.InvariantCulture) })];

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
    public void CopyFrom(Said hat)
    {
        ArgumentNullException.ThrowIfNull(hat);
        string Or(string text, string otherwise) => text.Length > 0 ? text : otherwise;
        (Name, WeightClass, Printed, Inches) = ($"{Text(hat, "name")}, changed", Text(hat, "weightClass"), !hat["printed"].IsNothing, false);
        if (Printed)
        {
            (Unit, AllowanceIncluded, Table) = (Or(Text(hat, "printed", "unit"), "yd"), Text(hat, "printed", "allowanceIncluded") == "yes", TableOf(hat["printed"]));
            return;
        }

        (Construction, Stitches, Rows) = (Or(Text(hat, "construction"), Construction), Text(hat, "gauge", "stitchesPer10cm"), Text(hat, "gauge", "rowsPer10cm"));
        (BrimDepth, BrimFolded, BrimFit) = (Text(hat, "brim", "depthCm"), Text(hat, "brim", "folded") == "yes", Or(Text(hat, "brim", "fit"), "snug"));
        (Rib, BindOff) = (Or(Text(hat, "brim", "rib"), "2"), Or(Text(hat, "brim", "bindOff"), "ordinary"));
        (BraidsWhere, Strands) = (Or(Text(hat, "braids", "where"), "none"), Or(Text(hat, "braids", "strands"), "neighbours"));
        (StrandCount, DecreaseLines) = (Or(Text(hat, "braids", "strandCount"), "2"), Or(Text(hat, "crown", "decreaseLines"), "8"));
        (CrownYarn, PomPom) = (Or(Text(hat, "crown", "yarn"), "stripes"), Text(hat, "pomPom", "metres"));
        (Least, Most) = (Text(hat, "stripeCounts", "least"), Text(hat, "stripeCounts", "most"));
        StripeKind = hat["stripes"].IsNothing ? "equal" : hat["stripes"]["depthsCm"].IsNothing ? "proportions" : "depths";
        StripeValues = string.Join(' ', (hat["stripes"]["depthsCm"].Each ?? hat["stripes"]["proportions"].Each ?? []).Select(v => Text(v)));
        if (hat["sizes"].Each is { } sizes)
        {
            Sizes.Clear();
            foreach (var s in sizes)
            {
                Sizes.Add(new SizeLine { Size = Text(s, "size"), Head = Text(s, "headCm"), Around = Text(s, "circumferenceCm"), Height = Text(s, "heightCm"), Stitches = Text(s, "stitches") });
            }
        }
    }

    /// <summary>What is said of the hat, by the names of <see cref="HatFields"/>; a table that is none goes to <paramref name="errors"/>.</summary>
    public Said Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var hat = Said.Named(("name", Said.Typed(Name)), ("weightClass", Said.Typed(WeightClass)));
        if (Printed)
        {
            return hat.With("printed", ReadTable(errors));
        }

        var equal = StripeKind == "equal";
        var stripes = StripeValues.Split([' ', ';', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(v => StripeKind == "depths" ? Measure(v) : Said.Typed(v));
        return hat
            .With("construction", Said.Typed(Construction))
            .With("gauge", Said.Named(("stitchesPer10cm", Said.Typed(Stitches)), ("rowsPer10cm", Said.Typed(Rows))))
            .With("brim", string.IsNullOrWhiteSpace(BrimDepth) ? Said.Nothing : Said.Named(
                ("depthCm", Measure(BrimDepth)), ("folded", Said.Typed(BrimFolded ? "yes" : "no")), ("fit", Said.Typed(BrimFit)), ("rib", Said.Typed(Rib)), ("bindOff", Said.Typed(BindOff))))
            .With("braids", Said.Named(("where", Said.Typed(BraidsWhere)), ("strands", Said.Typed(Strands)), ("strandCount", Said.Typed(StrandCount))))
            .With("crown", Construction == "side-to-side" ? Said.Nothing : Said.Named(("decreaseLines", Said.Typed(DecreaseLines)), ("yarn", Said.Typed(CrownYarn))))
            .With("stripeCounts", !equal || (string.IsNullOrWhiteSpace(Least) && string.IsNullOrWhiteSpace(Most)) ? Said.Nothing : Said.Named(("least", Said.Typed(Least)), ("most", Said.Typed(Most))))
            .With("stripes", equal ? Said.Nothing : Said.Named((StripeKind == "depths" ? "depthsCm" : "proportions", Said.Several(stripes))))
            .With("pomPom", string.IsNullOrWhiteSpace(PomPom) ? Said.Nothing : Said.Named(("metres", Said.Typed(PomPom))))
            .With("sizes", Said.Several(Sizes.Select(s => Said.Named(
                ("size", Said.Typed(s.Size)), ("headCm", Measure(s.Head)), ("heightCm", Measure(s.Height)), ("circumferenceCm", Measure(s.Around)), ("stitches", Said.Typed(s.Stitches))))));
    }

    // A measure typed in inches is said in centimetres.
    private Said Measure(string typed) => Inches && TypedNumber.TryRead(typed, out var inches, out _) ? Said.Exact(Said.Number(inches * Centimetres.PerInch)) : Said.Typed(typed);

    // A first row of names: part, yarn, then the sizes; each further row a part (or none, for a letter's total), its letter, its lengths.
    private Said ReadTable(FieldErrors errors)
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
            return Head();
        }

        return Head(("sizes", Said.Several(rows[0].Skip(2).Select((name, column) => Said.Named(
            ("size", Said.Typed(name)),
            ("parts", Said.Several(rows.Skip(1).Where(r => r.Length > column + 2).Select(r => Said.Named(
                ("part", Said.Typed(PartOf(r[0]))), ("yarn", Said.Typed(r[1])), ("length", Said.Typed(r[column + 2])))))))))));
    }

    private Said Head(params IEnumerable<(string, Said)> more) =>
        Said.Named([("unit", Said.Typed(Unit)), ("allowanceIncluded", Said.Typed(AllowanceIncluded ? "yes" : "no")), .. more]);

    private static string TableOf(Said printed)
    {
        var sizes = printed["sizes"].Each ?? [];
        var lines = sizes is [var first, ..] ? first["parts"].Each ?? [] : [];
        var head = string.Join('\t', sizes.Select(s => Text(s, "size")).Prepend("yarn").Prepend("part"));
        return head + "\n" + string.Join('\n', lines.Select((l, i) =>
            string.Join('\t', new[] { Typed(Text(l, "part")), Text(l, "yarn") }.Concat(sizes.Select(s => s["parts"].Each?.ElementAtOrDefault(i) is { } part ? Text(part, "length") : "")))));
    }

    private static string Text(Said said, params IEnumerable<string> path)
    {
        var words = path.Aggregate(said, (s, name) => s[name]) is { } at ? at.Words ?? "" : "";
        return decimal.TryParse(words, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number.ToString("0.###", CultureInfo.InvariantCulture) : words;
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
}
