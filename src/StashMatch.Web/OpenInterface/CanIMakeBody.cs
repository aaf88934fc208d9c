using System.Text.Json;

namespace StashMatch.Web.OpenInterface;

/// <summary>"Can I make size C from these?" as the open interface takes it.</summary>
public sealed record CanIMakeBody
{
    /// <summary>The id of a stored or sample hat, or a description inline.</summary>
    public JsonElement? Hat { get; init; }

    public string? Size { get; init; }

    public int? Stripes { get; init; }

    public string? Arrangement { get; init; }

    public int? InTurn { get; init; }

    public double? AllowancePercent { get; init; }

    public string? ColourOrder { get; init; }

    public string? NextDoor { get; init; }

    public IReadOnlyList<LeftoverBody?>? Leftovers { get; init; }

    /// <summary>Leftovers held together, each pair known by an id of its own from then on.</summary>
    public IReadOnlyList<HeldBody?>? HeldTogether { get; init; }

    /// <summary>Leftovers knitted one after the other, each group known by an id of its own from then on.</summary>
    public IReadOnlyList<HeldBody?>? Joined { get; init; }

    /// <summary>Parts cut out of the letter, thread or stripe they would come from, so that any leftover may serve them.</summary>
    public IReadOnlyList<string?>? Apart { get; init; }

    public IReadOnlyList<PairingBody?>? Locks { get; init; }

    public IReadOnlyList<PairingBody?>? Never { get; init; }
}

/// <summary>A part and a leftover kept together or apart; a lock may name two leftovers held "double".</summary>
public sealed record PairingBody(string? Part, OneOrMore? Leftover, string? Held);

/// <summary>Two leftovers held together, or one twice: held double with itself. Of joined ones there may be more.</summary>
public sealed record HeldBody(string? Id, IReadOnlyList<string?>? Of);

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
    IReadOnlyList<RepairBody> Repairs);
