using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;
using KitQuestion = StashMatch.Questions.KitQuestion;

namespace StashMatch.Web.OpenInterface;

/// <summary>POST /api/v1/kits/check: stores nothing.</summary>
public static class KitRoutes
{
    public static async Task<IResult> CheckAsync(HttpRequest request, HatReader hats, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(hats);
        var (asked, refused) = await Body.ReadAsync(request, KitQuestion.Fields, cancel);
        if (asked is null)
        {
            return refused!;
        }

        var question = KitQuestion.Read(asked, await hats.ReadAsync(asked, cancel));
        var (kit, from) = (KitQuestion.ReadKit(asked), KitQuestion.ReadSizes(asked));
        if (!asked.Has(KitText.Skeins) && !asked.Has(KitQuestion.SmallestFrom))
        {
            asked.Wrong(KitText.Skeins, "is missing");
        }

        if (question is null || asked.Errors.Any)
        {
            return asked.Errors.Problem();
        }

        var cells = asked.Has(KitText.Skeins) ? KitCheck.Of(question, [kit], cancel)[0] : [];
        var smallest = from.Count == 0 ? null : SmallestKits.Find(
            asked.Has(HatGrid.ArrangementsAsked) ? question : question with { Arrangements = [Arrangement.OwnColours] }, from, cancel);
        return Results.Json(
            new KitCheckAnswer(question.AllowancePercent, [.. cells.Select(ToBody)], from.Count == 0 ? null : ToBody(smallest, from), [.. KitCheck.LeftOut(kit, question.Hat).Select(s => s.Skein.Name)]),
            Body.Whole);
    }

    private static KitCellBody ToBody(KitCell cell) => new(
        cell.Size,
        cell.Stripes,
        Names.Of(cell.Arrangement),
        cell.Passes,
        cell.Cannot is null ? null : "cannot-be-knitted",
        cell.Cannot?.Reason,
        cell.Nominal?.ShortForAllowance.Value,
        ToBody(cell.Nominal),
        ToBody(cell.Lightest),
        cell.Nominal is null ? null : Math.Round(cell.Nominal.ChanceOfEnough, 4));

    private static KitSideBody? ToBody(KitSide? side) => side is null ? null : new(
        Names.Of(side.Verdict), side.MarginPercent, side.WeakestPart, side.WeakestSkein, side.Short.Value, side.ShortForAllowance.Value, side.Exact)
    {
        Why = Names.Of(side.Why),
        Sureness = Math.Round(side.Sureness, 2),
        Reach = Math.Round(side.Reach, 2),
    };

    private static SmallestBody ToBody(SmallestKit? smallest, IReadOnlyList<SkeinSize> from) => smallest switch
    {
        null => new([], null, true, SmallestWords.NoneCanBeKnitted),
        { TooLong: var (part, planned) } => new([], null, true, SmallestWords.TooLong(part, planned)),
        { IsThere: false } => new([], null, false, SmallestWords.NoneFound),
        _ => new(
            [.. smallest.Counts.Select((count, i) => (count, i)).Where(c => c.count > 0).Select(c => new SmallestSkeinBody((double)from[c.i].Grams.Value, LabelBody.Of(from[c.i].Label)!, c.count, from[c.i].Fibre.IsUnknown ? null : from[c.i].Fibre.ToString()))],
            smallest.Total.Value,
            smallest.Proven,
            Words.OfBrim(smallest.Brim),
            smallest.Brim switch { BrimYarn.KeepsShape => "keeps-shape", BrimYarn.Relaxes => "relaxes", BrimYarn.Unknown => "unknown", BrimYarn.Stretches => "stretches", _ => null }),
    };
}
