namespace StashMatch.Knitting.Yarns;

/// <summary>How a yarn behaves in a brim.</summary>
public enum BrimKeeping
{
    /// <summary>Index 80 or more: keeps its shape.</summary>
    Keeps,

    /// <summary>Index 60 to under 80: relaxes with wear.</summary>
    Relaxes,

    /// <summary>Index under 60: prone to stretching.</summary>
    Prone,
}

/// <summary>A yarn's rating for a brim.</summary>
/// <param name="Index">Shape index, 0 to 100.</param>
/// <param name="Keeping">Its class.</param>
/// <param name="CloseCall">Within 3 points of a boundary, both edges counted (label law allows 3 points).</param>
/// <param name="FibreUnknown">Half of it or more is of unknown fibre.</param>
public sealed record BrimRating(decimal Index, BrimKeeping Keeping, bool CloseCall, bool FibreUnknown);

/// <summary>The brim rule: Σ share × points / 100, with singles, drape and elastane taken into account [ours].</summary>
public static class BrimRule
{
    private const decimal KeepsFrom = 80;
    private const decimal RelaxesFrom = 60;
    private const decimal CloseBy = 3;
    private const decimal LiftingElastane = 2;

    /// <summary>Rates a yarn.</summary>
    /// <param name="fibre">Its fibres.</param>
    /// <param name="superwash">Turns untreated wool of the fibre text into superwash.</param>
    /// <param name="make">Singles lose 10 points, drape makes 5.</param>
    public static BrimRating Rate(FibreBlend fibre, bool superwash, YarnMake make)
    {
        ArgumentNullException.ThrowIfNull(fibre);
        var elastane = fibre.Shares.Where(s => s.Fibre.Family == FibreFamily.Elastane).Sum(s => s.Percent);
        var others = fibre.Shares.Where(s => s.Fibre.Family != FibreFamily.Elastane).ToList();
        var whole = others.Sum(s => s.Percent);
        var index = whole == 0 ? 0 : others.Sum(s => s.Percent * PointsOf(s.Fibre, superwash)) / whole;
        index = Math.Max(0, index - (make switch { YarnMake.Singles => 10, YarnMake.Drape => 5, _ => 0 }));
        var keeping = index >= KeepsFrom ? BrimKeeping.Keeps : index >= RelaxesFrom ? BrimKeeping.Relaxes : BrimKeeping.Prone;
        if (elastane >= LiftingElastane && keeping != BrimKeeping.Keeps)
        {
            keeping--;
        }

        var close = Math.Abs(index - KeepsFrom) <= CloseBy || Math.Abs(index - RelaxesFrom) <= CloseBy;
        var unknown = fibre.Shares.Where(s => s.Fibre.Family == FibreFamily.Unknown).Sum(s => s.Percent) >= 50;
        return new BrimRating(index, keeping, close, unknown);
    }

    private static decimal PointsOf(Fibre fibre, bool superwash) =>
        superwash && fibre.Family == FibreFamily.Wool ? Fibre.SuperwashWool.Points : fibre.Points;
}
