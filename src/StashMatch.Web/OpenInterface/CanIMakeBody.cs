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

    public IReadOnlyList<PairingBody?>? Locks { get; init; }

    public IReadOnlyList<PairingBody?>? Never { get; init; }
}

/// <summary>A part and a leftover kept together or apart.</summary>
public sealed record PairingBody(string? Part, string? Leftover, string? Held);

/// <summary>Two leftovers held together, or one twice: held double with itself.</summary>
public sealed record HeldBody(string? Id, IReadOnlyList<string?>? Of);

/// <summary>What goes in a part from one leftover.</summary>
public sealed record FromAnswer(string Leftover, decimal Metres, decimal Grams);

/// <summary>A part of the answered hat.</summary>
public sealed record PartAnswerBody(
    string Part, string Kind, int? Rows, decimal? DepthCm, decimal NeedMetres, decimal PlanMetres, IReadOnlyList<FromAnswer> From, decimal ShortMetres);

/// <summary>A leftover of the answered hat.</summary>
public sealed record LeftoverAnswerBody(string Id, decimal Metres, decimal LowMetres, decimal UsedMetres, decimal LeftMetres);

/// <summary>A warning or caution.</summary>
public sealed record NoticeBody(string Code, string? Part, string? Leftover, string Text);

/// <summary>A repair with its own verdict.</summary>
public sealed record RepairBody(
    string Code, string Text, string Verdict, double ChanceOfEnough, string? Part, string? Leftover, string? Arrangement, int? Stripes, string? Size, int? BuyGrams, decimal? BuyMetres);

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
    IReadOnlyList<PartAnswerBody> Parts,
    IReadOnlyList<LeftoverAnswerBody> Leftovers,
    decimal ShortMetres,
    decimal ShortForAllowanceMetres,
    string? Care,
    IReadOnlyList<NoticeBody> Warnings,
    IReadOnlyList<NoticeBody> Cautions,
    IReadOnlyList<RepairBody> Repairs);
