namespace StashMatch.Web.OpenInterface;

/// <summary>What goes in a part from one leftover.</summary>
public sealed record FromAnswer(string Leftover, decimal Metres, decimal Grams);

/// <summary>A part of the answered hat.</summary>
public sealed record PartAnswerBody(
    string Part, string Kind, int? Rows, decimal? DepthCm, decimal NeedMetres, decimal PlanMetres, IReadOnlyList<FromAnswer> From, decimal ShortMetres, string? Held);

/// <summary>A leftover of the answered hat.</summary>
public sealed record LeftoverAnswerBody(string Id, decimal Metres, decimal LowMetres, decimal UsedMetres, decimal LeftMetres);

/// <summary>A warning or caution.</summary>
public sealed record NoticeBody(string Code, string? Part, string? Leftover, string Text);

/// <summary>A repair with its own verdict.</summary>
public sealed record RepairBody(string Code, string Text, string Verdict, double ChanceOfEnough)
{
    public string? Part { get; init; }

    public string? Leftover { get; init; }

    public string? OtherPart { get; init; }

    public string? OtherLeftover { get; init; }

    public string? Arrangement { get; init; }

    public int? InTurn { get; init; }

    public int? Stripes { get; init; }

    public string? Size { get; init; }

    /// <summary>Rows of each stripe then.</summary>
    public IReadOnlyList<int>? Rows { get; init; }

    public decimal? BrimDepthCm { get; init; }

    public string? BindOff { get; init; }

    public int? BuyGrams { get; init; }

    public decimal? BuyMetres { get; init; }

    public int? BuyBalls { get; init; }

    public int? BuyMiniSkeins { get; init; }
}

/// <summary>The answer.</summary>
public sealed record CanIMakeAnswer(
    string Verdict,
    string Why,
    double ChanceOfEnough,
    bool ProvenBest,
    string Size,
    int Stripes,
    string Arrangement,
    string? WeakestLeftover,
    decimal MarginPercent,
    double Sureness,
    double Reach,
    IReadOnlyList<PartAnswerBody> Parts,
    IReadOnlyList<LeftoverAnswerBody> Leftovers,
    decimal ShortMetres,
    decimal ShortForAllowanceMetres,
    string? Care,
    IReadOnlyList<NoticeBody> Warnings,
    IReadOnlyList<NoticeBody> Cautions,
    IReadOnlyList<RepairBody> Repairs)
{
    /// <summary>How many different leftovers are wanted, where why is too-few-leftovers.</summary>
    public int? Wanted { get; init; }

    /// <summary>How many are there of at least <see cref="EachMetres"/>.</summary>
    public int? There { get; init; }

    /// <summary>What each must hold.</summary>
    public decimal? EachMetres { get; init; }

    /// <summary>Up to three plans, the surest first; none stands twice.</summary>
    public required IReadOnlyList<SharedPlanBody> Plans { get; init; }

    /// <summary>How this was chosen, the weightiest first.</summary>
    public required IReadOnlyList<ChosenBody> Chosen { get; init; }
}

/// <summary>One of the plans of an answer: surest, uses-most-up or evenest.</summary>
public sealed record SharedPlanBody(string Kind, double ChanceOfEnough, decimal MarginPercent, double Sureness, IReadOnlyList<PartAnswerBody> Parts);

/// <summary>One thing a plan is chosen by: a chance, metres or a count, and what limits it.</summary>
public sealed record ChosenBody(string Tier, decimal? Figure, LimitBody? LimitedBy);

/// <summary>The part, the leftover or both that limit a figure: less of the one, or more of the other, lifts it.</summary>
public sealed record LimitBody(string? Part, string? Leftover);
