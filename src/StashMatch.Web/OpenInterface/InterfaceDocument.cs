using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace StashMatch.Web.OpenInterface;

/// <summary>What the body of a request is called in the interface's document, and its fields.</summary>
internal sealed record BodyOf(string Name, IReadOnlyList<Field> Fields, IReadOnlyList<string> Types);

/// <summary>What an answer is called in the interface's document, and its fields.</summary>
internal sealed record AnswerOf(string Name, IReadOnlyList<Field> Fields, int Status, bool Several);

/// <summary>Tells the interface's document of the fields as they are read: names, kinds, ranges, lengths, words.</summary>
internal static class InterfaceDocument
{
    /// <summary>Says what fields a route's body has.</summary>
    public static RouteHandlerBuilder Takes(this RouteHandlerBuilder route, string name, IReadOnlyList<Field> fields, params IReadOnlyList<string> types) =>
        route.WithMetadata(new BodyOf(name, fields, types.Count == 0 ? ["application/json"] : types), new AcceptsMetadata([.. types.DefaultIfEmpty("application/json")], typeof(JsonObject)));

    /// <summary>Says what fields a route's answer has, or each of several.</summary>
    public static RouteHandlerBuilder Shows(this RouteHandlerBuilder route, string name, IReadOnlyList<Field> fields, int status = 200, bool several = false) =>
        route.Produces(status, contentType: "application/json").WithMetadata(new AnswerOf(name, fields, status, several));

    public static Task DescribeAsync(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancel)
    {
        var (told, document) = (context.Description.ActionDescriptor.EndpointMetadata, context.Document!);
        if (told.OfType<BodyOf>().FirstOrDefault() is { } body)
        {
            operation.RequestBody = new OpenApiRequestBody
            {
                Required = true,
                Content = body.Types.ToDictionary(t => t, _ => new OpenApiMediaType { Schema = Named(document, body.Name, body.Fields) }, StringComparer.Ordinal),
            };
        }

        if (told.OfType<AnswerOf>().FirstOrDefault() is { } answer && operation.Responses?.GetValueOrDefault(answer.Status.ToString(CultureInfo.InvariantCulture)) is OpenApiResponse response)
        {
            var one = Named(document, answer.Name, answer.Fields);
            response.Content = new Dictionary<string, OpenApiMediaType>(StringComparer.Ordinal)
            {
                ["application/json"] = new() { Schema = answer.Several ? new OpenApiSchema { Type = JsonSchemaType.Array, Items = one } : one },
            };
        }

        return Task.CompletedTask;
    }

    /// <summary>An object with these fields and no others.</summary>
    public static OpenApiSchema Schema(IReadOnlyList<Field> fields) => new()
    {
        Type = JsonSchemaType.Object,
        AdditionalPropertiesAllowed = false,
        Properties = fields.ToDictionary(f => f.Name, Schema, StringComparer.Ordinal),
    };

    private static OpenApiSchemaReference Named(OpenApiDocument document, string name, IReadOnlyList<Field> fields)
    {
        if (document.Components?.Schemas?.ContainsKey(name) != true)
        {
            document.AddComponent(name, Schema(fields));
        }

        return new OpenApiSchemaReference(name, document);
    }

    private static IOpenApiSchema Schema(Field field)
    {
        var one = One(field);
        if (!field.IsList)
        {
            return one;
        }

        var several = new OpenApiSchema { Type = JsonSchemaType.Array, Items = one, MaxItems = field.MostOfThem, Description = field.OrOne ? null : Says(field) };
        return field.OrOne ? new OpenApiSchema { OneOf = [one, several], Description = Says(field) } : several;
    }

    private static OpenApiSchema One(Field field) => field.Kind switch
    {
        FieldKind.Text when field.Words.Count > 0 => new() { Type = JsonSchemaType.String, Enum = [.. field.Words.Select(w => JsonValue.Create(w))], Description = Says(field) },
        FieldKind.Text => Text(field),
        FieldKind.Whole => new() { Type = JsonSchemaType.Integer, Format = "int32", Minimum = Number(field.Least), Maximum = Number(field.Most), Description = Says(field) },
        FieldKind.Number => new()
        {
            Type = JsonSchemaType.Number,
            Minimum = field.OverLeast ? null : Number(field.Least),
            ExclusiveMinimum = field.OverLeast ? Number(field.Least) : null,
            Maximum = Number(field.Most),
            Description = Says(field),
        },
        FieldKind.YesNo => new() { Type = JsonSchemaType.Boolean, Description = Says(field) },
        FieldKind.Fields when field.OrText => new() { OneOf = [Text(field), Schema(field.Inside)], Description = Says(field) },
        FieldKind.Fields => Described(Schema(field.Inside), field),
        _ => new() { Description = Says(field) },
    };

    private static OpenApiSchema Text(Field field) => new() { Type = JsonSchemaType.String, MaxLength = field.Longest, Description = Says(field) };

    private static OpenApiSchema Described(OpenApiSchema schema, Field field)
    {
        schema.Description = Says(field);
        return schema;
    }

    private static string? Says(Field field) => field.Says.Length == 0 ? null : field.Says;

    private static string Number(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
