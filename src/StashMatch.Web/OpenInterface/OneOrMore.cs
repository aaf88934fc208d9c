using System.Text.Json;
using System.Text.Json.Serialization;

namespace StashMatch.Web.OpenInterface;

/// <summary>A text, or a list of texts where several are meant.</summary>
[JsonConverter(typeof(Reader))]
public sealed record OneOrMore(IReadOnlyList<string?> All)
{
    private sealed class Reader : JsonConverter<OneOrMore>
    {
        public override OneOrMore Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType == JsonTokenType.String
            ? new([reader.GetString()])
            : new(JsonSerializer.Deserialize<List<string?>>(ref reader, options) ?? []);

        public override void Write(Utf8JsonWriter writer, OneOrMore value, JsonSerializerOptions options)
        {
            if (value.All is [var one])
            {
                writer.WriteStringValue(one);
            }
            else
            {
                JsonSerializer.Serialize(writer, value.All, options);
            }
        }
    }
}
