namespace StashMatch.Knitting.Yarns;

/// <summary>How much less than its nominal weight a prepacked skein may lawfully hold (Directive 76/211/EEC, annex I) [source].</summary>
public static class PackTolerance
{
    /// <summary>The tolerable negative error of a nominal weight, grams, rounded up to a tenth.</summary>
    /// <param name="nominalGrams">5 to 1,000 g.</param>
    public static decimal ErrorGrams(decimal nominalGrams)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(nominalGrams, 5);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(nominalGrams, 1_000);
        var error = nominalGrams switch
        {
            <= 50 => nominalGrams * 0.09m,
            <= 100 => 4.5m,
            <= 200 => nominalGrams * 0.045m,
            <= 300 => 9,
            <= 500 => nominalGrams * 0.03m,
            _ => 15,
        };
        return Math.Ceiling(error * 10) / 10;
    }
}
