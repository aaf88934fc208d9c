using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>What the rule says of a question; a figure is null where nobody could tell within the steps allowed.</summary>
internal sealed record Ruling
{
    public required Word? Word { get; init; }

    /// <summary>The highest rung at that word, over all brim sets: 0 in a no, 0.5 by the label.</summary>
    public decimal? Reach { get; init; }

    /// <summary>The narrowest brim set that has that word, 0 to 3.</summary>
    public int? Width { get; init; }

    /// <summary>The highest rung within that set.</summary>
    public decimal? Sureness { get; init; }

    /// <summary>Whether a plan at that rung keeps the reserve.</summary>
    public bool? Keeps { get; init; }

    /// <summary>The tidiest figure at that rung.</summary>
    public long? Tidy { get; init; }

    /// <summary>The tidiest figure of a yes by what its target asks, within the narrowest brim set.</summary>
    public long? MostUp { get; init; }

    /// <summary>The fewest parts that leave the leftover they had.</summary>
    public int? Changed { get; init; }

    /// <summary>Whether a plan as good in all that keeps the seam's two stripes apart.</summary>
    public bool? SeamDiffers { get; init; }

    /// <summary>The fewest millimetres short; 0 where nothing is.</summary>
    public long? Short { get; init; }
}

/// <summary>The reason that goes with a word, from other questions of the same kind.</summary>
internal static class Reasons
{
    /// <summary>Why, as far as it does not hang on a count of leftovers.</summary>
    /// <param name="question">The question.</param>
    /// <param name="hat">Its hat.</param>
    /// <param name="wordOf">The word of a question of this kind.</param>
    /// <param name="canKeep">Whether any plan keeps the reserve.</param>
    public static Why? Of(Question question, HatNeeds hat, Func<Question, HatNeeds, Word?> wordOf, Func<Question, HatNeeds, bool?> canKeep)
    {
        switch (wordOf(question, hat))
        {
            case null:
                return null;
            case Word.Yes:
                return Why.Covered;
            case Word.No:
                return question.Blend ? Why.Short : wordOf(question with { Blend = true }, hat) switch { null => null, Word.No => Why.Short, _ => Why.Colour };
            default:
                if (canKeep(question, hat) is not true and var keep)
                {
                    return keep is null ? null : Why.Allowance;
                }

                // Only who has not been weighed can be weighed.
                return hat.Plan is null || hat.Usage.Calibrated ? Why.Chance
                    : wordOf(question, hat with { Usage = hat.Usage with { Spread = Math.Min(0.05, hat.Usage.Spread) } }) switch
                    {
                        null => null,
                        Word.Yes => Why.NotCalibrated,
                        _ => Why.Chance
                    };
        }
    }
}
