using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Matching;

/// <summary>A settled plan with its verdict.</summary>
internal sealed record Outcome(Question Question, HatNeeds Hat, Plan Plan, Verdict Verdict, Why Why, double Chance)
{
    /// <summary>Whether this leads further: the better verdict, then the better chance.</summary>
    public bool IsAheadOf(Outcome other) => (Verdict, Chance).CompareTo((other.Verdict, other.Chance)) > 0;

    /// <summary>By how much the hat is short, millimetres; 0 where all is covered.</summary>
    public long Short => Verdict == Verdict.No ? Answers.Of(this, Question.AllowancePercent).Short.Millimetres : 0;

    public static Outcome Of(Question question, HatNeeds hat, Plan plan)
    {
        if (!plan.Complete)
        {
            return new(question, hat, plan, Verdict.No, Why.Short, 0);
        }

        var chance = plan.ChanceOfEnough(hat.Usage);
        var (verdict, why) = (Verdict.OnlyJust, Why.Allowance);
        if (HoldsAllowance(plan, question.AllowancePercent))
        {
            (verdict, why) = chance >= Matcher.GoodChance ? (Verdict.Yes, Why.Covered)
                : KnowingWouldDo(hat, plan) ? (Verdict.OnlyJust, Why.NotCalibrated)
                : (Verdict.OnlyJust, Why.Chance);
        }

        return new(question, hat, plan, verdict, why, chance);
    }

    private static bool HoldsAllowance(Plan plan, decimal allowancePercent)
    {
        var loads = plan.Loads();
        for (var j = 0; j < loads.Length; j++)
        {
            if (loads[j] * (100m + allowancePercent) > plan.Puzzle.Held[j] * 100m)
            {
                return false;
            }
        }

        return true;
    }

    private static bool KnowingWouldDo(HatNeeds hat, Plan plan) =>
        hat.Plan is not null && !hat.Usage.Calibrated && hat.Usage.Spread > Usage.CalibratedSpread
        && plan.ChanceOfEnough(hat.Usage with { Spread = Usage.CalibratedSpread }) >= Matcher.GoodChance;
}
