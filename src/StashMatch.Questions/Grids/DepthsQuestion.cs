using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>"How deep must each stripe be so that these are knitted up?"</summary>
public static class DepthsQuestion
{
    /// <summary>The size.</summary>
    public static readonly Field Size = MatchQuestion.Size with { Before = ["depthSize"] };

    /// <summary>The leftovers to be knitted up.</summary>
    public static readonly Field Leftovers = MatchQuestion.Leftovers with { MostOfThem = DepthQuestion.MostLeftovers, Before = ["chosen"], Says = "Ids of logged leftovers, or leftovers." };

    /// <summary>Fewest rows of a stripe; nothing said is 2.</summary>
    public static readonly Field LeastRows = Field.Whole("leastRows", 2, ChangedHat.MostRows) with { Before = ["least"] };

    /// <summary>Most rows of a stripe; nothing said is as many as there are.</summary>
    public static readonly Field MostRows = Field.Whole("mostRows", 2, ChangedHat.MostRows) with { Before = ["most"] };

    /// <summary>All fields.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [MatchQuestion.Hat, Size, Leftovers, LeastRows, MostRows, MatchQuestion.Bag, MatchQuestion.AllowancePercent];

    /// <summary>The question; null with messages.</summary>
    /// <param name="asked">What is said.</param>
    /// <param name="hat">The hat; null where it cannot be read, which has been told.</param>
    /// <param name="logged">The logged leftovers that may go into a hat.</param>
    /// <param name="usualAllowance">The reserve where nothing is said.</param>
    public static DepthQuestion? Read(Reading asked, Hat? hat, IReadOnlyList<Leftover> logged, decimal usualAllowance = 10)
    {
        ArgumentNullException.ThrowIfNull(asked);
        if (hat is not null and not HatDesign)
        {
            asked.Wrong(MatchQuestion.Hat, "has only a printed table; depths need a hat by measurements");
        }

        var size = MatchQuestion.ReadSize(asked, Size, hat);
        var (least, most) = (asked.Whole(LeastRows) ?? 2, asked.Whole(MostRows) ?? ChangedHat.MostRows);
        if (most < least)
        {
            asked.Wrong(MostRows, $"must be a whole number from the least to {ChangedHat.MostRows}");
        }

        var allowance = asked.Number(MatchQuestion.AllowancePercent) ?? usualAllowance;
        var (there, meant) = AskedLeftovers.Read(asked, Leftovers, logged);
        if (asked.Said[Leftovers].Each is null or [])
        {
            asked.Wrong(Leftovers, $"must be 1 to {DepthQuestion.MostLeftovers}");
        }

        return asked.Errors.Any || hat is not HatDesign design
            ? null
            : new DepthQuestion(design, size!, [.. there.Where(l => meant?.Contains(l.Id) != false)]) { LeastRows = least, MostRows = most, AllowancePercent = allowance };
    }
}
