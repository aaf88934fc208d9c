using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>The side-to-side hat: a flat panel whose rows run round the head, seamed and gathered, the brim picked up along its edge.</summary>
internal static class SideToSide
{
    public static bool TryCompile(
        HatDesign design, HatSize size, int stripes, [NotNullWhen(true)] out RowPlan? plan, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        (plan, why) = (null, null);
        var gauge = design.Gauge;
        var brim = design.Brim;
        var braided = design.Braids.Where != BraidPlaces.None;
        var braids = braided ? design.Braids.Worked(1, stripes - 1) : 0;
        var brimDepth = brim?.Depth ?? default;
        var wantsEven = braids > 0 && BraidRows.WantsEven(design.Braids);
        var stitches = size.Stitches ?? Counts.Nearest((size.Height.Value - brimDepth.Value) * gauge.StitchesPerCm, wantsEven ? 2 : 1);
        var rows = Counts.Nearest(size.Circumference.Value * gauge.RowsPerCm, 2);
        if (stitches < 2)
        {
            why = new CannotBeKnitted("brim.depthCm", "The brim is too deep: fewer than two stitches are left for the panel.");
            return false;
        }

        if (wantsEven && stitches % 2 != 0)
        {
            why = new CannotBeKnitted("stitches", $"A braid of two colours needs an even number of stitches, not {stitches}.");
            return false;
        }

        // With braids (three rows each) the first stripe is even and each later one odd, so that every set-up row is a right-side row.
        var odd = Enumerable.Range(0, stripes).Select(i => i > 0 && braided && !design.Braids.Without.Contains(i)).ToArray();
        var stripeRows = design.Stripes?.Own is { } own
            ? StripeShares.Own(own, gauge.RowsPerCm, odd)
            : StripeShares.Share(rows - (braids * BraidRows.Rows), odd, design.Stripes?.Proportions, stripes);
        if (stripeRows is null)
        {
            var most = braided ? (rows + 4) / 6 : rows / 2;
            why = new CannotBeKnitted(
                "stripes",
                $"{rows} rows are too few for {stripes} stripes. This size can have {most} at most.",
                most);
            return false;
        }

        rows = stripeRows.Sum() + (braids * BraidRows.Rows);
        var loop = LoopLength.MetresPerStitch(gauge);
        var edge = (double)(stitches / gauge.StitchesPerCm) / 100;
        var circumference = Centimetres.From(rows / gauge.RowsPerCm);
        var sections = new List<PlanSection>();
        var parts = new List<HatPart>();
        for (var i = 1; i <= stripes; i++)
        {
            var bare = (stripeRows[i - 1] * stitches * loop)
                + (i == 1 ? Extras.CastOn * edge : 0)
                + (i == stripes ? Extras.Edge(EdgeKind.Ordinary) * edge : 0);
            sections.Add(new PlanSection(SectionKind.Stripe, i, [new RowRun(stripeRows[i - 1], stitches, StitchPattern.Stockinette)]));
            parts.Add(new HatPart(
                PartNames.Stripe(i), PartKind.Stripe, i, null, stripeRows[i - 1], gauge.DepthOf(stripeRows[i - 1]), bare, Extras.Ends));
            if (i < stripes && braided && !design.Braids.Without.Contains(i))
            {
                BraidRows.Add(design.Braids, i, stitches, loop, gauge, sections, parts);
            }
        }

        var seam = (Extras.Seam * edge) + (Extras.Gather * (double)circumference.Value / 100);
        parts.Add(new HatPart(PartNames.Seam, PartKind.Seam, 0, null, 0, default, seam, Extras.Ends));
        var (brimStitches, brimRounds) = (0, 0);
        if (brim is not null)
        {
            var along = rows * gauge.StitchesPerCm / gauge.RowsPerCm;
            (brimStitches, brimRounds) = (BrimRounds.Stitches(brim, along), BrimRounds.Rounds(brim, gauge));
            if (brimStitches < brim.Rib || brimRounds < 1)
            {
                why = BrimRounds.TooSmall;
                return false;
            }

            sections.Add(BrimRounds.Section(brim, brimStitches, brimRounds, pickedUp: true));
            parts.Add(BrimRounds.Part(brim, brimStitches, brimRounds, gauge, loop, pickedUp: true));
        }

        plan = new RowPlan
        {
            Construction = design.Construction,
            Size = size.Size,
            Stripes = stripes,
            Braids = braids,
            BodyStitches = stitches,
            BodyRows = rows,
            BrimStitches = brimStitches,
            BrimRounds = brimRounds,
            BrimDepth = brimDepth,
            BrimFolded = brim?.Folded ?? false,
            CrownRounds = 0,
            Gauge = gauge,
            Circumference = circumference,
            BodyHeight = Centimetres.From(stitches / gauge.StitchesPerCm),
            Sections = sections,
            Parts = parts,
        };
        return true;
    }
}
