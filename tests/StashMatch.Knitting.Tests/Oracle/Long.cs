namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Whether the long form of the proof was asked for: <c>tests/run --long</c>.</summary>
internal static class Long
{
    public static bool Form { get; } = Environment.GetEnvironmentVariable("STASHMATCH_LONG") == "1";
}
