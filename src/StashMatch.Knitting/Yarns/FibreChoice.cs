namespace StashMatch.Knitting.Yarns;

/// <summary>Which fibres the wearer or the wash leaves room for.</summary>
public enum FibreChoice
{
    /// <summary>Any.</summary>
    Any,

    /// <summary>No sheep's wool, treated or not, and nothing of unknown fibre.</summary>
    NoWool,

    /// <summary>Sheep's wool alone, treated or not; elastane does not count.</summary>
    OnlyWool,

    /// <summary>Nothing that felts or must be washed by hand, and nothing of unknown fibre.</summary>
    MachineWashable,
}

/// <summary>Tells which leftovers a choice of fibres lets in.</summary>
public static class FibreChoices
{
    /// <summary>Whether a leftover may go in. What nobody knows goes in under <see cref="FibreChoice.Any"/> alone; a care label that rules the machine out does so whatever the fibre [ours].</summary>
    public static bool Allows(this FibreChoice choice, Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        var fibre = leftover.Fibre;
        var wool = fibre.Contains(FibreFamily.Wool) || fibre.Contains(FibreFamily.SuperwashWool);
        var unknown = fibre.Contains(FibreFamily.Unknown);
        return choice switch
        {
            FibreChoice.NoWool => !wool && !unknown,
            FibreChoice.OnlyWool => fibre.Shares.All(s => s.Fibre.Family is FibreFamily.Wool or FibreFamily.SuperwashWool or FibreFamily.Elastane),
            FibreChoice.MachineWashable => !unknown && !fibre.HasUntreatedWool(leftover.Superwash) && !fibre.Contains(FibreFamily.OtherAnimal)
                && leftover.Care is not ({ DoNotWash: true } or { Action: WashAction.Hand }),
            _ => true,
        };
    }
}
