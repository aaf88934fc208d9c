using StashMatch.Knitting.Hats;
using StashMatch.Store;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>A plan step by step, in knitting order, with where each yarn is joined and cut.</summary>
internal static class SheetSteps
{
    // A yarn cut for a part pays its two tails, 0.3 m; one carried along pays none.
    private const double PaysEnds = 0.25;

    public static IReadOnlyList<SheetStep> Of(SheetView view)
    {
        var steps = new List<(string Key, List<HatPart> Parts)>();
        foreach (var part in view.Hat.Parts)
        {
            var key = part.Kind == PartKind.Strand ? PartNames.Braid(part.Number) : part.Name;
            if (steps.Count > 0 && steps[^1].Key == key)
            {
                steps[^1].Parts.Add(part);
            }
            else
            {
                steps.Add((key, [part]));
            }
        }

        var uses = steps.SelectMany((s, i) => s.Parts.SelectMany(p => view.Plan.Parts.Where(x => x.Part == p.Name).DistinctBy(x => x.Leftover ?? x.Name, StringComparer.Ordinal).Select(x => (Step: i, Part: p, Yarn: x)))).ToList();
        var joinings = uses.Select((u, n) => JoiningOf(view, u, uses.Take(n).LastOrDefault(b => Same(b.Yarn, u.Yarn)))).ToList();
        return [.. steps.Select((s, i) => new SheetStep(
            s.Key,
            [.. s.Parts.Select(p => p.Name)],
            string.Join(", ", s.Parts.Select(p => view.NumberOf(p.Name))),
            s.Parts[0].Rows,
            s.Parts[0].Depth,
            StepWords.Of(view.Hat.Plan, s.Parts[0]),
            [.. uses.Select((u, n) => (u, n)).Where(x => x.u.Step == i).Select(x => YarnOf(view, x.u.Part, x.u.Yarn, joinings[x.n], IsCut(uses, joinings, x.n)))],
            [.. view.Ahead.Lacking.Where(l => view.Plan.FinishedAt is null && s.Parts.Exists(p => p.Name == l.Part))],
            s.Parts.TrueForAll(p => view.State.Done.Contains(p.Name, StringComparer.Ordinal))))];
    }

    private static bool Same(SavedPart a, SavedPart b) => (a.Leftover ?? a.Name) == (b.Leftover ?? b.Name);

    private static Joining JoiningOf(SheetView view, (int Step, HatPart Part, SavedPart Yarn) use, (int Step, HatPart Part, SavedPart? Yarn) before)
    {
        if (before.Yarn is null)
        {
            return Joining.Join;
        }

        if (before.Step >= use.Step - 1)
        {
            return Joining.GoOn;
        }

        var pays = view.Balls.FirstOrDefault(b => b.Start.Id == use.Yarn.Leftover)?.Uses.FirstOrDefault(u => u.Part == use.Part.Name)?.Ends > PaysEnds;
        return pays || view.Hat.Plan is null ? Joining.Again : Joining.Carried;
    }

    // A yarn is cut where it does not come again, or is joined anew when it does.
    private static bool IsCut(List<(int Step, HatPart Part, SavedPart Yarn)> uses, List<Joining> joinings, int n)
    {
        var next = uses.FindIndex(n + 1, u => Same(u.Yarn, uses[n].Yarn));
        return next < 0 || joinings[next] == Joining.Again;
    }

    private static SheetYarn YarnOf(SheetView view, HatPart part, SavedPart yarn, Joining joining, bool cut)
    {
        var logged = view.Logged(yarn.Leftover);
        var ahead = view.Ahead.Balls.FirstOrDefault(b => b.Ball.Start.Id == yarn.Leftover);
        var length = Knitting.Quantities.Metres.FromMillimetres(view.Plan.Parts.Where(p => p.Part == part.Name && Same(p, yarn)).Sum(p => p.Length.Millimetres));
        return new SheetYarn(
            yarn.Leftover,
            logged?.Code ?? "",
            logged?.Name ?? yarn.Name,
            logged?.Colour?.Hex,
            part.Strand,
            length,
            logged?.Ratio?.GramsOf(length),
            ahead?.Ball.AsWeighed.Weighing.ScaleStep ?? default,
            joining,
            cut,
            view.Plan.FinishedAt is null && ahead?.Parts.Any(p => p.Part == part.Name) == true ? view.StopAt(ahead, part.Name) : null,
            ahead is not null && SheetView.IsPutBy(ahead.Ball, part.Name),
            ahead?.Ball.AsWeighed.Weighing.Tare ?? default);
    }
}
