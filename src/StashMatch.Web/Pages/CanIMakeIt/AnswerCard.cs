using System.Globalization;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Pictures;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>The answer as one picture: verdict, drawing, parts.</summary>
public static class AnswerCard
{
    public static byte[] Png(AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return HatCard.Png(WordsOf(view), view.Answer.Hat.Plan, view.Answer.Hat.Parts, view.Paint);
    }

    /// <summary>What the card says.</summary>
    public static CardWords WordsOf(AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var answer = view.Answer;
        var chance = answer.Verdict == Verdict.No ? "" : $"{Shown.Chance(answer.ChanceOfEnough)} chance that the yarn lasts. ";
        var yardsFirst = Habits.Now.FirstUnit == LengthUnit.Yards;
        return new(
            view.Title, Words.Of(answer.Verdict), answer.Verdict switch { Verdict.Yes => 2, Verdict.OnlyJust => 1, _ => 0 }, [chance + view.Words.Why()],
            [.. answer.Parts.Select(p =>
            {
                var (metres, yards) = (Shown.MetresUp(p.Need), Shown.YardsUp(p.Need));
                return new CardRow(
                    p.Part.Name, view.Numbers[p.Part.Name], p.From is { } from ? view.Words.Name(from.Leftover) : "nothing",
                    p.Part.Rows > 0 ? p.Part.Rows.ToString(CultureInfo.InvariantCulture) : "–", yardsFirst ? yards : metres, yardsFirst ? metres : yards);
            })]);
    }
}
