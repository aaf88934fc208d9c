using System.Text.Json;
using StashMatch.Knitting.Hats;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Reads a hat wherever one stands: the id of a stored or sample hat, or a description inline.</summary>
public sealed class HatReader(HatStore hats, KnitterStore knitter)
{
    public async Task<Hat?> ReadAsync(JsonElement? hat, FieldErrors errors, CancellationToken cancel)
    {
        switch (hat?.ValueKind)
        {
            case JsonValueKind.String:
                var found = await hats.FindAsync(hat.Value.GetString()!, cancel);
                if (found is null)
                {
                    errors.Add("hat", "no hat has that id");
                }

                return found;
            case JsonValueKind.Object:
                if (!KnownFields(hat.Value, errors))
                {
                    return null;
                }

                try
                {
                    var description = hat.Value.Deserialize<HatDescription>(Body.Json);
                    return HatDescriptionReader.Read(description!, errors, "hat.") is { } read
                        ? KnitterStore.With(await knitter.UsageAsync(cancel), read)
                        : null;
                }
                catch (JsonException e)
                {
                    errors.Add(Body.FieldOf(e.Path, "hat"), Body.Message(e));
                    return null;
                }

            default:
                errors.Add("hat", hat is null or { ValueKind: JsonValueKind.Null } ? "is missing" : "must be a hat's id or a description");
                return null;
        }
    }

    private static bool KnownFields(JsonElement hat, FieldErrors errors)
    {
        var unknown = new FieldErrors();
        BodyCheck.Look(hat, typeof(HatDescription), "hat", unknown);
        foreach (var (field, messages) in unknown.ByField)
        {
            errors.Add(field, messages[0]);
        }

        return !unknown.Any;
    }
}
