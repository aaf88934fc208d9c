using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A part of one hat with what goes in.</summary>
public sealed record BagPartBody(string Part, decimal NeedMetres, IReadOnlyList<FromAnswer> From);

/// <summary>One hat of the bag.</summary>
public sealed record BagHatBody(string Size, int Stripes, string Arrangement, IReadOnlyList<BagPartBody> Parts);

/// <summary>At least so many hats, each laid out; more than at most can never be made.</summary>
public sealed record WholeBagCountAnswer(int AtLeast, int AtMost, IReadOnlyList<BagHatBody> Hats);

/// <summary>POST /api/v1/whole-bag: stores nothing.</summary>
public static class WholeBagCount
{
    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader hats, LeftoverStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        ArgumentNullException.ThrowIfNull(store);
        var (asked, refused) = await Body.ReadAsync(request, BagQuestion.WholeBagFields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var hat = await hats.ReadAsync(asked, cancel);
        if (BagQuestion.Read(asked, hat, await store.ForHatsAsync(asked.Said, cancel), FromThisBag.Usual) is not var (grid, bag))
        {
            return asked.Errors.Problem();
        }

        var answer = WholeBag.Of(grid.Hat, grid.Sizes, bag, grid.AllowancePercent, cancel);
        return Results.Json(new WholeBagCountAnswer(answer.AtLeast, answer.AtMost, [.. answer.Hats.Select(ToBody)]), Body.Whole);
    }

    private static BagHatBody ToBody(BagHat hat) => new(hat.Size, hat.Stripes, Names.Of(hat.Arrangement),
        [.. hat.Parts.Select(p => new BagPartBody(p.Part.Name, p.Need.Value, [.. p.All.Select(f => new FromAnswer(f.Leftover, f.Metres.Value, Math.Round(f.Grams, 3)))]))]);
}
