using System.Text.Json;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>A reading as it is kept: grams as on the scale, core or bowl in.</summary>
public sealed record KeptReading(decimal Grams, decimal Tare, decimal Step)
{
    public static KeptReading Of(Weighing weighing)
    {
        ArgumentNullException.ThrowIfNull(weighing);
        return new(weighing.Gross.Value, weighing.Tare.Value, weighing.ScaleStep.Value);
    }

    /// <summary>The reading; null where a program kept something that is none.</summary>
    public Weighing? ToWeighing() =>
        Grams is > 0 and <= Weighing.MostGrams && Tare >= 0 && Tare < Grams && Step is > 0 and <= 100
            ? new Weighing(Knitting.Quantities.Grams.From(Grams), Knitting.Quantities.Grams.From(Tare), Knitting.Quantities.Grams.From(Step))
            : null;
}

/// <summary>A ball weighed again, and the parts that were finished then.</summary>
public sealed record WeighedAgain(KeptReading Reading, IReadOnlyList<string> Done);

/// <summary>How far a knitting sheet is: parts ticked, balls weighed again. Kept as JSON with the plan.</summary>
public sealed record SheetState
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { RespectNullableAnnotations = true };

    /// <summary>Parts ticked off.</summary>
    public IReadOnlyList<string> Done { get; init; } = [];

    /// <summary>Each ball by its id, as it was when the first part was ticked.</summary>
    public IReadOnlyDictionary<string, KeptReading> Start { get; init; } = new Dictionary<string, KeptReading>(StringComparer.Ordinal);

    /// <summary>Each ball's last reading since.</summary>
    public IReadOnlyDictionary<string, WeighedAgain> Weighed { get; init; } = new Dictionary<string, WeighedAgain>(StringComparer.Ordinal);

    /// <summary>What was left of each ball at the end, grams: those weighed then.</summary>
    public IReadOnlyDictionary<string, decimal> Left { get; init; } = new Dictionary<string, decimal>(StringComparer.Ordinal);

    /// <summary>Whether what it taught is in use.</summary>
    public bool Learned { get; init; }

    public string Write() => JsonSerializer.Serialize(this, Json);

    /// <summary>Reads it back; a fresh sheet where there is none, or none that can be read.</summary>
    public static SheetState Read(string? json)
    {
        try
        {
            return json is null ? new SheetState() : JsonSerializer.Deserialize<SheetState>(json, Json) ?? new SheetState();
        }
        catch (JsonException)
        {
            return new SheetState();
        }
    }

    /// <summary>The same with a step's parts ticked off, or open again.</summary>
    public SheetState Tick(IReadOnlyList<string> parts)
    {
        var open = parts.Any(p => !Done.Contains(p, StringComparer.Ordinal));
        return this with { Done = open ? [.. Done.Union(parts, StringComparer.Ordinal)] : [.. Done.Except(parts, StringComparer.Ordinal)] };
    }

    /// <summary>The same with a ball weighed again; null forgets its reading.</summary>
    public SheetState Weigh(string ball, Weighing? reading, IReadOnlyList<string> done)
    {
        var weighed = Weighed.Where(w => w.Key != ball).ToDictionary(StringComparer.Ordinal);
        if (reading is not null)
        {
            weighed[ball] = new WeighedAgain(KeptReading.Of(reading), done);
        }

        return this with { Weighed = weighed };
    }
}
