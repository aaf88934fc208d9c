using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>The words of what is folded away on the answer page, and of the piece, in reading order.</summary>
public static class FoldWords
{
    public const string GoodToKnow = "Good to know";
    public const string OtherWays = "Other ways";
    public const string InWords = "In words";
    public const string NotUsed = "Not used";
    public const string HowChosen = "How this was chosen";

    /// <summary>The piece's measures in words.</summary>
    public static string PieceOf(RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return $"The knitted piece: {Measures(plan)}";
    }

    /// <summary>What is good to know, in a few words each.</summary>
    public static string Notes(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return string.Join(" · ", answer.Warnings.Select(w => w.Code).Distinct().Select(c => c switch
        {
            WarningCode.BrimStretch => "brim may stretch",
            WarningCode.BrimRelax => "brim may loosen",
            WarningCode.BrimUnknownFibre => "brim: fibre unknown",
            WarningCode.WeightClassMix => "mixed thickness",
            WarningCode.LowContrast => "two colours are close",
            WarningCode.BraidSameValue => "a braid hardly shows",
            WarningCode.ColourUnknown => "a colour is unknown",
            WarningCode.CareMix => "wash by hand",
            WarningCode.ColourRun => "a colour may run",
            WarningCode.CoarseScale => "coarse scale",
            WarningCode.GaugeOrLabel => "check the gauge",
            WarningCode.LabelOrClass => "check a label",
            WarningCode.GuessedRatio => "a length is a guess",
            _ => "first and last stripe are alike",
        }));
    }

    public static string CareOf(Care care) => $"Washing the whole hat: {care}.";

    public static string WordsOf(AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return view.Answer.Hat.Plan is { } plan ? Measures(plan) : "from its printed table";
    }

    public static string Unused(AnswerView.NotUsedWhy why, int many) => (why, many == 1) switch
    {
        (AnswerView.NotUsedWhy.Stays, _) => "Not needed for this hat:",
        (AnswerView.NotUsedWhy.Thinner, _) => "Thinner than this hat’s yarn:",
        (AnswerView.NotUsedWhy.Thicker, _) => "Thicker than this hat’s yarn:",
        (AnswerView.NotUsedWhy.WrongFibre, _) => "Not the fibre you asked for:",
        (AnswerView.NotUsedWhy.UnknownFibre, _) => "Fibre unknown:",
        _ => "You said: don’t use",
    };

    public static string UnusedOf(IReadOnlyList<(AnswerView.NotUsedWhy Why, IReadOnlyList<FreeLeftover> Some)> unused)
    {
        ArgumentNullException.ThrowIfNull(unused);
        var thick = unused.Where(u => u.Why is AnswerView.NotUsedWhy.Thinner or AnswerView.NotUsedWhy.Thicker).Sum(u => u.Some.Count);
        return thick == 0 ? "they stay in the bag" : thick == unused.Sum(u => u.Some.Count) ? "too thick or too thin for this hat"
            : $"{Terms.Number(thick)} too thick or too thin for this hat; the rest stay in the bag";
    }

    /// <summary>What decided the choice, one sentence a step.</summary>
    public static string HowOf(Chosen chosen, AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        ArgumentNullException.ThrowIfNull(view);
        var limit = chosen.LimitingLeftover is { } id ? $" {view.NameOf(id)} is the limit." : chosen.LimitingPart is { } part
            ? $" {Terms.Capital(Words.The(part))} is the limit." : "";
        return chosen.Tier switch
        {
            Tier.Word => $"The best word this yarn can give is “{Words.Of(view.Answer.Verdict)}”.{limit}",
            Tier.LeastShort => $"No way to share out this yarn is less short{(chosen.Length is { } l ? $" than {Shown.OwnUp(l)}" : "")}.{limit}",
            Tier.Brim =>
                chosen.Count switch
                {
                    0 => "The brim’s yarn keeps its shape.",
                    1 => "The brim’s yarn loosens with wear; no firmer yarn is long enough.",
                    2 => "The brim’s fibre is unknown; no better yarn is long enough.",
                    _ => "Only this yarn is long enough for the brim."
                },
            Tier.Sure => $"With this kind of brim, no other way to share it out is surer.{limit}",
            Tier.Tidy => chosen.Count is > 0 and var n
                ? $"It finishes {CanIMakeItWords.Counted(n, "leftover")} and leaves few stubs."
                : "It leaves as few stubs as it can.",
            Tier.Colour => "Then the colours were put in the order you asked.",
            _ => chosen.Count is > 0 and var n ? $"It changes {CanIMakeItWords.Counted(n, "part")} of your last hat." : "It changes nothing of your last hat.",
        };
    }

    /// <summary>How certain the choice is.</summary>
    public static string Proven(bool proven) =>
        proven ? "This is proven: no better plan exists." : "This is the best found in the time. A better one may exist.";

    private static string Measures(RowPlan plan) =>
        $"{plan.BodyStitches} stitches × {plan.BodyRows} {(plan.Construction == Construction.BrimUpRound ? "rounds" : "rows")}, "
        + $"{Shown.OwnDepth(plan.Circumference)} round";
}
