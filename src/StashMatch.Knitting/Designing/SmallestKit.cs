using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>A skein that can be bought whole.</summary>
/// <param name="Grams">What it weighs, over 0 and at most 5,000 g.</param>
/// <param name="Label">Its label ratio.</param>
public sealed record SkeinSize(Grams Grams, LabelRatio Label)
{
    /// <summary>What it is spun of; unknown unless said. Only whether a brim keeps its shape is read off it.</summary>
    public FibreBlend Fibre { get; init; } = FibreBlend.Unknown;

    /// <summary>What it holds, rounded down to the millimetre.</summary>
    public Metres Held => Metres.Held(Label.MetresIn(Grams.Value));
}

/// <summary>The fewest grams of whole skeins that make every cell asked, one hat at a time.</summary>
/// <param name="Counts">How many of each skein size, in the order given; empty where no number of them will do.</param>
/// <param name="Total">All of them together.</param>
/// <param name="Proven">Whether nothing lighter exists, rather than this being the lightest found.</param>
/// <param name="TooLong">Where no number will do: the part longer than the longest skein, with its allowance.</param>
public sealed record SmallestKit(IReadOnlyList<int> Counts, Grams Total, bool Proven, (string Part, Metres Planned)? TooLong = null)
{
    /// <summary>The least shape-keeping yarn a brim is given, of all cells asked; null where no hat asked for has a brim.</summary>
    public BrimYarn? Brim { get; init; }

    /// <summary>Whether there is such a kit.</summary>
    public bool IsThere => Counts.Count > 0;
}

/// <summary>Finds the smallest kit: kits in order of grams from the lightest up, so that the first that makes every cell is the smallest.</summary>
/// <remarks>
/// Every skein is a colour of its own that goes with every other, and of the hat's weight class. Each cell's brim comes from skeins of the
/// narrowest brim set one of which is long enough: yarn that keeps its shape, then yarn that relaxes, then unknown fibre, then any. Exact
/// while the steps last: a kit is passed over only where a bound or the matcher's search proves that it does not do.
/// </remarks>
public static class SmallestKits
{
    private const int MostLooks = 100_000;
    private const int MostSearches = 6_000;
    private const int MostSkeins = 80;

    // The widest brim set.
    private const int AnyBrim = 3;

    /// <summary>The smallest kit for the cells of a question; cells that cannot be knitted are left out.</summary>
    /// <param name="question">What is to be made, every arrangement asked of it included.</param>
    /// <param name="sizes">What can be bought, 1 to 8 sizes of skein.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Null where no cell can be knitted.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static SmallestKit? Find(KitQuestion question, IReadOnlyList<SkeinSize> sizes, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentOutOfRangeException.ThrowIfZero(sizes.Count, nameof(sizes));
        var capacity = sizes.Select(s => (long)Math.Floor(s.Held.Millimetres * 100m / (100m + question.AllowancePercent))).ToArray();
        var demands = Hardest(question, sizes, capacity);
        if (demands.Count == 0)
        {
            return null;
        }

        var longest = capacity.Max();
        foreach (var (demand, _) in demands)
        {
            if (Array.Exists(demand.Need, n => n > longest))
            {
                var at = demand.LongestFirst[0];
                var part = demand.Hat.Parts[demand.Grouping.Groups[at].EndsAt].Name;
                return new SmallestKit([], default, true, (part, Metres.FromMillimetres(demand.Need[at]).WithAllowance(question.AllowancePercent)));
            }
        }

        var widest = demands.Where(d => Array.Exists(d.Demand.HasBrim, b => b)).Select(d => (BrimYarn?)d.Width).Max();
        return new Search(question, sizes, capacity, demands, cancel).Lightest() with { Brim = widest };
    }

    // What makes a harder cell makes those it outdoes, where their brims are no choosier.
    private static List<(Demand Demand, int Width)> Hardest(KitQuestion question, IReadOnlyList<SkeinSize> sizes, long[] capacity)
    {
        var widths = sizes.Select(s => BrimSet.WidthOf(BrimRule.Rate(s.Fibre, superwash: false, YarnMake.Plied))).ToArray();
        var kept = new List<(Demand Demand, int Width)>();
        foreach (var demand in from arrangement in question.Arrangements
                               from size in question.Sizes
                               from stripes in question.StripeCounts ?? question.Hat.CountsFor(size)
                               select Demand.Of(question.Hat, size, stripes, arrangement, out _))
        {
            if (demand is null)
            {
                continue;
            }

            var brim = Enumerable.Range(0, demand.Need.Length).Where(i => demand.HasBrim[i]).Select(i => demand.Need[i]).DefaultIfEmpty(0).Max();
            var width = brim == 0 ? AnyBrim : Enumerable.Range(0, sizes.Count).Where(t => capacity[t] >= brim).Select(t => widths[t]).DefaultIfEmpty(AnyBrim).Min();
            if (!kept.Exists(k => k.Width <= width && k.Demand.Outdoes(demand)))
            {
                kept.RemoveAll(k => width <= k.Width && demand.Outdoes(k.Demand));
                kept.Add((demand, width));
            }
        }

        return [.. kept.OrderByDescending(d => d.Demand.Whole)];
    }

    private sealed class Search(KitQuestion question, IReadOnlyList<SkeinSize> sizes, long[] capacity, List<(Demand Demand, int Width)> demands, CancellationToken cancel)
    {
        private int _searches = MostSearches;
        private bool _proven = true;

        // Each kit is reached once: from the kit without its last skein, skeins added in the order of the sizes.
        public SmallestKit Lightest()
        {
            var waiting = new PriorityQueue<int[], (long Grams, int Skeins, long Order)>();
            waiting.Enqueue(new int[sizes.Count], (0, 0, 0));
            var order = 0L;
            for (var look = 0; look < MostLooks && waiting.TryDequeue(out var kit, out var at); look++)
            {
                if ((look & 0xFF) == 0)
                {
                    cancel.ThrowIfCancellationRequested();
                }

                if (at.Skeins > 0 && Makes(kit))
                {
                    return new SmallestKit(kit, Grams.FromMilligrams(at.Grams), _proven);
                }

                if (_searches <= 0)
                {
                    break;
                }

                if (at.Skeins == MostSkeins)
                {
                    _proven = false;
                    continue;
                }

                for (var t = Math.Max(0, Array.FindLastIndex(kit, c => c > 0)); t < sizes.Count; t++)
                {
                    var more = (int[])kit.Clone();
                    more[t]++;
                    waiting.Enqueue(more, (at.Grams + sizes[t].Grams.Milligrams, at.Skeins + 1, ++order));
                }
            }

            return Growing();
        }

        // The steps ran out: one skein size after another, as many as it takes, the lightest of those.
        private SmallestKit Growing()
        {
            SmallestKit? best = null;
            for (var t = 0; t < sizes.Count; t++)
            {
                _searches = 200;
                var kit = new int[sizes.Count];
                for (var n = 1; n <= 400 && _searches > 0; n++)
                {
                    kit[t] = n;
                    var grams = Grams.FromMilligrams(n * sizes[t].Grams.Milligrams);
                    if (best is not null && grams >= best.Total)
                    {
                        break;
                    }

                    if (Makes(kit))
                    {
                        best = new SmallestKit(kit, grams, false);
                        break;
                    }
                }
            }

            return best ?? new SmallestKit([], default, false);
        }

        private bool Makes(int[] kit)
        {
            var held = kit.Select((n, t) => n * capacity[t]).Sum();
            if (held < demands[0].Demand.Whole)
            {
                return false;
            }

            var supply = new Supply(Skeins(kit), question.Hat.WeightClass);
            for (var d = 0; d < demands.Count; d++)
            {
                _searches--;
                var (demand, width) = demands[d];
                var found = new KitFit(demand, supply, cancel).Covers(question.AllowancePercent, supply.BrimWidth.All(b => b <= width) ? AnyBrim : width);
                if (found != Found.Yes)
                {
                    _proven &= found == Found.No;

                    // The cell that failed is tried first on the next kit, but for the largest, which the bound above speaks of.
                    if (d > 1)
                    {
                        (demands[1], demands[d]) = (demands[d], demands[1]);
                    }

                    return false;
                }
            }

            return true;
        }

        private List<Leftover> Skeins(int[] kit) => [.. kit.SelectMany((n, t) => Enumerable.Range(1, n).Select(i =>
            new Leftover($"{t:00} {i:0000}", $"skein {i}", Weighing.Stated(sizes[t].Grams), sizes[t].Label)
            {
                Class = question.Hat.WeightClass,
                Fibre = sizes[t].Fibre,
            }))];
    }
}
