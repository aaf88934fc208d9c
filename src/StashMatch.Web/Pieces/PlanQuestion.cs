using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.WebUtilities;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Web.Pieces;

/// <summary>The question a plan answers, as it is kept with it: the address that asks it again, and the hat as it was planned, so that a sheet half knitted does not change with the hat.</summary>
/// <param name="Address">The answer page's address.</param>
/// <param name="AllowancePercent">Spare on top, 0 to 100 %.</param>
/// <param name="Hat">The hat, size and stripe count, row by row.</param>
public sealed record PlanQuestion(string Address, decimal AllowancePercent, HatNeeds Hat)
{
    private const int MostParts = 200;
    private const int MostRows = 10_000;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(), new InCentimetres(), new AsGauge() },
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>What is asked.</summary>
    [JsonIgnore]
    public Said Asked => MatchQuestion.InAddress(new QueryCollection(QueryHelpers.ParseQuery(Address[Address.IndexOf('?', StringComparison.Ordinal)..])).Pairs());

    public string Write() => JsonSerializer.Serialize(this, Json);

    /// <summary>Reads it back; null where a program kept something else with its plan.</summary>
    public static PlanQuestion? Read(string? json)
    {
        try
        {
            return json is not null && JsonSerializer.Deserialize<PlanQuestion>(json, Json) is { } read && read.CanBe() ? read : null;
        }
        catch (Exception e) when (e is JsonException or ArgumentException or NotSupportedException or FormatException)
        {
            return null;
        }
    }

    // Text from elsewhere must not make a page run wild.
    private bool CanBe() =>
        Address.StartsWith("/can-i-make?", StringComparison.Ordinal) && AllowancePercent is >= 0 and <= 100
        && Hat.Usage.Factor is > 0.1 and < 10 && Hat.Usage.Spread is >= 0 and < 1
        && Hat.Parts.Count is > 0 and <= MostParts && Hat.Parts.DistinctBy(p => p.Name, StringComparer.Ordinal).Count() == Hat.Parts.Count
        && Hat.Parts.All(p => p.Name.Length is > 0 and <= 80 && p.BareMetres is >= 0 and < 1e5 && p.EndsMetres is >= 0 and <= 1_000 && p.Rows is >= 0 and <= MostRows)
        && (Hat.Plan is not { } plan || (plan.Sections.Count <= MostParts && plan.Sections.Sum(s => s.Runs.Count) <= MostRows
            && plan.Sections.All(s => s.Runs.Count > 0 && s.Runs.All(r => r.Rows is > 0 and <= MostRows && r.Stitches is > 0 and <= MostRows))
            && plan.Parts.Select(p => p.Name).SequenceEqual(Hat.Parts.Select(p => p.Name), StringComparer.Ordinal)));

    private sealed class InCentimetres : JsonConverter<Centimetres>
    {
        public override Centimetres Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Centimetres.From(reader.GetDecimal());

        public override void Write(Utf8JsonWriter writer, Centimetres value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Value);
    }

    private sealed class AsGauge : JsonConverter<Gauge>
    {
        public override Gauge Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            JsonSerializer.Deserialize<decimal[]>(ref reader) is [var stitches, var rows] ? Gauge.Of(stitches, rows) : throw new JsonException();

        public override void Write(Utf8JsonWriter writer, Gauge value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new[] { value.StitchesPer10Cm, value.RowsPer10Cm });
    }
}
