using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Reads a JSON body of bounded size; what cannot be read is said by field.</summary>
public static class Body
{
    /// <summary>The largest body taken, bytes.</summary>
    public const int MostBytes = 8 * 1024 * 1024;

    /// <summary>Numbers are JSON numbers, names are camel case.</summary>
    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.Strict,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        PropertyNameCaseInsensitive = false,
        MaxDepth = 16,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
    };

    /// <summary>The same, with every named field there even where it is null.</summary>
    public static JsonSerializerOptions Whole { get; } = new(Json) { DefaultIgnoreCondition = JsonIgnoreCondition.Never };

    /// <summary>The body's fields, or the answer to send instead. What is unknown or of the wrong kind stands in the errors of the reading.</summary>
    public static async Task<(Reading? Asked, IResult? Refused)> ReadAsync(HttpRequest request, IReadOnlyList<Field> fields, CancellationToken cancel)
    {
        if (await ReadBytesAsync(request, MostBytes, cancel) is not { } bytes)
        {
            return (null, TooLarge());
        }

        try
        {
            using var json = JsonDocument.Parse(bytes, new JsonDocumentOptions { MaxDepth = 16 });
            if (json.RootElement.ValueKind != JsonValueKind.Object)
            {
                return (null, Refuse("body", "must be a JSON object"));
            }

            var errors = new FieldErrors();
            return (new Reading(SaidInJson.Read(json.RootElement, fields, errors), errors), null);
        }
        catch (JsonException)
        {
            return (null, Refuse(JsonFault.FieldOf(bytes), "is not JSON"));
        }
    }

    /// <summary>The body as it came; null where it is larger than is taken.</summary>
    public static async Task<byte[]?> ReadBytesAsync(HttpRequest request, int most, CancellationToken cancel)
    {
        if (request.ContentLength > most)
        {
            return null;
        }

        using var bytes = new MemoryStream();
        var buffer = new byte[81920];
        int read;
        while ((read = await request.Body.ReadAsync(buffer, cancel)) > 0)
        {
            if (bytes.Length + read > most)
            {
                return null;
            }

            bytes.Write(buffer, 0, read);
        }

        return bytes.ToArray();
    }

    /// <summary>What is said to a body that is too large.</summary>
    public static IResult TooLarge(int megabytes = 8) => Results.Problem(
        statusCode: StatusCodes.Status413PayloadTooLarge, title: $"The body is over {megabytes} MB.");

    private static IResult Refuse(string field, string message)
    {
        var errors = new FieldErrors();
        errors.Add(field, message);
        return errors.Problem();
    }
}
