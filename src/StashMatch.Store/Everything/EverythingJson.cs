using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Everything one person has here, as JSON that loses nothing.</summary>
public sealed record EverythingJson
{
    /// <summary>How this file is laid out; a higher number is a newer program's.</summary>
    public const int Newest = 1;

    /// <summary>Names in camel case, numbers as numbers, what is not said left out.</summary>
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.Strict,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        PropertyNameCaseInsensitive = false,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        MaxDepth = 16,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    public int? StashMatch { get; init; }

    public SettingsJson? Settings { get; init; }

    public IReadOnlyList<CalibrationJson?>? Calibrations { get; init; }

    public IReadOnlyList<HatJson?>? Hats { get; init; }

    public IReadOnlyList<LeftoverJson?>? Leftovers { get; init; }

    public IReadOnlyList<PlanJson?>? Plans { get; init; }

    public IReadOnlyList<KitJson?>? Kits { get; init; }

    public IReadOnlyList<TesterJson?>? Testers { get; init; }

    /// <summary>What happened once, such as loading the demo.</summary>
    public IReadOnlyList<string?>? Marks { get; init; }
}

/// <summary>What the person prefers.</summary>
public sealed record SettingsJson(LengthUnit? FirstUnit, decimal? ScaleStepGrams, decimal? AllowancePercent);

/// <summary>A weighed swatch or finished hat.</summary>
public sealed record CalibrationJson(string? From, double? Factor, double? MeasureSpread, bool? SwitchedOff, DateTimeOffset? At, string? Hat = null);

/// <summary>An own hat.</summary>
public sealed record HatJson(string? Id, DateTimeOffset? SavedAt, JsonElement? Hat);

/// <summary>A designer's kit.</summary>
public sealed record KitJson(string? Id, DateTimeOffset? SavedAt, JsonElement? Kit);

/// <summary>What a tester of a hat sent back.</summary>
public sealed record TesterJson(string? Id, string? Hat, DateTimeOffset? SavedAt, TesterDescription? Sheet);

/// <summary>A leftover with its whole ledger.</summary>
public sealed record LeftoverJson
{
    public string? Id { get; init; }

    /// <summary>Its details, by the names of <see cref="LeftoverFields"/>.</summary>
    [JsonExtensionData]
    public IDictionary<string, JsonElement>? Details { get; init; }

    public bool? Demo { get; init; }

    public DateTimeOffset? LoggedAt { get; init; }

    /// <summary>A small picture, a PNG of at most 16 KB.</summary>
    public byte[]? Picture { get; init; }

    /// <summary>Oldest first.</summary>
    public IReadOnlyList<EntryJson?>? Ledger { get; init; }
}

/// <summary>One line of a ledger.</summary>
public sealed record EntryJson
{
    public EntryKind? Kind { get; init; }

    public DateTimeOffset? At { get; init; }

    /// <summary>The reading where it was weighed; what was knitted where it was used.</summary>
    public decimal? Grams { get; init; }

    public decimal? TareGrams { get; init; }

    public decimal? ScaleStepGrams { get; init; }

    public string? For { get; init; }

    public IReadOnlyList<FieldChange>? Changes { get; init; }

    /// <summary>Which line of this ledger it undoes, counted from 0.</summary>
    public int? Undoes { get; init; }
}

/// <summary>A plan and what is promised to it.</summary>
public sealed record PlanJson
{
    public string? Id { get; init; }

    public string? Name { get; init; }

    public string? Hat { get; init; }

    public string? Size { get; init; }

    public int? Stripes { get; init; }

    public string? Arrangement { get; init; }

    public string? Question { get; init; }

    public string? Sheet { get; init; }

    public bool? Reserves { get; init; }

    public DateTimeOffset? SavedAt { get; init; }

    public DateTimeOffset? FinishedAt { get; init; }

    public IReadOnlyList<PromiseJson?>? Parts { get; init; }
}

/// <summary>So much of a leftover for a part; without an id the leftover is gone.</summary>
public sealed record PromiseJson(string? Leftover, string? Name, string? Part, long? Millimetres);
