using System.Text.Json.Nodes;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A hat on the list.</summary>
public sealed record ListedHatBody(string Id, bool Sample, JsonObject Hat);

/// <summary>A saved hat's id.</summary>
public sealed record SavedHatBody(string Id);

/// <summary>GET and POST /api/v1/hats.</summary>
public static class HatRoutes
{
    public static async Task<IResult> ListAsync(HatStore hats, CancellationToken cancel) =>
        Results.Json((await hats.ListAsync(cancel)).Select(h => new ListedHatBody(h.Id, h.IsSample, SaidInJson.Write(h.Description, HatFields.All))), Body.Json);

    public static async Task<IResult> SaveAsync(HttpRequest request, HatStore hats, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        var (asked, refused) = await Body.ReadAsync(request, HatFields.All, cancel);
        if (asked is null)
        {
            return refused!;
        }

        asked.Wanted(HatFields.Name);
        if (HatText.Read(asked) is null || asked.Errors.Any)
        {
            return asked.Errors.Problem();
        }

        var id = await hats.SaveAsync(asked.Said, cancel);
        return Results.Json(new SavedHatBody(id), Body.Json, statusCode: StatusCodes.Status201Created);
    }
}
