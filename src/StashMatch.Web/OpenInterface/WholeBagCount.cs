using System.Text.Json;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>"How many hats from the whole bag?" as the open interface takes it.</summary>
public sealed record WholeBagBody
{
    /// <summary>The id of a stored or sample hat, or a description inline.</summary>
    public JsonElement? Hat { get; init; }

    /// <summary>Left out: all sizes.</summary>
    public IReadOnlyList<string?>? Sizes { get; init; }

    /// <summary>Left out: the logged leftovers.</summary>
    public IReadOnlyList<LeftoverBody?>? Leftovers { get; init; }

    /// <summary>Set aside on every leftover a hat takes; left out: 10.</summary>
    public double? AllowancePercent { get; init; }
}

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
        var (body, refused) = await Body.ReadAsync<WholeBagBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var hat = await hats.ReadAsync(body.Hat, errors, cancel);
        var sizes = BagFields.Sizes(errors, body.Sizes, hat);
        var allowance = errors.Number("allowancePercent", body.AllowancePercent ?? 10, 0, 100);
        var bag = await BagFields.LeftoversAsync(errors, body.Leftovers, store, cancel);
        if (hat is null || errors.Any)
        {
            return errors.Problem();
        }

        var answer = WholeBag.Of(hat, sizes, bag, allowance!.Value, cancel);
        return Results.Json(new WholeBagCountAnswer(answer.AtLeast, answer.AtMost, [.. answer.Hats.Select(ToBody)]), Body.Whole);
    }

    private static BagHatBody ToBody(BagHat hat) => new(hat.Size, hat.Stripes, Names.Of(hat.Arrangement),
        [.. hat.Parts.Select(p => new BagPartBody(p.Part.Name, p.Need.Value, [.. p.All.Select(f => new FromAnswer(f.Leftover, f.Metres.Value, Math.Round(f.Grams, 3)))]))]);
}
