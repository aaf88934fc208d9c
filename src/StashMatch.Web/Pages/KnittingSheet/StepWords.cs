using StashMatch.Knitting.Hats;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>What is knitted in a part, in plain sentences, read off the row plan.</summary>
public static class StepWords
{
    public const string InOrder = "The parts in knitting order";
    public const string Done = "finished";
    public const string NoYarn = "no yarn yet";
    public const string Ends = "ends";
    public const string TickOff = "tick it off";
    public const string OpenAgain = "open it again";

    public static string IsFinished(string part) => $"{part} is finished";

    public static string WeaveIn(int ends) => $"Weave in {ends} ends. Each is a tail of 15 cm / 6 in.";

    public static string WeaveInSpoken(int ends) => $"Weave in {ends} ends. Each is a tail of 15 centimetres or 6 inches.";

    /// <summary>How large a part is: "38 rows, 5.0 cm / 2 in deep".</summary>
    public static string Size(int rows, string row, string? depth) => $"{Terms.Counted(rows, row)}{(depth is null ? "" : $", {depth} deep")}";

    /// <summary>"round" in the round, else "row".</summary>
    public static string Row(RowPlan? plan) => plan?.Construction == Construction.BrimUpRound ? "round" : "row";

    /// <summary>The same of a part: a brim is knitted in the round unless the hat is flat from the brim up.</summary>
    public static string Row(RowPlan? plan, string part) => part == PartNames.Brim && plan?.Construction != Construction.BrimUpFlat ? "round" : Row(plan);

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
                PartKind.Yarn => "Knit all the parts the pattern gives this letter.",
                PartKind.Crown => "Knit the crown as the pattern says and draw it up.",
                _ => $"Knit {Words.The(part.Name)} as the pattern says.",
            }];
        }

        var index = plan.Sections.ToList().FindIndex(s => s.Kind == KindOf(part) && s.Number == part.Number);
        return index >= 0 ? [.. Of(plan, plan.Sections[index], index)] : part.Kind switch
        {
            PartKind.Seam when plan.Construction == Construction.SideToSide =>
                ["Sew the first and last edges together. Gather the top edge on a thread and draw it up."],
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
            var tubular = section.Runs.FirstOrDefault(r => r.Pattern == StitchPattern.TubularEdge) is { } edge
                ? $"the tubular way, with {edge.Rows} tubular rounds" : null;
            yield return pickedUp ? $"Pick up {first.Stitches} stitches along the lower edge."
                : $"Cast on {first.Stitches} stitches{(tubular is null ? "" : $" {tubular}")}.";
            var fold = plan.BrimFolded ? $" Fold it to {Shown.Depth(plan.BrimDepth)} at the end." : "";
            yield return $"Knit {Counted(section.Rows, row == "row" && !pickedUp ? "row" : "round")} of rib.{fold}";
            if (pickedUp)
            {
                yield return tubular is null ? "Bind off." : $"Bind off {tubular}.";
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
            yield return $"Knit {Counted(plain.Sum(r => r.Rows), row)} in stockinette ({plain[0].Stitches} stitches).";
        }

        if (crown.Count > 0)
        {
            yield return $"Knit {Counted(crown.Sum(r => r.Rows), row)} of the crown. Decrease in every other {row}, down to {last.Stitches} stitches.";
        }

        if (index == plan.Sections.Count - 1 && plan.Construction != Construction.SideToSide)
        {
            yield return $"Draw up the last {last.Stitches} stitches on the yarn.";
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
            return [$"{Counted(part.Rows, Row(plan))} of a sideways braid in one colour."];
        }

        if (part.Number > (plan?.Parts.Where(p => p.Kind == PartKind.Strand).Min(p => p.Number) ?? 1))
        {
            return ["Set-up, over and under, as in the first braid."];
        }

        const string SetUp = "knit 1 in the first colour, 1 in the second, in turn.";
        const string Over = "each stitch in its own colour. Bring the next yarn over the last each time.";
        const string Under = "each stitch in its own colour. Bring the next yarn under the last, and the twist comes out again.";
        return plan switch
        {
            null =>
            [
                $"Set-up: {SetUp}",
                $"Over, in the round: purl {Over}",
                "Over, knitted flat: knit from the wrong side, both yarns at the back.",
                $"Under: purl {Under}",
            ],
            _ when plan.IsKnitted(StitchPattern.BraidOver) =>
            [
                $"Set-up, on the right side: {SetUp}",
                $"Over, on the wrong side: hold both yarns at the back. Knit {Over}",
                $"Under, on the right side: hold both yarns in front. Purl {Under}",
            ],
            _ => [$"Set-up: {SetUp}", $"Over: purl {Over}", $"Under: purl {Under}"],
        };
    }

    private static string Counted(int number, string one) => Terms.Counted(number, one);
}
