using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace StashMatch.Web.OpenInterface;

/// <summary>What the body of a request is called in the interface's document, and its fields.</summary>
internal sealed record BodyOf(string Name, IReadOnlyList<Field> Fields, IReadOnlyList<string> Types);

/// <summary>Tells the interface's document of the fields as they are read: names, kinds, ranges, lengths, words.</summary>
internal static class InterfaceDocument
{
    /// <summary>Says what fields a route's body has.</summary>
    public static RouteHandlerBuilder Takes(this RouteHandlerBuilder route, string name, IReadOnlyList<Field> fields, params IReadOnlyList<string> types) =>
        route.WithMetadata(new BodyOf(name, fields, types.Count == 0 ? ["application/json"] : types));

    public static Task DescribeAsync(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancel)
    {
        if (context.Description.ActionDescriptor.EndpointMetadata.OfType<BodyOf>().FirstOrDefault() is { } body && context.Document is { } document)
        {
            if (document.Components?.Schemas?.ContainsKey(body.Name) != true)
            {
                document.AddComponent(body.Name, Schema(body.Fields));
            }

            operation.RequestBody = new OpenApiRequestBody
            {
                Required = true,
                Content = body.Types.ToDictionary(t => t, _ => new OpenApiMediaType { Schema = new OpenApiSchemaReference(body.Name, document) }, StringComparer.Ordinal),
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
