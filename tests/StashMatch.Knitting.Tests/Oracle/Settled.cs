namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>What a model came to.</summary>
internal enum Proof
{
    /// <summary>There is one, and nothing is better.</summary>
    Best,

    /// <summary>There is none.</summary>
    None,

    /// <summary>The solver's own limit came first.</summary>
    Open,
}

/// <summary>A settled model.</summary>
/// <param name="Proof">What it came to.</param>
/// <param name="Value">The value reached, where there is one.</param>
/// <param name="BallOf">The leftover of each lot, -1 for one left out; empty where there is none.</param>
internal sealed record Settled(Proof Proof, long Value, int[] BallOf);
