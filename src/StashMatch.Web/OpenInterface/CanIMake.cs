using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>POST /api/v1/can-i-make: stores nothing.</summary>
public static class CanIMake
{
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
}
