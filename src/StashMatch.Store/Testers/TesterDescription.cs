namespace StashMatch.Store;

/// <summary>What a tester sent back, as it is written in JSON: masses in grams, counts to 10 cm, the label as printed.</summary>
public sealed record TesterDescription
{
    public string? Tester { get; init; }

    public string? Size { get; init; }

    public int? Stripes { get; init; }

    public string? Label { get; init; }

    public decimal? ScaleStepGrams { get; init; }

    public decimal? WrittenStitches { get; init; }

    public decimal? WrittenRows { get; init; }

    public decimal? Stitches { get; init; }

    public decimal? Rows { get; init; }

    public int? ExtraRounds { get; init; }

    public bool? OtherYarn { get; init; }

    public string? Changes { get; init; }

    public bool? ByDesigner { get; init; }

    public IReadOnlyList<TesterPartDescription?>? Parts { get; init; }
}

/// <summary>One ball before and after a piece of the hat.</summary>
public sealed record TesterPartDescription(string? Part, decimal? BeforeGrams, decimal? AfterGrams);
