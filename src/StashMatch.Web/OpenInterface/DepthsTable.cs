using System.Text.Json.Nodes;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Matching;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>One stripe with its rows and what goes in; the need holds the strands that are not cut.</summary>
public sealed record DepthStripeBody(string Part, string Leftover, int Rows, decimal DepthCm, decimal NeedMetres, decimal LeftMetres, bool KnittedUp);

/// <summary>The depths, and the hat that has them: it can be asked about like any other. No stripes and no hat where <c>why</c> is short or colour.</summary>
public sealed record DepthsAnswer(
    string Why,
    string? Text,
    IReadOnlyList<DepthStripeBody> Stripes,
    decimal LeftMetres,
    decimal ShortMetres,
    IReadOnlyList<string> NotIn,
    bool ProvenBest,
    JsonObject? Hat);

/// <summary>POST /api/v1/depths-from-leftovers: stores nothing.</summary>
public static class DepthsTable
{
    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader reader, LeftoverStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(store);
        var (asked, refused) = await Body.ReadAsync(request, DepthsQuestion.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var errors = asked.Errors;
        var hat = await reader.ReadAsync(asked, cancel);
        if (DepthsQuestion.Read(asked, hat, await store.ForHatsAsync(asked.Said, cancel)) is not { } question)
        {
            return errors.Problem();
        }

        var plan = DepthsFromLeftovers.Find(question, cancel);
        if (plan.Why == Why.CannotBeKnitted)
        {
            errors.Add("leftovers", plan.Reason);
            return errors.Problem();
        }

        return Results.Json(
            new DepthsAnswer(
                Names.Of(plan.Why),
                plan.Reason.Length == 0 ? null : plan.Reason,
                [.. plan.Stripes.Select(s => new DepthStripeBody(
                    s.Part.Name, s.Leftover.Id, s.Part.Rows, Math.Round(s.Part.Depth.Value, 2), s.Need.Value, s.Left.Value, s.KnittedUp))],
                plan.Left.Value,
                plan.Short.Value,
                [.. plan.NotIn.Select(l => l.Id)],
                plan.ProvenBest,
                plan.Hat is { } own ? SaidInJson.Write(HatText.WithDepths(await reader.DescribeAsync(asked, cancel), own), HatFields.All) : null),
            Body.Whole);
    }
}
