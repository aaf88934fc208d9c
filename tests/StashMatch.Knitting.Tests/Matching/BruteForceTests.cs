using CsCheck;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>Small questions answered by looking at every possibility: the oracle shares nothing with the search but the puzzle's layout.</summary>
public sealed class BruteForceTests
{
    private static readonly string?[] Hexes = ["#E2D3B2", "#E2D3B2", "#523063", "#26374F", "#B4362C", null];

    private static readonly Gen<Question> Questions =
        from stripes in Gen.Int[1, 3]
        from braided in Gen.Bool
        from brim in Gen.Bool
        from needs in Gen.Int[2, 9].Array[8]
        from held in Gen.Int[2, 24].Array[1, 4]
        from colours in Gen.Int[0, Hexes.Length - 1].Array[4]
        from arrangement in Gen.Bool.Select(own => own ? Arrangement.OwnColours : Arrangement.AsItFalls)
        select Make(stripes, braided, brim, needs, held, colours, arrangement);

    [Fact]
    public void Whether_everything_can_be_covered_at_a_rung_is_what_looking_at_everything_says() => Questions.Sample(
        question =>
        {
            foreach (var rung in new[] { 0m, 5m, 10m, 25m })
            {
                var puzzle = Lay(question);
                var best = Everything(puzzle, puzzle.CapacityAt(rung)).Where(a => !a.Contains(-1)).ToList();
                var plan = new Planner(puzzle, default).Feasible(rung, out var found);
                Assert.NotEqual(Found.Unknown, found);
                Assert.Equal(best.Count > 0, plan is not null);
            }
        },
        iter: 1_500);

    [Fact]
    public void The_tidiest_plan_is_what_looking_at_everything_says() => Questions.Sample(
        question =>
        {
            foreach (var rung in new[] { 0m, 10m })
            {
                var puzzle = Lay(question);
                var capacity = puzzle.CapacityAt(rung);
                var all = Everything(puzzle, capacity).Where(a => !a.Contains(-1)).ToList();
                if (new Planner(puzzle, default).Feasible(rung, out _) is not { } plan)
                {
                    continue;
                }

                var tidied = new Planner(puzzle, default).Tidied(plan);
                Assert.True(tidied.Proven);
                Assert.Equal(all.Max(a => WorthOf(puzzle, capacity, a)), WorthOf(puzzle, capacity, tidied.BinOf));
            }
        },
        iter: 1_500);

    [Fact]
    public void The_most_that_can_be_covered_band_by_band_is_what_looking_at_everything_says() => Questions.Sample(
        question =>
        {
            var puzzle = Lay(question);
            var plan = new Planner(puzzle, default).MostCovered();
            Assert.True(plan.Proven);
            Assert.Equal(Everything(puzzle, puzzle.Held).Max(a => Bands(puzzle, a)), Bands(puzzle, plan.BinOf));
        },
        iter: 1_500);

    private static Puzzle Lay(Question question)
    {
        Assert.True(question.Hat.TryNeeds("X", question.Stripes!.Value, out var hat, out _));
        return Puzzle.Of(question, hat, null);
    }

    private static Question Make(int stripes, bool braided, bool brim, int[] needs, int[] held, int[] colours, Arrangement arrangement)
    {
        var lines = new List<PrintedLine>();
        var next = 0;
        void Add(string part) => lines.Add(new PrintedLine(part, $"Y{lines.Count}", needs[next++ % needs.Length]));
        if (brim)
        {
            Add("brim");
        }

        for (var i = 1; i <= stripes; i++)
        {
            Add($"stripe {i}");
        }

        if (braided && lines.Count <= 3)
        {
            Add("braid 1 strand a");
            Add("braid 1 strand b");
        }

        var hat = new PrintedHat
        {
            Name = "small",
            WeightClass = WeightClass.SuperFine,
            AllowanceIncluded = false,
            Sizes = [new PrintedSize("X", null, lines)],
        };
        var leftovers = held.Select((metres, i) => Samples.OfMetres($"l{i}", metres) with
        {
            Colour = Hexes[colours[i]] is { } hex && YarnColour.TryParse(hex, out var colour, out _) ? colour : null,
        }).ToList();
        return new Question(hat, "X", leftovers) { Stripes = stripes, Arrangement = arrangement };
    }

    // Every assignment of leftovers (or none) to items that keeps every rule.
    private static IEnumerable<int[]> Everything(Puzzle puzzle, long[] capacity)
    {
        var binOf = new int[puzzle.Items.Length];
        return From(0);

        IEnumerable<int[]> From(int at)
        {
            if (at == binOf.Length)
            {
                if (Keeps(puzzle, capacity, binOf))
                {
                    yield return (int[])binOf.Clone();
                }

                yield break;
            }

            for (var bin = -1; bin < capacity.Length; bin++)
            {
                binOf[at] = bin;
                foreach (var found in From(at + 1))
                {
                    yield return found;
                }
            }
        }
    }

    private static bool Keeps(Puzzle puzzle, long[] capacity, int[] binOf)
    {
        var parts = puzzle.Hat.Parts;
        for (var bin = 0; bin < capacity.Length; bin++)
        {
            if (puzzle.Items.Where(i => binOf[i.Index] == bin).Sum(i => i.Need) > capacity[bin])
            {
                return false;
            }
        }

        for (var p = 0; p < parts.Count; p++)
        {
            for (var q = 0; q < parts.Count; q++)
            {
                var (a, b) = (binOf[puzzle.Grouping.GroupOf[p]], binOf[puzzle.Grouping.GroupOf[q]]);
                if (p == q || a < 0 || b < 0)
                {
                    continue;
                }

                var stripes = parts[p].Kind == PartKind.Stripe && parts[q].Kind == PartKind.Stripe;
                var nextDoor = (stripes && parts[q].Number == parts[p].Number + 1)
                    || (parts[p].Kind == PartKind.Strand && parts[q].Kind == PartKind.Strand);
                if (nextDoor && (a == b || Alike(puzzle.Leftover(a), puzzle.Leftover(b))))
                {
                    return false;
                }

                if (puzzle.Question.Arrangement == Arrangement.OwnColours && a == b && parts[p].Kind == PartKind.Stripe
                    && parts[q].Kind is PartKind.Stripe or PartKind.Brim or PartKind.Crown)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static bool Alike(Leftover a, Leftover b) =>
        a.Colour is { } x && b.Colour is { } y && ColourDifference.Ciede2000(x.Lab, y.Lab) < 5;

    // Finished (2 m or less to spare) counts 100 less the spare in dm, an awkward stub (under 8 m) minus 100 less the spare; in millimetres.
    private static long WorthOf(Puzzle puzzle, long[] capacity, int[] binOf) => capacity.Select((c, bin) =>
    {
        var load = puzzle.Items.Where(i => binOf[i.Index] == bin).Sum(i => i.Need);
        var spare = c - load;
        return load == 0 || spare >= 8_000 ? 0 : spare <= 2_000 ? 10_000 - spare : -10_000 - spare;
    }).Sum();

    private static (long, long, long, long) Bands(Puzzle puzzle, int[] binOf)
    {
        long In(int band) => puzzle.Items.Where(i => i.Band == band && binOf[i.Index] >= 0).Sum(i => i.Need);
        return (In(0), In(1), In(2), In(3));
    }
}
