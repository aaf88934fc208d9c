using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>PATCH /api/v1/leftovers/{id}: the fields that are named change, null clears one, every other stays.</summary>
public static class LeftoverChange
{
    /// <summary>The version that was read: if it is another by now, nothing is changed. Left out: whatever it is by now.</summary>
    private static readonly Field Version = Field.Text("version", 36) with { Says = "The version that was read: if it is another by now, nothing is changed." };

    /// <summary>All fields that can be changed, and the version.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [.. LeftoverFields.Fields, Version];

    private static readonly IReadOnlyList<Field> WithWeight = [.. Fields, .. LeftoverText.Weighed];

    public static async Task<IResult> ChangeAsync(string id, HttpRequest request, LeftoverStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(store);
        var (asked, refused) = await Body.ReadAsync(request, WithWeight, cancel);
        if (asked is null)
        {
            return refused!;
        }

        if (await store.FindAsync(id, cancel) is not { } logged)
        {
            return LeftoverRoutes.NotThere();
        }

        var errors = asked.Errors;
        foreach (var weighed in LeftoverText.Weighed.Where(asked.Names))
        {
            asked.Wrong(weighed, "is not changed: weigh it again, with POST to …/weighings");
        }

        var version = asked.ReadVersion(Version);
        LeftoverDetails Change(LeftoverDetails details, FieldErrors into) => LeftoverFields.Change(details, new Reading(asked.Said, into));
        Change(logged.Alone(), errors).Check(errors);
        if (errors.Any)
        {
            return errors.Problem();
        }

        var wrong = await store.EditAsync(id, d => Change(d, new FieldErrors()), version, cancel);
        return wrong.ByField switch
        {
            { Count: 0 } => await LeftoverRoutes.ShowAsync(store, id, StatusCodes.Status200OK, cancel),
            var fields when fields.ContainsKey("id") => LeftoverRoutes.NotThere(),
            var fields when fields.ContainsKey("version") => wrong.Conflict("The leftover was changed meanwhile: read it again."),
            var fields when fields.ContainsKey("code") => wrong.Conflict("Another tag has those two letters."),
            _ => wrong.Problem(),
        };
    }
}
