using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>The question in integers: items, leftovers, and the rules between them. Leftovers stand in a fixed order, so the order asked changes nothing.</summary>
internal sealed class Puzzle
{
    private readonly Bag _bag;
    private readonly Pool _pool;

    private Puzzle(Question question, Layout layout, Bag bag, Pool pool, int width, ItemClass[] classes)
    {
        (Question, Layout, _bag, _pool, BrimWidth, Classes) = (question, layout, bag, pool, width, classes);
        Limits = question.Blend ? ColourLimits.NoLimit : layout.Limits;
    }

    public Question Question { get; }

    public Layout Layout { get; }

    /// <summary>The widest brim set let in, 0 to 3.</summary>
    public int BrimWidth { get; }

    public HatNeeds Hat => Layout.Hat;

    public Grouping Grouping => Layout.Grouping;

    public int Bins => _pool.At.Length;

    public long[] Held => _pool.Held;

    public Pool Pool => _pool;

    public Item[] Items => Layout.Items;

    public ItemClass[] Classes { get; }

    /// <summary>For each item those under the colour rule with it.</summary>
    public int[][] Beside => Layout.Beside;

    /// <summary>How many items one colour may serve.</summary>
    public ColourLimits Limits { get; }

    public bool OwnColours => Layout.OwnColours;

    /// <summary>What wants a leftover of its own, the longest first; in turn the colour rule says so, and may be lifted.</summary>
    public long[] OwnLongest => OwnColours || !Question.Blend ? Layout.OwnLongest : [];

    public Leftover Leftover(int bin) => _bag.Leftovers[_pool.At[bin]];

    /// <summary>Where a leftover stands here, or -1.</summary>
    public int BinOf(string id) => _bag.At(id) is >= 0 and var at ? Array.IndexOf(_pool.At, at) : -1;

    /// <summary>An index for each colour, -1 for one not known.</summary>
    public int ColourOf(int bin) => bin < Bins ? _bag.ColourOf(_pool.At[bin]) : -1;

    /// <summary>Whether two leftovers may lie side by side: different ones, dE00 of 5 or more; a missing colour counts as different.</summary>
    /// <remarks>A number past the leftovers is no leftover and touches all.</remarks>
    public bool MayTouch(int a, int b) => Question.Blend || (a != b && (a >= Bins || b >= Bins || _bag.Apart(_pool.At[a], _pool.At[b])));

    /// <summary>Whether two leftovers look different: dE00 of 5 or more; a missing colour counts as different, one leftover never.</summary>
    public bool LookDifferent(int a, int b) => a != b && _bag.Apart(_pool.At[a], _pool.At[b]);

    /// <summary>Whether an item may come from a leftover, everything placed so far considered, metres aside.</summary>
    public bool Admits(Item item, int bin, int[] binOf)
    {
        if (!Classes[item.Class].Fits[bin])
        {
            return false;
        }

        foreach (var n in Beside[item.Index])
        {
            if (binOf[n] >= 0 && !MayTouch(bin, binOf[n]))
            {
                return false;
            }
        }

        if (!OwnColours || item.Role == Role.Free)
        {
            return true;
        }

        for (var i = 0; i < Items.Length; i++)
        {
            if (i != item.Index && binOf[i] == bin && (Items[i].Role == Role.Stripe || (Items[i].Role == Role.Head && item.Role == Role.Stripe)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether every item of one class stands beside every one of another.</summary>
    public bool AlwaysBeside(int c, int d) => Layout.AlwaysBeside[c, d];

    /// <summary>dE00 between two leftovers in hundredths, to the nearest; -1 where a colour is not known.</summary>
    public int StepBetween(int a, int b) => _bag.Step(_pool.At[a], _pool.At[b]);

    /// <summary>What leftovers bear at every level, for a knitter with such a usage.</summary>
    public Capacities CapacitiesFor(Usage usage) => _pool.CapacitiesFor(usage, Odds.Rung.Of(Question.Target), Question.AllowancePercent);

    /// <summary>The same question with the brim from another set.</summary>
    public Puzzle With(int brimWidth) => brimWidth == BrimWidth || !Layout.HasOpenBrim ? this : new(Question, Layout, _bag, _pool, brimWidth, ClassesOf(Layout, _bag, _pool, brimWidth));

    /// <summary>The same question with the seam under the colour rule.</summary>
    public Puzzle WithSeam()
    {
        var layout = Layout.WithSeam(Question, alone: Question.Blend);
        return new(Question with { Blend = false }, layout, _bag, _pool, BrimWidth, ClassesOf(layout, _bag, _pool, BrimWidth));
    }

    /// <summary>The same question under another colour rule.</summary>
    public Puzzle Blended() => new(Question with { Blend = true }, Layout, _bag, _pool, BrimWidth, Classes);

    /// <summary>Lays a question out. <paramref name="brimWidth"/> limits the brim's leftovers; 3 lets all in.</summary>
    public static Puzzle Of(Question question, HatNeeds hat, int brimWidth = BrimSet.Widest)
    {
        var (bag, layout) = (question.Bag(), Layout.Of(question, hat));
        var pool = question.Locks.Count == 0 ? bag.PoolOf(hat.WeightClass) : WithLocked(bag, hat, question.Locks);
        return new Puzzle(question, layout, bag, pool, brimWidth, ClassesOf(layout, bag, pool, brimWidth));
    }

    private static Pool WithLocked(Bag bag, HatNeeds hat, IReadOnlyList<Pairing> locks)
    {
        var locked = locks.Select(l => bag.At(l.Leftover)).ToHashSet();
        var at = Enumerable.Range(0, bag.Leftovers.Length).Where(b => bag.ClassOf(b) == hat.WeightClass || locked.Contains(b));
        return new Pool(bag, [.. at], hat.WeightClass);
    }

    private static ItemClass[] ClassesOf(Layout layout, Bag bag, Pool pool, int width)
    {
        var classes = new ItemClass[layout.Shapes.Length];
        for (var c = 0; c < classes.Length; c++)
        {
            var s = layout.Shapes[c];
            var fit = !s.Open ? FitOf(bag, pool, s, width) : s.Brim ? pool.Brim(width) : pool.Everyone;
            classes[c] = new ItemClass(s.Need, s.Band, s.Role, s.Neighbours, fit, s.Count);
        }

        return classes;
    }

    private static Fit FitOf(Bag bag, Pool pool, ItemShape shape, int width)
    {
        var free = shape.Brim ? pool.Brim(width) : pool.Everyone;
        return new Fit([.. pool.At.Select((at, j) =>
        {
            var id = bag.Leftovers[at].Id;
            return (shape.Locks.Count > 0 ? shape.Locks.All(l => l == id) : free.Bins[j]) && !shape.Never.Contains(id, StringComparer.Ordinal);
        })]);
    }
}
