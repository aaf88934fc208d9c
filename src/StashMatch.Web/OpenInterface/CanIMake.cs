using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>POST /api/v1/can-i-make: stores nothing.</summary>
public static class CanIMake
{
    internal const int MostLeftovers = 10_000;

    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader hats, LeftoverStore leftovers, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        ArgumentNullException.ThrowIfNull(leftovers);
        var (asked, refused) = await Body.ReadAsync(request, MatchQuestion.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var errors = asked.Errors;
        var hat = await hats.ReadAsync(asked, cancel);
        if (MatchQuestion.Read(asked, hat, await leftovers.ForHatsAsync(asked.Said, cancel)) is not { } question || errors.Any)
        {
            return errors.Problem();
        }

        if (!Matcher.TryAnswer(question, out var answer, out var why, cancel))
        {
            errors.Add(why.Field, why.Reason);
            return errors.Problem();
        }

        return Results.Json(AnswerText.Of(answer), Body.Whole);
    }

    internal static List<Leftover> ReadLeftovers(IReadOnlyList<LeftoverBody?> bodies, FieldErrors errors)
    {
        var list = new List<Leftover>();
        if (bodies.Count > MostLeftovers)
        {
            errors.Add("leftovers", $"must be at most {MostLeftovers}");
            return list;
        }

        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < bodies.Count; i++)
        {
            var at = $"leftovers[{i}].";
            if (bodies[i] is not { } body)
            {
                errors.Add($"leftovers[{i}]", "must be a leftover");
                continue;
            }

            if (string.IsNullOrWhiteSpace(body.Id) || body.Id.Length > 80)
            {
                errors.Add($"{at}id", "is missing, or longer than 80 characters");
            }
            else if (!ids.Add(body.Id))
            {
                errors.Add($"{at}id", "is there twice");
            }

            if (body.Read(errors, at, body.Id) is { } leftover)
            {
                list.Add(leftover);
            }
        }

        return list;
    }
}
