using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The first four tiers: word, least short, brim, sureness. Each is a question of whether everything goes in at some capacities.</summary>
/// <remarks>
/// <code>
///                      brim from   keeps shape   + relaxes   + unknown   all
/// yes, 0.99                             ·             ·           ·       found       a plan found counts for everything
/// yes, at the target                  none            ·         found       v         further down and further right,
/// only just (0.60)                      ^             ·           v         v         a proof of none for everything
/// by the label                          ^             ·           v         v         further up and further left
/// </code>
/// </remarks>
internal sealed class Tiers
{
    private readonly Puzzle _puzzle;
    private readonly Capacities _capacities;
    private readonly CancellationToken _cancel;
    private readonly Rung _target;
    private readonly int[] _widths;
    private readonly List<Tried> _tried = [];
    private bool _proven = true;

    public Tiers(Puzzle puzzle, Usage usage, CancellationToken cancel)
    {
        (_puzzle, _cancel) = (puzzle.With(BrimSet.Widest), cancel);
        _capacities = _puzzle.CapacitiesFor(usage);
        _target = Rung.Of(puzzle.Question.Target);

        // Sets that let in the same leftovers are one.
        _widths = !_puzzle.Layout.HasOpenBrim ? [BrimSet.Widest] : [.. Enumerable.Range(0, BrimSet.Widest + 1).Where(w => _puzzle.Pool.SameAs(w) == w)];
    }

    // What is asked: a rung, and what a load has to keep besides.
    private readonly record struct Level(Rung Rung, Keeping Keeping)
    {
        public bool AsksAllOf(Level other) => Rung >= other.Rung && Keeping >= other.Keeping;
    }

    private sealed record Tried(Level Level, int Width, Found Found, int[] BinOf);

    private int Widest => _widths[^1];

    private Level Yes => new(_target, Keeping.Yes);

    private static Level OnlyJust => new(Rung.OnlyJust, Keeping.Nothing);

    private static Level ByTheLabel => new(Rung.ByTheLabel, Keeping.Nothing);

    /// <summary>What is said of a question; null where something is short and only a covered hat counts.</summary>
    public static Outcome? Settle(Question question, HatNeeds hat, bool onlyIfCovered, CancellationToken cancel)
    {
        var puzzle = Puzzle.Of(question, hat);
        var tiers = new Tiers(puzzle, hat.Usage, cancel);
        var word = tiers.WordOf();
        return word != Word.No ? tiers.Covered(question, word) : onlyIfCovered ? null : tiers.Short(question);
    }

    /// <summary>What each leftover may bear for a yes.</summary>
    public static Capacity CapacityOfYes(Puzzle puzzle) => puzzle.CapacitiesFor(puzzle.Hat.Usage).At(Rung.Of(puzzle.Question.Target), Keeping.Yes);

    /// <summary>A plan for a yes, no surer than that, with the narrowest brim set; null where there is none, or none was found.</summary>
    public static Plan? PlanOfYes(Question question, HatNeeds hat, CancellationToken cancel)
    {
        var tiers = new Tiers(Puzzle.Of(question, hat), hat.Usage, cancel);
        if (!tiers.Holds(tiers.Yes))
        {
            return null;
        }

        var width = tiers.Narrowest(tiers.Yes);
        return new Plan(tiers._puzzle.With(width), tiers.PlanAt(tiers.Yes, width), tiers._capacities.At(tiers._target, Keeping.Yes), tiers._proven);
    }

    /// <summary>The best word of any plan.</summary>
    private Word WordOf()
    {
        // Most bags have plenty, or far too little: the most that can be asked, then the least.
        var most = new Level(Rung.Highest, Keeping.Yes);
        return Test(most, _widths[0]) == Found.Yes ? Word.Yes
            : !Holds(ByTheLabel) ? Word.No
            : Holds(Yes) ? Word.Yes
            : Holds(OnlyJust) ? Word.OnlyJust
            : Word.ByTheLabel;
    }

    private Outcome Covered(Question question, Word word)
    {
        var keeping = word == Word.Yes ? Keeping.Yes : Keeping.Nothing;
        var least = word switch { Word.Yes => Yes, Word.OnlyJust => OnlyJust, _ => ByTheLabel };
        var reach = word == Word.ByTheLabel ? Rung.ByTheLabel : Highest(least, Rung.Highest, Widest);
        var proven = _proven;
        var width = Narrowest(least);
        var rung = word == Word.ByTheLabel ? Rung.ByTheLabel : Highest(least, reach, width);
        var level = new Level(rung, keeping);
        if (word != Word.Yes && Test(new Level(rung, Keeping.Reserve), width) == Found.Yes)
        {
            level = new Level(rung, Keeping.Reserve);
        }

        var plan = new Plan(_puzzle.With(width), PlanAt(level, width), _capacities.At(level.Rung, level.Keeping), true);
        var why = word == Word.Yes ? Why.Covered : WhyNotYes();
        return new Outcome(question, plan with { Proven = _proven }) { Word = word, Why = why, WordProven = proven, Sureness = rung.Chance, Reach = reach.Chance };
    }

    private Outcome Short(Question question)
    {
        var proven = _proven;
        var least = new LeastShort(_puzzle, _cancel).Find();
        var tooFew = Counting.TooFew(_puzzle);
        var why = tooFew is not null ? Why.TooFewLeftovers : ColourAlone() ? Why.Colour : Why.Short;
        return new Outcome(question, least.Plan with { Proven = _proven && least.Plan.Proven }) { Word = Word.No, WordProven = proven, Why = why, TooFew = tooFew, Short = least.Metres };
    }

    private Why WhyNotYes()
    {
        if (!Holds(new Level(Rung.ByTheLabel, Keeping.Reserve)))
        {
            return Why.Allowance;
        }

        var (hat, usage) = (_puzzle.Hat, _puzzle.Hat.Usage);
        return hat.Plan is null || usage.Calibrated || usage.Spread <= Usage.CalibratedSpread ? Why.Chance
            : new Tiers(_puzzle, usage with { Spread = Usage.CalibratedSpread }, _cancel) is var known && known.Holds(known.Yes) ? Why.NotCalibrated
            : Why.Chance;
    }

    // Whether there is yarn enough and only the colour rule stands in the way.
    private bool ColourAlone()
    {
        if (_puzzle.Question.Blend)
        {
            return false;
        }

        var found = new Covering(_puzzle.Blended(), _cancel).Find(_capacities.At(Rung.ByTheLabel, Keeping.Nothing), out _);
        _proven &= found != Found.Unknown;
        return found == Found.Yes;
    }

    // Whether any plan is at a level: those with the widest brim set are all there are, but what steps do not find there they may find in a
    // narrower one.
    private bool Holds(Level level)
    {
        var found = Test(level, Widest);
        for (var w = _widths.Length - 2; found == Found.Unknown && w >= 0; w--)
        {
            found = Test(level, _widths[w]) == Found.Yes ? Found.Yes : Found.Unknown;
        }

        _proven &= found != Found.Unknown;
        return found == Found.Yes;
    }

    private int Narrowest(Level level)
    {
        foreach (var width in _widths)
        {
            if (width == Widest)
            {
                break;
            }

            var found = Test(level, width);
            if (found == Found.Yes)
            {
                return width;
            }

            _proven &= found == Found.No;
        }

        return Widest;
    }

    // The highest rung in a set, by halving; the least is there.
    private Rung Highest(Level least, Rung most, int width)
    {
        var (low, high) = (least.Rung.Index, most.Index);
        if (Test(new Level(most, least.Keeping), width) == Found.Yes)
        {
            return most;
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Test(new Level(Rung.All[middle], least.Keeping), width) == Found.Yes ? (middle, high) : (low, middle);
        }

        // That there is none above must be proven, not just not found.
        _proven &= high == low || Test(new Level(Rung.All[high], least.Keeping), width) == Found.No;
        return Rung.All[low];
    }

    private int[] PlanAt(Level level, int width) => _tried.Find(t => t.Found == Found.Yes && t.Level.AsksAllOf(level) && t.Width <= width)!.BinOf;

    private Found Test(Level level, int width)
    {
        foreach (var t in _tried)
        {
            if (t.Found == Found.Yes && t.Level.AsksAllOf(level) && t.Width <= width)
            {
                return Found.Yes;
            }

            if ((t.Found == Found.No && level.AsksAllOf(t.Level) && t.Width >= width) || (t.Level == level && t.Width == width))
            {
                return t.Found;
            }
        }

        _cancel.ThrowIfCancellationRequested();
        var found = new Covering(_puzzle.With(width), _cancel).Find(_capacities.At(level.Rung, level.Keeping), out var binOf);
        _tried.Add(new Tried(level, width, found, binOf));
        return found;
    }
}
