using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A hat on the list.</summary>
public sealed record ListedHatBody(string Id, bool Sample, HatDescription Hat);

/// <summary>A saved hat's id.</summary>
public sealed record SavedHatBody(string Id);

/// <summary>GET and POST /api/v1/hats.</summary>
public static class HatRoutes
{
    public static async Task<IResult> ListAsync(HatStore hats, CancellationToken cancel) =>
        Results.Json((await hats.ListAsync(cancel)).Select(h => new ListedHatBody(h.Id, h.IsSample, h.Description)), Body.Json);

    public static async Task<IResult> SaveAsync(HttpRequest request, HatStore hats, CancellationToken cancel)
    {
        var (body, refused) = await Body.ReadAsync<HatDescription>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        if (string.IsNullOrWhiteSpace(body.Name))
        {
            errors.Add("name", "is missing");
        }

        if (HatDescriptionReader.Read(body, errors, "") is null)
        {
            return errors.Problem();
        }

        var id = await hats.SaveAsync(body, cancel);
        return Results.Json(new SavedHatBody(id), Body.Json, statusCode: StatusCodes.Status201Created);
    }
}
