namespace StashMatch.Knitting.Designing;

/// <summary>Student's t for a two-sided interval that holds nine times in ten.</summary>
/// <remarks>Upper critical values for 0.05 [source: a printed table that names the NIST/SEMATECH e-Handbook as its own source; the handbook's page itself was not read].</remarks>
public static class StudentT
{
    private static readonly double[] Upper =
    [
        6.314, 2.920, 2.353, 2.132, 2.015, 1.943, 1.895, 1.860, 1.833, 1.812, 1.796, 1.782, 1.771, 1.761, 1.753,
        1.746, 1.740, 1.734, 1.729, 1.725, 1.721, 1.717, 1.714, 1.711, 1.708, 1.706, 1.703, 1.701, 1.699, 1.697,
    ];

    /// <summary>The value for so many degrees of freedom, 1 or more; past 30 that of 30, which is a little wide.</summary>
    public static double Nine(int degrees)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(degrees, 1);
        return Upper[Math.Min(degrees, Upper.Length) - 1];
    }
}
