namespace StashMatch.Knitting.Matching.Search;

/// <summary>One stretch of a leftover's worth, over loads from and to so much beside what it holds.</summary>
/// <param name="From">The least load, counted from what it holds, millimetres.</param>
/// <param name="To">The most load, counted the same.</param>
/// <param name="Constant">Worth of any load here, millimetres.</param>
/// <param name="OfHeld">How often what it holds counts.</param>
/// <param name="OfLoad">How often the load counts, 0 or 1.</param>
/// <param name="LongestDo">Whether a longer leftover is worth no less for the same load, so that only the longest need be tried where colours do not matter.</param>
internal sealed record Stretch(long From, long To, long Constant, int OfHeld, int OfLoad, bool LongestDo)
{
    /// <summary>What a load here is worth without its own part.</summary>
    public long Base(long held) => Constant + (OfHeld * Math.Max(0, held));
}

/// <summary>What a plan is worth: a sum over leftovers of a figure that depends on what each may bear and what lies on it, millimetres.</summary>
/// <remarks>
/// <code>
/// tidiness   10 000 |                  /   finished: up to 2 m left
///                   |_________________/
///                 0 |______           |   useful: 8 m and more left, or not used
///                   |      |          |
///           -18 000 |      |/'''''''''    a stub
///                   +---------------------- load
///                          8 m left   2 m
///
/// what goes in      |            ______   no more than there is
///                   |       '''/
///                   |  ''/
///                   +---------------------- load
///                              all it holds
/// </code>
/// </remarks>
internal sealed class Worth
{
    /// <summary>A leftover with this much or more left is still useful, millimetres [ours].</summary>
    public const long Useful = 8_000;

    /// <summary>A leftover with at most this much left is finished, millimetres [ours].</summary>
    public const long Finished = 2_000;

    private const long Reward = 10_000;
    private const long Far = long.MaxValue / 4;

    private Worth(bool mayOverfill, long least, params Stretch[] stretches) => (MayOverfill, Least, Stretches) = (mayOverfill, least, stretches);

    /// <summary>Tier 5: + 100 less what is left where a leftover is finished, − 100 less what is left where a stub stays; in decimetres, here in millimetres.</summary>
    public static Worth Tidiness { get; } = new(
        mayOverfill: false,
        -Reward - Useful,
        new Stretch(-Finished, 0, Reward, -1, 1, LongestDo: false),
        new Stretch(1 - Useful, -1 - Finished, -Reward, -1, 1, LongestDo: false),
        new Stretch(-Far, -Useful, 0, 0, 0, LongestDo: true));

    /// <summary>Tier 2: what goes in, where a leftover may be asked for more than it holds.</summary>
    public static Worth GoesIn { get; } = new(
        mayOverfill: true,
        0,
        new Stretch(-Far, 0, 0, 0, 1, LongestDo: true),
        new Stretch(1, Far, 0, 1, 0, LongestDo: true));

    /// <summary>Whether more may be laid on a leftover than it holds, and parts be left with nothing.</summary>
    public bool MayOverfill { get; }

    /// <summary>No leftover's worth is less.</summary>
    public long Least { get; }

    public IReadOnlyList<Stretch> Stretches { get; }

    /// <summary>The worth of what lies on a leftover; higher is better.</summary>
    public long Of(long held, long load)
    {
        if (load == 0)
        {
            return 0;
        }

        foreach (var s in Stretches)
        {
            if (load >= held + s.From && load <= held + s.To)
            {
                return s.Base(held) + (s.OfLoad * load);
            }
        }

        return 0;
    }
}
