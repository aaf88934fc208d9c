using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Pictures;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>What must be put by before something else takes it.</summary>
public sealed record SetAside(string Part, string Ball, string Code, string Name, Metres Length, decimal Grams, Grams Step);

/// <summary>A plan as it is knitted: its steps, its balls and how far they are; no sums of its own.</summary>
public sealed class SheetView
{
    private readonly IReadOnlyDictionary<string, LoggedLeftover> _bag;
    private readonly Dictionary<string, int> _numbers;

    public SheetView(SavedPlan plan, HatNeeds? known, IReadOnlyList<LoggedLeftover> bag)
    {
        ArgumentNullException.ThrowIfNull(plan);
        _bag = bag.ToDictionary(l => l.Id, StringComparer.Ordinal);
        Plan = plan;
        State = SheetState.Read(plan.Sheet);
        var question = PlanQuestion.Read(plan.Question);
        (Address, AllowancePercent) = (question?.Address, question?.AllowancePercent ?? Habits.Now.AllowancePercent);
        Hat = question?.Hat ?? (known is not null && plan.Parts.All(p => known.Parts.Any(k => k.Name == p.Part)) ? known : PartsAlone(plan));
        _numbers = Hat.Parts.Select((p, i) => (p.Name, i + 1)).ToDictionary(p => p.Name, p => p.Item2, StringComparer.Ordinal);
        Balls = [.. plan.Parts.Select(p => p.Leftover).OfType<string>().Distinct(StringComparer.Ordinal).Select(BallOf).OfType<BallInWork>().OrderBy(b => _numbers[b.Uses[0].Part])];
        Ahead = Forecast.Of(Hat.Usage, Balls, AllowancePercent);
        Steps = SheetSteps.Of(this);
        SetAside = [.. Balls.Select(AsideOf).OfType<SetAside>()];
    }

    public SavedPlan Plan { get; }

    public SheetState State { get; }

    public HatNeeds Hat { get; }

    /// <summary>The address that asks the plan's question again; null where it is not known.</summary>
    public string? Address { get; }

    public decimal AllowancePercent { get; }

    public IReadOnlyList<BallInWork> Balls { get; }

    public Ahead Ahead { get; }

    public IReadOnlyList<SheetStep> Steps { get; }

    public IReadOnlyList<SetAside> SetAside { get; }

    public string Title => $"{Hat.HatName}, size {Hat.Size}, {Hat.Stripes} {(Hat.Stripes == 1 ? "stripe" : "stripes")}";

    /// <summary>Tails to weave in at the end: two for each yarn joined.</summary>
    public int Ends => 2 * Steps.Sum(s => s.Yarns.Count(y => y.Joining is Joining.Join or Joining.Again));

    public bool AllDone => Steps.All(s => s.Done);

    /// <summary>How each part is drawn.</summary>
    public IReadOnlyDictionary<string, PartPaint> Paint => Hat.Parts.ToDictionary(
        p => p.Name,
        p => Plan.Parts.FirstOrDefault(x => x.Part == p.Name) is { } part
            ? new PartPaint(Logged(part.Leftover)?.Colour?.Hex, CodeOf(part.Leftover) is { Length: > 0 } code ? code : "–", $"{p.Name}, {part.Name}", false)
            : new PartPaint(null, null, $"{p.Name}, nothing goes in", true),
        StringComparer.Ordinal);

    /// <summary>What the finished plan says of its knitter: balls weighed at the end, for the parts that were ticked off. Null for a printed hat, whose lengths are not ours.</summary>
    public Calibration? Learned => Hat.Plan is null ? null : UsedBall.Learn(
    [
        .. Balls.Where(b => State.Left.TryGetValue(b.Start.Id, out var left) && left >= 0 && left <= b.Start.Weighing.Net.Value)
            .Select(b => new UsedBall(b.Start, Grams.From(State.Left[b.Start.Id]), [.. b.Uses.Where(u => State.Done.Contains(u.Part, StringComparer.Ordinal))]))
            .Where(b => b.Uses.Count > 0),
    ]);

    /// <summary>The sheet's address, in a form or at a step.</summary>
    public string PathOf(string? form, SheetStep? at = null) => $"/plans/{Uri.EscapeDataString(Plan.Id)}{(string.IsNullOrEmpty(form) ? "" : $"?form={form}")}{(at is null ? "" : $"#{at.Anchor}")}";

    public int NumberOf(string part) => _numbers[part];

    public LoggedLeftover? Logged(string? id) => id is null ? null : _bag.GetValueOrDefault(id);

    public string CodeOf(string? id) => Logged(id)?.Code ?? "";

    public string NameOf(string id) => Logged(id)?.Name ?? Plan.Parts.First(p => p.Leftover == id).Name;

    /// <summary>The state with every ball's weight as it is before its first part; kept from the first tick on.</summary>
    public SheetState Started() => State.Start.Count > 0 ? State : State with { Start = Balls.ToDictionary(b => b.Start.Id, b => KeptReading.Of(b.Start.Weighing), StringComparer.Ordinal) };

    /// <summary>A plan's sheet; null where there is no such plan.</summary>
    public static async Task<SheetView?> LoadAsync(string id, PlanStore plans, LeftoverStore leftovers, HatStore hats, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(plans);
        ArgumentNullException.ThrowIfNull(leftovers);
        ArgumentNullException.ThrowIfNull(hats);
        if (await plans.FindAsync(id, cancel) is not { } plan)
        {
            return null;
        }

        HatNeeds? known = null;
        (await hats.FindAsync(plan.Hat, cancel))?.TryNeeds(plan.Size, plan.Stripes, out known, out _);
        return new SheetView(plan, known, await leftovers.ListAsync(cancel));
    }

    // A plan whose hat is not known any more: its parts, as long as they were planned.
    private static HatNeeds PartsAlone(SavedPlan plan) => new(
        plan.Hat,
        plan.Size,
        null,
        plan.Stripes,
        WeightClass.Light,
        [.. plan.Parts.GroupBy(p => p.Part, StringComparer.Ordinal).Select(g =>
        {
            var (kind, number, strand) = PartNames.Read(g.Key) ?? (PartKind.Yarn, 0, null);
            return new HatPart(g.Key, kind, number, strand, 0, default, (double)g.Max(p => p.Length).Value, 0, g.Key);
        })],
        Usage.PrintedBare,
        StrandSource.Scraps,
        null);

    private BallInWork? BallOf(string id)
    {
        if (Logged(id)?.ToLeftover() is not { } leftover)
        {
            return null;
        }

        var uses = Plan.Parts.Where(p => p.Leftover == id && _numbers.ContainsKey(p.Part)).GroupBy(p => p.Part, StringComparer.Ordinal)
            .Select(g => PlannedUse.Of(Hat.Parts[_numbers[g.Key] - 1], Metres.FromMillimetres(g.Sum(p => p.Length.Millimetres)), Hat.Usage))
            .OrderBy(u => _numbers[u.Part]).ToList();
        var start = State.Start.GetValueOrDefault(id)?.ToWeighing() ?? leftover.Weighing;
        var again = State.Weighed.GetValueOrDefault(id);
        return uses.Count == 0 ? null : new BallInWork(leftover with { Weighing = start }, uses)
        {
            Now = again?.Reading.ToWeighing() is { } now && now.Net <= start.Net ? now : null,
            DoneWhenWeighed = again?.Done ?? [],
            Done = State.Done,
        };
    }

    // Crown, brim or seam that come after other parts of the same ball are wound off first, with the allowance as far as it reaches.
    private SetAside? AsideOf(BallInWork ball)
    {
        var use = ball.Uses[^1];
        if (ball.Uses.Count < 2 || State.Done.Contains(use.Part, StringComparer.Ordinal) || PartNames.Read(use.Part) is not { Kind: PartKind.Crown or PartKind.Brim })
        {
            return null;
        }

        var others = Metres.FromMillimetres(ball.Uses.SkipLast(1).Sum(u => u.Planned.Millimetres));
        var most = ball.Start.Held > others ? ball.Start.Held - others : default;
        var wanted = use.Planned.WithAllowance(AllowancePercent);
        var length = wanted > most && most > use.Planned ? most : wanted > most ? use.Planned : wanted;
        return new SetAside(use.Part, ball.Start.Id, CodeOf(ball.Start.Id), NameOf(ball.Start.Id), length, ball.Start.Ratio.GramsOf(length), ball.Start.Weighing.ScaleStep);
    }
}
