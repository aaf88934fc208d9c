using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The word with its four steps; the middle two both read "only just".</summary>
internal enum Word
{
    /// <summary>Some metres are short.</summary>
    No,

    /// <summary>Nothing is short.</summary>
    ByTheLabel,

    /// <summary>Nothing is short, and every leftover lasts more likely than not.</summary>
    OnlyJust,

    /// <summary>The reserve is kept, and every leftover is as sure as was asked.</summary>
    Yes,
}

/// <summary>What is said of a question, from word, least short, brim and sureness alone, with one plan of that standing, untidied.</summary>
/// <param name="Question">The question, its stripe count settled.</param>
/// <param name="Plan">The plan. Its proof speaks of word, least short, brim and sureness.</param>
internal sealed record Outcome(Question Question, Plan Plan)
{
    private double? _chance;

    public HatNeeds Hat => Plan.Puzzle.Hat;

    public required Word Word { get; init; }

    public required Why Why { get; init; }

    /// <summary>The rung of the plan; 0 with something short.</summary>
    public double Sureness { get; init; }

    /// <summary>The highest rung of any plan with this word; 0 with something short.</summary>
    public double Reach { get; init; }

    /// <summary>By how much the hat is short.</summary>
    public Metres Short { get; init; }

    /// <summary>Whether no plan has a better word or, having it, reaches further; whatever is proven of the rest.</summary>
    public bool WordProven { get; init; }

    public TooFew? TooFew { get; init; }

    public Verdict Verdict => Word switch { Word.No => Verdict.No, Word.Yes => Verdict.Yes, _ => Verdict.OnlyJust };

    /// <summary>The chance that no leftover runs out; 0 with something short.</summary>
    public double Chance => _chance ??= Word == Word.No ? 0 : Plan.ChanceOfEnough();

    /// <summary>Whether this leads further: the better word, then the higher reach, then fewer metres short, then the better chance.</summary>
    public bool IsAheadOf(Outcome other) => (Word, Reach, -Short.Millimetres, Chance).CompareTo((other.Word, other.Reach, -other.Short.Millimetres, other.Chance)) > 0;
}
