using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>The brim-up hat, in the round or flat: rib first, stripes round the head, the crown drawn in by decrease lines.</summary>
internal static class BrimUp
{
    private const int FlatSeamStitches = 2;

    public static bool TryCompile(
        HatDesign design, HatSize size, int stripes, [NotNullWhen(true)] out RowPlan? plan, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        plan = null;
        var gauge = design.Gauge;
        var brim = design.Brim;
        var flat = design.Construction == Construction.BrimUpFlat;
        var seamStitches = flat ? FlatSeamStitches : 0;
        var step = Counts.LeastCommonMultiple(brim?.Rib ?? 2, 2);
        var stitches = size.Stitches ?? (Counts.Nearest(size.Circumference.Value * gauge.StitchesPerCm, step) + seamStitches);
        var lines = design.Crown.DecreaseLines;
        why = stitches - seamStitches < 2 * lines
                ? new CannotBeKnitted("crown.decreaseLines", $"{stitches} stitches are too few for {lines} lines of decreases.")
            : BraidRows.WantsEven(design.Braids) && stitches % 2 != 0
                ? new CannotBeKnitted("stitches", $"A braid of two colours needs an even number of stitches, not {stitches}.")
            : null;
        if (why is not null)
        {
            return false;
        }

        var crown = CrownShaping.Rounds(stitches, lines, seamStitches);
        var aboveBrim = (size.Height.Value - (brim?.Depth.Value ?? 0)) * gauge.RowsPerCm;
        var straight = flat ? Counts.Nearest(aboveBrim - crown.Count, 2) : Counts.Nearest(aboveBrim) - crown.Count;
        if (straight < 0 && design.Stripes?.Own is null)
        {
            why = new CannotBeKnitted("heightCm", $"The crown takes {crown.Count} rounds, but only {straight + crown.Count} are above the brim.");
            return false;
        }

        if (Share(design, stripes, crown.Count, ref straight) is not var (stripeRounds, between))
        {
            var least = straight;
            var most = Enumerable.Range(1, Math.Max(0, stripes - 1)).LastOrDefault(n => Share(design with { Stripes = null }, n, crown.Count, ref least) is not null);
            why = new CannotBeKnitted(
                "stripes",
                $"The rounds above the brim are too few for {stripes} stripes. This size can have {most} at most.",
                most);
            return false;
        }

        var loop = LoopLength.MetresPerStitch(gauge);
        var (sections, parts) = (new List<PlanSection>(), new List<HatPart>());
        var (brimStitches, brimRounds) = (0, 0);
        if (brim is not null)
        {
            (brimStitches, brimRounds) = (BrimRounds.Stitches(brim, stitches - seamStitches) + seamStitches, BrimRounds.Rounds(brim, gauge, flat));
            if (brimStitches < brim.Rib || brimRounds < 1)
            {
                why = BrimRounds.TooSmall;
                return false;
            }

            sections.Add(BrimRounds.Section(brim, brimStitches, brimRounds, pickedUp: false));
            parts.Add(BrimRounds.Part(brim, brimStitches, brimRounds, gauge, loop, pickedUp: false));
        }

        var above = Enumerable.Repeat(new RowRun(1, stitches, StitchPattern.Stockinette), straight).Concat(crown).ToList();
        var (at, braid) = (0, 0);
        void AddBraid()
        {
            if (design.Braids.Without.Contains(++braid))
            {
                return;
            }

            BraidRows.Add(design.Braids, braid, stitches, loop, gauge, sections, parts);
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
            sections.Add(new PlanSection(SectionKind.Stripe, i, CrownShaping.InRuns(worked)));
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

        if (design.Crown.Yarn == CrownYarn.Own)
        {
            sections.Add(new PlanSection(SectionKind.Crown, 0, CrownShaping.InRuns(crown)));
            parts.Add(new HatPart(
                PartNames.Crown, PartKind.Crown, 0, null, crown.Count, gauge.DepthOf(crown.Count), crown.Sum(r => r.Stitches) * loop, Extras.Ends));
        }

        if (flat)
        {
            var height = Centimetres.From(gauge.DepthOf(straight + crown.Count).Value + BrimRounds.Depth(brimRounds, gauge).Value);
            parts.Add(new HatPart(PartNames.Seam, PartKind.Seam, 0, null, 0, height, Extras.Seam * (double)height.Value / 100, Extras.Ends));
        }

        plan = new RowPlan
        {
            Construction = design.Construction,
            Size = size.Size,
            Stripes = stripes,
            Braids = design.Braids.Worked(1, braid),
            BodyStitches = stitches,
            BodyRows = straight + crown.Count,
            BrimStitches = brimStitches,
            BrimRounds = brimRounds,
            BrimDepth = brim?.Depth ?? default,
            BrimFolded = brim?.Folded ?? false,
            CrownRounds = crown.Count,
            Gauge = gauge,
            Circumference = Centimetres.From((stitches - seamStitches) / gauge.StitchesPerCm),
            BodyHeight = gauge.DepthOf(straight + crown.Count),
            Sections = sections,
            Parts = parts,
        };
        return true;
    }

    // A braid is worked only where its three rounds lie below the first decrease; the most braids that do are worked. Stripes with
    // depths of their own set how many straight rounds there are.
    private static (int[] Rounds, int Between)? Share(HatDesign design, int stripes, int crownRounds, ref int straight)
    {
        var besideBrim = design.Braids.Where == BraidPlaces.BesideBrimToo;
        var ownCrown = design.Crown.Yarn == CrownYarn.Own;
        var wanted = design.Braids.Where == BraidPlaces.None ? 0 : stripes - 1;
        for (var between = wanted; between >= (ownCrown ? wanted : 0); between--)
        {
            var first = besideBrim ? 1 : 0;
            var worked = design.Braids.Worked(1, between + first);
            var braidRows = worked * BraidRows.Rows;
            bool After(int i) => (i == 0 ? besideBrim : i <= between) && !design.Braids.Without.Contains(i + first);
            var odd = design.Construction == Construction.BrimUpFlat ? Enumerable.Range(0, stripes).Select(After).ToArray() : null;
            int[]? shared;
            if (design.Stripes?.Own is { } own)
            {
                shared = StripeShares.Own(own, design.Gauge.RowsPerCm, odd, lastIsFree: !ownCrown);
                straight = shared.Sum() + braidRows - (ownCrown ? 0 : crownRounds);
                if (straight % 2 != 0 && odd is not null)
                {
                    shared[^1]++;
                    straight++;
                }
            }
            else
            {
                shared = StripeShares.Share(straight + (ownCrown ? 0 : crownRounds) - braidRows, odd, design.Stripes?.Proportions, stripes);
            }

            if (shared is not null && straight >= 0 && shared.Take(between).Sum() + braidRows <= straight)
            {
                return (shared, between);
            }
        }

        return null;
    }
}
