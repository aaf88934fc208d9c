using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>A hat as it was planned, as a plan keeps it: names and words of its own, whatever the rest of the program calls them.</summary>
internal sealed record KeptNeeds(
    string HatName, string Size, int Stripes, string WeightClass, IReadOnlyList<KeptPart> Parts, KeptUsage Usage, string Strands, decimal? Head = null, KeptRows? Plan = null)
{
    private const int MostParts = 200;
    private const int MostRows = 10_000;

    public static KeptNeeds Of(HatNeeds hat) => new(
        hat.HatName, hat.Size, hat.Stripes, KeptWord.Of(hat.WeightClass), [.. hat.Parts.Select(KeptPart.Of)],
        new KeptUsage(hat.Usage.Factor, hat.Usage.Spread, hat.Usage.Calibrated), KeptWord.Of(hat.Strands), hat.Head?.Value, hat.Plan is null ? null : KeptRows.Of(hat.Plan));

    public HatNeeds ToNeeds() => new(
        HatName, Size, Head is { } head ? Centimetres.From(head) : null, Stripes, KeptWord.Read<WeightClass>(WeightClass), [.. Parts.Select(p => p.ToPart())],
        new Usage(Usage.Factor, Usage.Spread, Usage.Calibrated), KeptWord.Read<StrandSource>(Strands), Plan?.ToPlan());

    /// <summary>Text from elsewhere must not make a page run wild.</summary>
    public bool CanBe() =>
        Usage.Factor is > 0.1 and < 10 && Usage.Spread is >= 0 and < 1
        && Parts.Count is > 0 and <= MostParts && Parts.DistinctBy(p => p.Name, StringComparer.Ordinal).Count() == Parts.Count
        && Parts.All(p => p.Name.Length is > 0 and <= 80 && p.BareMetres is >= 0 and < 1e5 && p.EndsMetres is >= 0 and < 1e5 && p.Rows is >= 0 and <= MostRows)
        && (Plan is not { } plan || (plan.Sections.Count <= MostParts && plan.Sections.Sum(s => s.Runs.Count) <= MostRows
            && plan.Sections.All(s => s.Runs.Count > 0 && s.Runs.All(r => r.Rows is > 0 and <= MostRows && r.Stitches is > 0 and <= MostRows))
            && plan.Parts.Select(p => p.Name).SequenceEqual(Parts.Select(p => p.Name), StringComparer.Ordinal)));
}

/// <summary>How far real use runs above the bare metres.</summary>
internal sealed record KeptUsage(double Factor, double Spread, bool Calibrated);

/// <summary>One part of it.</summary>
internal sealed record KeptPart(string Name, string Kind, int Number, int Rows, decimal Depth, double BareMetres, double EndsMetres, char? Strand = null, string? Yarn = null)
{
    public static KeptPart Of(HatPart part) =>
        new(part.Name, KeptWord.Of(part.Kind), part.Number, part.Rows, part.Depth.Value, part.BareMetres, part.EndsMetres, part.Strand, part.Yarn);

    public HatPart ToPart() => new(Name, KeptWord.Read<PartKind>(Kind), Number, Strand, Rows, Centimetres.From(Depth), BareMetres, EndsMetres, Yarn);
}

/// <summary>So many like rows.</summary>
internal sealed record KeptRun(int Rows, int Stitches, string Pattern);

/// <summary>Brim, stripe, braid or crown, row by row.</summary>
internal sealed record KeptSection(string Kind, int Number, IReadOnlyList<KeptRun> Runs);

/// <summary>The hat row by row; the gauge is stitches and rows to 10 cm.</summary>
internal sealed record KeptRows(
    string Construction,
    string Size,
    int Stripes,
    int Braids,
    int BodyStitches,
    int BodyRows,
    int BrimStitches,
    int BrimRounds,
    decimal BrimDepth,
    bool BrimFolded,
    int CrownRounds,
    IReadOnlyList<decimal> Gauge,
    decimal Circumference,
    decimal BodyHeight,
    IReadOnlyList<KeptSection> Sections,
    IReadOnlyList<KeptPart> Parts)
{
    public static KeptRows Of(RowPlan plan) => new(
        KeptWord.Of(plan.Construction),
        plan.Size,
        plan.Stripes,
        plan.Braids,
        plan.BodyStitches,
        plan.BodyRows,
        plan.BrimStitches,
        plan.BrimRounds,
        plan.BrimDepth.Value,
        plan.BrimFolded,
        plan.CrownRounds,
        [plan.Gauge.StitchesPer10Cm, plan.Gauge.RowsPer10Cm],
        plan.Circumference.Value,
        plan.BodyHeight.Value,
        [.. plan.Sections.Select(s => new KeptSection(KeptWord.Of(s.Kind), s.Number, [.. s.Runs.Select(r => new KeptRun(r.Rows, r.Stitches, KeptWord.Of(r.Pattern)))]))],
        [.. plan.Parts.Select(KeptPart.Of)]);

    public RowPlan ToPlan() => new()
    {
        Construction = KeptWord.Read<Construction>(Construction),
        Size = Size,
        Stripes = Stripes,
        Braids = Braids,
        BodyStitches = BodyStitches,
        BodyRows = BodyRows,
        BrimStitches = BrimStitches,
        BrimRounds = BrimRounds,
        BrimDepth = Centimetres.From(BrimDepth),
        BrimFolded = BrimFolded,
        CrownRounds = CrownRounds,
        Gauge = Gauge is [var stitches, var rows] ? Knitting.Quantities.Gauge.Of(stitches, rows) : throw new FormatException("A gauge is two numbers."),
        Circumference = Centimetres.From(Circumference),
        BodyHeight = Centimetres.From(BodyHeight),
        Sections = [.. Sections.Select(s => new PlanSection(KeptWord.Read<SectionKind>(s.Kind), s.Number, [.. s.Runs.Select(r => new RowRun(r.Rows, r.Stitches, KeptWord.Read<StitchPattern>(r.Pattern)))]))],
        Parts = [.. Parts.Select(p => p.ToPart())],
    };
}

/// <summary>A member of an enumeration as a plan keeps it: "tubular-edge", and "TubularEdge" before there were versions.</summary>
internal static class KeptWord
{
    public static string Of<T>(T value)
        where T : struct, Enum => Names.Of(value);

    public static T Read<T>(string word)
        where T : struct, Enum
    {
        foreach (var (name, value) in Names.All<T>())
        {
            if (name.Replace("-", "", StringComparison.Ordinal).Equals(word.Replace("-", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        throw new FormatException($"{word} is none of {string.Join(", ", Names.All<T>().Keys)}.");
    }
}
