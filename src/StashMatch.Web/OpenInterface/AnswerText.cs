using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.OpenInterface;

/// <summary>An answer as the open interface sends it.</summary>
public static class AnswerText
{
    public static CanIMakeAnswer Of(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var words = new Words(answer);
        var measured = answer.Hat.Plan is not null;
        return new CanIMakeAnswer(
            Names.Of(answer.Verdict),
            Names.Of(answer.Why),
            Math.Round(answer.ChanceOfEnough, 4),
            answer.ProvenBest,
            answer.Hat.Size,
            answer.Hat.Stripes,
            Names.Of(answer.Arrangement),
            answer.WeakestLeftover,
            answer.MarginPercent,
            Math.Round(answer.Sureness, 2),
            Math.Round(answer.Reach, 2),
            PartsOf(answer.Parts, measured),
            [.. answer.Leftovers.Select(l => new LeftoverAnswerBody(
                l.Leftover.Id, l.Leftover.Held.Value, l.Leftover.HeldAtLeast.Value, l.Used.Value, l.Left.Value))],
            answer.Short.Value,
            answer.ShortForAllowance.Value,
            answer.Care?.ToString(),
            [.. answer.Warnings.Select(w => new NoticeBody(Names.Of(w.Code), w.Part, w.Leftover, words.Text(w)))],
            [.. answer.Cautions.Select(c => new NoticeBody(Names.Of(c), null, null, Words.Text(c)))],
            [.. answer.Repairs.Select(r => new RepairBody(
                r.Code == RepairCode.Buy ? "buy" : Names.Of(r.Code), words.Text(r), Names.Of(r.Verdict), Math.Round(r.ChanceOfEnough, 4))
            {
                Part = r.Part,
                Leftover = r.Leftover,
                OtherPart = r.OtherPart,
                OtherLeftover = r.OtherLeftover,
                Arrangement = r.Arrangement is { } a ? Names.Of(a) : null,
                InTurn = r.InTurn,
                Stripes = r.Stripes,
                Size = r.Size,
                Rows = r.Rows,
                BrimDepthCm = r.BrimDepth?.Value,
                BindOff = r.BindOff is { } b ? Names.Of(b) : null,
                BuyGrams = r.BuyGrams,
                BuyMetres = r.BuyMetres?.Value,
                BuyBalls = r.BuyBalls,
                BuyMiniSkeins = r.BuyMiniSkeins,
            })])
        {
            Wanted = answer.TooFew?.Wanted,
            There = answer.TooFew?.There,
            EachMetres = answer.TooFew?.Each.Value,
            Plans = [.. answer.Plans.Select(p => new SharedPlanBody(
                Names.Of(p.Kind), Math.Round(p.ChanceOfEnough, 4), p.MarginPercent, Math.Round(p.Sureness, 2), PartsOf(p.Parts, measured)))],
            Chosen = [.. answer.Chosen.Select(c => new ChosenBody(
                Names.Of(c.Tier),
                c.Length?.Value ?? (decimal?)c.Count ?? (c.Chance is { } chance ? Math.Round((decimal)chance, 4) : null),
                c.LimitingPart is null && c.LimitingLeftover is null ? null : new LimitBody(c.LimitingPart, c.LimitingLeftover)))],
        };
    }

    private static IReadOnlyList<PartAnswerBody> PartsOf(IReadOnlyList<PartAnswer> parts, bool measured) =>
    [
        .. parts.Select(p => new PartAnswerBody(
            p.Part.Name,
            Names.Of(p.Part.Kind),
            measured ? p.Part.Rows : null,
            measured ? Math.Round(p.Part.Depth.Value, 2) : null,
            p.Need.Value,
            p.Planned.Value,
            [.. p.All.Select(f => new FromAnswer(f.Leftover, f.Metres.Value, Math.Round(f.Grams, 3)))],
            p.Short.Value,
            p.HeldDouble ? "double" : null)),
    ];
}
