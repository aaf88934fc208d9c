using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using StashMatch.Knitting.Hats;

namespace StashMatch.Store;

/// <summary>
/// The question a plan answers, as it is kept with it: what was asked, and the hat as it was planned, so that a sheet half knitted does not
/// change with the hat. Version 1 kept the answer page's address; it is read and brought up.
/// </summary>
/// <param name="Asked">What was asked, by the names of <see cref="MatchQuestion"/>.</param>
/// <param name="AllowancePercent">The reserve, 0 to 100 %.</param>
/// <param name="Hat">The hat, size and stripe count, row by row.</param>
public sealed record PlannedQuestion(Said Asked, decimal AllowancePercent, HatNeeds Hat)
{
    /// <summary>The version written.</summary>
    public const int Version = 2;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>As the plan keeps it.</summary>
    public string Write() => JsonSerializer.Serialize(new Kept(AllowancePercent, KeptNeeds.Of(Hat)) { Version = Version, Asked = SaidInJson.Write(Asked, MatchQuestion.Fields) }, Json);

    /// <summary>Reads it back; null where a program kept something else with its plan, or a newer one kept it.</summary>
    public static PlannedQuestion? Read(string? json)
    {
        try
        {
            return json is not null && JsonSerializer.Deserialize<Kept>(json, Json) is { Version: null or 1 or Version, AllowancePercent: >= 0 and <= 100 } kept && kept.Hat.CanBe()
                ? new PlannedQuestion(kept.Ask(), kept.AllowancePercent, kept.Hat.ToNeeds())
                : null;
        }
        catch (Exception e) when (e is JsonException or ArgumentException or NotSupportedException or FormatException or InvalidOperationException)
        {
            return null;
        }
    }

    private sealed record Kept([property: JsonPropertyOrder(2)] decimal AllowancePercent, [property: JsonPropertyOrder(3)] KeptNeeds Hat)
    {
        [JsonPropertyOrder(0)]
        public int? Version { get; init; }

        [JsonPropertyOrder(1)]
        public JsonObject? Asked { get; init; }

        /// <summary>The answer page's address, in version 1.</summary>
        public string? Address { get; init; }

        public Said Ask()
        {
            if (Asked is not null)
            {
                return SaidInJson.Read(JsonSerializer.SerializeToElement(Asked), MatchQuestion.Fields, new FieldErrors());
            }

            return Address?.StartsWith("/can-i-make?", StringComparison.Ordinal) == true ? MatchQuestion.InAddress(Pairs(Address)) : throw new FormatException("It keeps no question.");
        }

        private static IEnumerable<(string Name, string Value)> Pairs(string address) => address[(address.IndexOf('?', StringComparison.Ordinal) + 1)..].Split('&')
            .Select(p => p.Split('=', 2)).Where(p => p.Length == 2).Select(p => (Plain(p[0]), Plain(p[1])));

        private static string Plain(string text) => Uri.UnescapeDataString(text.Replace('+', ' '));
    }
}
