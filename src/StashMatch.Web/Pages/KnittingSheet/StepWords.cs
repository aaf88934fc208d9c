using StashMatch.Knitting.Hats;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>What is knitted in a part, in plain sentences, read off the row plan.</summary>
public static class StepWords
{
    /// <summary>"round" in the round, else "row".</summary>
    public static string Row(RowPlan? plan) => plan?.Construction == Construction.BrimUpRound ? "round" : "row";

    /// <summary>The sentences of one part; a braid is told once, by its first strand.</summary>
    public static IReadOnlyList<string> Of(RowPlan? plan, HatPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        if (part.Kind == PartKind.Strand)
        {
            return Braid(plan, part);
        }

        if (plan is null)
        {
            return [part.Kind switch
            {
                PartKind.Yarn => "Knit all that the pattern gives this letter.",
                PartKind.Crown => "Knit the crown as the pattern says and draw it up.",
                _ => $"Knit {Words.The(part.Name)} as the pattern says.",
            }];
        }

        var index = plan.Sections.ToList().FindIndex(s => s.Kind == KindOf(part) && s.Number == part.Number);
        return index >= 0 ? [.. Of(plan, plan.Sections[index], index)] : part.Kind switch
        {
            PartKind.Seam when plan.Construction == Construction.SideToSide => ["Sew the first and the last edge together, then gather the top edge on a thread and draw it up."],
            PartKind.Seam => ["Sew the side edges together."],
            PartKind.PomPom => ["Make the pom-pom last and sew it to the top."],
            _ => [],
        };
    }

    private static SectionKind KindOf(HatPart part) => part.Kind switch
    {
        PartKind.Brim => SectionKind.Brim,
        PartKind.Crown => SectionKind.Crown,
        _ => SectionKind.Stripe,
    };

    private static IEnumerable<string> Of(RowPlan plan, PlanSection section, int index)
    {
        var row = Row(plan);
        var (first, last) = (section.Runs[0], section.Runs[^1]);
        var pickedUp = first.Pattern == StitchPattern.PickUp;
        if (section.Kind == SectionKind.Brim)
        {
            var tubular = section.Runs.FirstOrDefault(r => r.Pattern == StitchPattern.TubularEdge) is { } edge ? $"{edge.Rows} half-weight rounds of a tubular edge" : null;
            yield return pickedUp ? $"Pick up {first.Stitches} stitches along the lower edge." : $"Cast on {first.Stitches} stitches{(tubular is null ? "" : $" with {tubular}")}.";
            yield return $"{Counted(section.Rows, row == "row" && !pickedUp ? "row" : "round")} of rib{(plan.BrimFolded ? $", folded to {Shown.Depth(plan.BrimDepth)} at the end" : "")}.";
            if (pickedUp)
            {
                yield return tubular is null ? "Bind off." : $"{Capital(tubular)}, and bind off.";
            }

            yield break;
        }

        if (index == 0)
        {
            yield return $"Cast on {first.Stitches} stitches.";
        }

        var plain = section.Runs.TakeWhile(r => r.Pattern == StitchPattern.Stockinette).ToList();
        var crown = section.Runs.Skip(plain.Count).ToList();
        if (crown.Count == 0 && plain.Count > 1)
        {
            (plain, crown) = ([plain[0]], plain[1..]);
        }

        if (plain.Count > 0)
        {
            yield return $"{Counted(plain.Sum(r => r.Rows), row)} of {plain[0].Stitches} stitches.";
        }

        if (crown.Count > 0)
        {
            yield return $"{Counted(crown.Sum(r => r.Rows), row)} of the crown: decreases and a plain {row} in turn, down to {last.Stitches} stitches.";
        }

        if (index == plan.Sections.Count - 1 && plan.Construction != Construction.SideToSide)
        {
            yield return $"Draw the last {last.Stitches} stitches up.";
        }

        if (plan.Construction == Construction.SideToSide && plan.Sections.Skip(index + 1).All(s => s.Kind == SectionKind.Brim))
        {
            yield return "Bind off.";
        }
    }

    private static IReadOnlyList<string> Braid(RowPlan? plan, HatPart part)
    {
        if (plan is not null && !plan.Parts.Any(p => p.Kind == PartKind.Strand && p.Number == part.Number && p.Strand == 'b'))
        {
            return [$"{Counted(part.Rows, Row(plan))} of a sideways braid in one strand."];
        }

        if (part.Number > (plan?.Parts.Where(p => p.Kind == PartKind.Strand).Min(p => p.Number) ?? 1))
        {
            return ["Set-up, over and under, as in the first braid."];
        }

        const string Over = "each stitch in its own strand, the next strand always brought over the last.";
        const string Under = "each stitch in its own strand, the next strand always brought under the last, which turns the twist out again.";
        const string SetUp = "knit 1 of strand a, knit 1 of strand b, in turn.";
        return plan switch
        {
            null =>
            [
                $"Set-up: {SetUp}",
                $"Over: bumps on the right side. In the round, purl; in rows, from the wrong side, knit with both strands at the back: {Over}",
                $"Under: purl {Under}",
            ],
            _ when plan.IsKnitted(StitchPattern.BraidOver) =>
            [
                $"Set-up, on the right side: {SetUp}",
                $"Over, on the wrong side: hold both strands at the back, which is the right side, and knit {Over}",
                $"Under, on the right side: hold both strands in front and purl {Under}",
            ],
            _ => [$"Set-up: {SetUp}", $"Over: purl {Over}", $"Under: purl {Under}"],
        };
    }

    private static string Counted(int number, string one) => number == 1 ? $"1 {one}" : $"{number} {one}s";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
