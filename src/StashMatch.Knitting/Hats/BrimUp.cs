using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>The brim-up hat in the round: rib first, stripes round the head, the crown drawn in by decrease lines every other round.</summary>
internal static class BrimUp
{
    private const int LeastStripeRounds = 2;

    public static bool TryCompile(
        HatDesign design, HatSize size, int stripes, [NotNullWhen(true)] out RowPlan? plan, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        (plan, why) = (null, null);
        var gauge = design.Gauge;
        var brim = design.Brim;
        var brimDepth = brim?.Depth ?? default;
        var step = Counts.LeastCommonMultiple(brim?.Rib ?? 2, 2);
        var stitches = size.Stitches ?? Counts.Nearest(size.Circumference.Value * gauge.StitchesPerCm, step);
        var lines = design.Crown.DecreaseLines;
        if (stitches < 2 * lines)
        {
            why = new CannotBeKnitted("crown.decreaseLines", $"{stitches} stitches are too few for {lines} lines of decreases.");
            return false;
        }

        if (design.Braids.Where != BraidPlaces.None && stitches % 2 != 0)
        {
            why = new CannotBeKnitted("stitches", $"A two-strand braid wants an even stitch count, not {stitches}.");
            return false;
        }

        var crown = CrownRounds(stitches, lines);
        var rounds = Counts.Nearest((size.Height.Value - brimDepth.Value) * gauge.RowsPerCm);
        var straight = rounds - crown.Count;
        if (straight < 0)
        {
            why = new CannotBeKnitted("heightCm", $"The crown takes {crown.Count} rounds, but only {rounds} lie above the brim.");
            return false;
        }

        if (Share(design, stripes, rounds, straight) is not var (stripeRounds, between))
        {
            var most = Enumerable.Range(1, stripes - 1).LastOrDefault(n => Share(design, n, rounds, straight) is not null);
            why = new CannotBeKnitted(
                "stripes",
                $"The rounds above the brim leave less than two for some of {stripes} stripes; the most this size can have is {most}.",
                most);
            return false;
        }

        var loop = LoopLength.MetresPerStitch(gauge);
        var above = Enumerable.Repeat(new RowRun(1, stitches, StitchPattern.Stockinette), straight).Concat(crown).ToList();
        var (sections, parts) = (new List<PlanSection>(), new List<HatPart>());
        var (brimStitches, brimRounds) = (0, 0);
        if (brim is not null)
        {
            (brimStitches, brimRounds) = (BrimRounds.Stitches(brim, stitches), BrimRounds.Rounds(brim, gauge));
            if (brimStitches < brim.Rib || brimRounds < 1)
            {
                why = new CannotBeKnitted("brim.depthCm", "The brim is too small for one repeat and one round of rib at this gauge.");
                return false;
            }

            sections.Add(BrimRounds.Section(brim, brimStitches, brimRounds, pickedUp: false));
            parts.Add(BrimRounds.Part(brim, brimStitches, brimRounds, gauge, loop, pickedUp: false));
        }

        var at = 0;
        var braid = 0;
        var ownCrown = design.Crown.Yarn == CrownYarn.Own;
        void AddBraid()
        {
            BraidRows.Add(++braid, stitches, loop, gauge, sections, parts);
            at += BraidRows.Rows;
        }

        if (design.Braids.Where == BraidPlaces.BesideBrimToo)
        {
            AddBraid();
        }

        for (var i = 1; i <= stripes; i++)
        {
            var worked = above.GetRange(at, stripeRounds[i - 1]);
            at += worked.Count;
            var castOn = i == 1 && brim is null ? Extras.CastOn * (double)(stitches / gauge.StitchesPerCm) / 100 : 0;
            sections.Add(new PlanSection(SectionKind.Stripe, i, InRuns(worked)));
            parts.Add(new HatPart(
                PartNames.Stripe(i),
                PartKind.Stripe,
                i,
                null,
                worked.Count,
                gauge.DepthOf(worked.Count),
                (worked.Sum(r => r.Stitches) * loop) + castOn,
                Extras.Ends));
            if (i <= between)
            {
                AddBraid();
            }
        }

        if (ownCrown)
        {
            sections.Add(new PlanSection(SectionKind.Crown, 0, InRuns(crown)));
            parts.Add(new HatPart(
                PartNames.Crown, PartKind.Crown, 0, null, crown.Count, gauge.DepthOf(crown.Count), crown.Sum(r => r.Stitches) * loop, Extras.Ends));
        }

        plan = new RowPlan
        {
            Construction = design.Construction,
            Size = size.Size,
            Stripes = stripes,
            Braids = braid,
            BodyStitches = stitches,
            BodyRows = rounds,
            BrimStitches = brimStitches,
            BrimRounds = brimRounds,
            BrimDepth = brimDepth,
            BrimFolded = brim?.Folded ?? false,
            CrownRounds = crown.Count,
            Gauge = gauge,
            Circumference = Centimetres.From(stitches / gauge.StitchesPerCm),
            BodyHeight = gauge.DepthOf(rounds),
            Sections = sections,
            Parts = parts,
        };
        return true;
    }

    // What is over a multiple of the lines is taken off evenly in the first crown round, which a plain round follows; then a round
    // of decreases and a plain one in turn until one stitch a line stays, which are drawn up.
    private static List<RowRun> CrownRounds(int stitches, int lines)
    {
        var rounds = new List<RowRun>();
        var left = stitches;
        if (left % lines != 0)
        {
            left -= left % lines;
            rounds.Add(new RowRun(1, left, StitchPattern.Decrease));
            rounds.Add(new RowRun(1, left, StitchPattern.Stockinette));
        }

        while (left > lines)
        {
            left -= lines;
            rounds.Add(new RowRun(1, left, StitchPattern.Decrease));
            if (left > lines)
            {
                rounds.Add(new RowRun(1, left, StitchPattern.Stockinette));
            }
        }

        return rounds;
    }

    // A braid is worked only where its three rounds lie below the first decrease; the most braids that do are worked.
    private static (int[] Rounds, int Between)? Share(HatDesign design, int stripes, int rounds, int straight)
    {
        var besideBrim = design.Braids.Where == BraidPlaces.BesideBrimToo ? BraidRows.Rows : 0;
        var ownCrown = design.Crown.Yarn == CrownYarn.Own;
        var room = (ownCrown ? straight : rounds) - besideBrim;
        if (besideBrim > straight)
        {
            return null;
        }

        var wanted = design.Braids.Where == BraidPlaces.None ? 0 : stripes - 1;
        for (var between = wanted; between >= (ownCrown ? wanted : 0); between--)
        {
            var left = room - (between * BraidRows.Rows);
            if (left < LeastStripeRounds * stripes)
            {
                continue;
            }

            var shared = Counts.ShareOut(left, stripes);
            if (besideBrim + shared.Take(between).Sum() + (between * BraidRows.Rows) <= straight)
            {
                return (shared, between);
            }
        }

        return null;
    }

    private static List<RowRun> InRuns(IReadOnlyList<RowRun> rounds)
    {
        var runs = new List<RowRun>();
        foreach (var round in rounds)
        {
            if (runs.Count > 0 && runs[^1] is var last && last.Stitches == round.Stitches && last.Pattern == round.Pattern)
            {
                runs[^1] = last with { Rows = last.Rows + round.Rows };
            }
            else
            {
                runs.Add(round);
            }
        }

        return runs;
    }
}
