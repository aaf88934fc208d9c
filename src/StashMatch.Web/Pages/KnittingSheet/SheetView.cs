using System.Globalization;
using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Pictures;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>A ball that is parted in two first, so that a later part has its yarn: what is wound off is the smaller share.</summary>
/// <param name="Part">The later part.</param>
/// <param name="Others">The parts before it.</param>
/// <param name="Ball">The leftover's id.</param>
/// <param name="Code">Its two letters.</param>
/// <param name="Name">Its name.</param>
/// <param name="KeepsRest">Whether the other parts' yarn is wound off, and the rest kept for the later part.</param>
/// <param name="WoundOff">What is wound off.</param>
/// <param name="WoundOffGrams">The same on the scale, unrounded.</param>
/// <param name="Step">The scale's step.</param>
/// <param name="InAll">Whether its ball is weighed again: then it is so much in all.</param>
public sealed record SetAside(string Part, IReadOnlyList<string> Others, string Ball, string Code, string Name, bool KeepsRest, Metres WoundOff, decimal WoundOffGrams, Grams Step, bool InAll);

/// <summary>A plan as it is knitted: its steps, its balls and how far they are; no sums of its own.</summary>
public sealed class SheetView
{
    private readonly IReadOnlyDictionary<string, LoggedLeftover> _bag;
    private readonly Dictionary<string, int> _numbers;

    private SheetView(SavedPlan plan, HatNeeds? known, IReadOnlyDictionary<string, LoggedLeftover> bag)
    {
        _bag = bag;
        Plan = plan;
        State = SheetState.Read(plan.Sheet);
        var question = PlannedQuestion.Read(plan.Question);
        (Address, AllowancePercent) = (
            question is null ? null : SaidInAddress.Of("/can-i-make", SaidInAddress.Write(question.Asked.With(MatchQuestion.Plan, plan.Id), MatchQuestion.Fields)),
            question?.AllowancePercent ?? Habits.Now.AllowancePercent);
        Hat = question?.Hat ?? (known is not null && plan.Parts.All(p => known.Parts.Any(k => k.Name == p.Part)) ? known : PartsAlone(plan));
        _numbers = Hat.Parts.Select((p, i) => (p.Name, i + 1)).ToDictionary(p => p.Name, p => p.Item2, StringComparer.Ordinal);
        Balls = [.. plan.Parts.Select(p => p.Leftover).OfType<string>().Distinct(StringComparer.Ordinal).Select(BallOf).OfType<BallInWork>().OrderBy(b => _numbers[b.Uses[0].Part])];
        Lacking = LackingOf(question);
        Ahead = Forecast.Of(Hat.Usage, Balls, AllowancePercent, [.. Lacking.Where(l => !State.Done.Contains(l.Part, StringComparer.Ordinal))]);
        SetAside = [.. Ahead.Balls.Select(AsideOf).OfType<SetAside>()];
        Steps = SheetSteps.Of(this);
    }

    public SavedPlan Plan { get; }

    public SheetState State { get; }

    public HatNeeds Hat { get; }

    /// <summary>The address that asks the plan's question again; null where it is not known.</summary>
    public string? Address { get; }

    public decimal AllowancePercent { get; }

    public IReadOnlyList<BallInWork> Balls { get; }

    /// <summary>What no leftover gave of a part's need when it was planned.</summary>
    public IReadOnlyList<PartLacking> Lacking { get; }

    public Ahead Ahead { get; }

    public IReadOnlyList<SheetStep> Steps { get; }

    public IReadOnlyList<SetAside> SetAside { get; }

    public string Title => $"{Hat.HatName}, size {Hat.Size}, {Hat.Stripes} {(Hat.Stripes == 1 ? "stripe" : "stripes")}";

    /// <summary>What the title says that the plan's own name does not.</summary>
    public string Subtitle => Plan.Name == Title || Plan.Name.StartsWith($"{Title} (", StringComparison.Ordinal) ? "" : Title;

    /// <summary>Tails to weave in at the end: two for each yarn joined.</summary>
    public int Ends => 2 * Steps.Sum(s => s.Yarns.Count(y => y.Joining is Joining.Join or Joining.Again));

    public bool AllDone => Steps.All(s => s.Done);

    /// <summary>How each part is drawn.</summary>
    public IReadOnlyDictionary<string, PartPaint> Paint => Hat.Parts.ToDictionary(
        p => p.Name,
        p => Plan.Parts.FirstOrDefault(x => x.Part == p.Name) is { } part
            ? new PartPaint(Logged(part.Leftover)?.Colour?.Hex, CodeOf(part.Leftover) is { Length: > 0 } code ? code : "–", $"{Words.Part(p.Name)}, {part.Name}", LacksOf(p.Name) > 0, LacksOf(p.Name))
            : new PartPaint(null, null, $"{Words.Part(p.Name)}, {StepWords.NoYarn}", true),
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

    /// <summary>What must be left on a ball before a part, what is put by for a later one wound off; null for the part it is put by for.</summary>
    public Grams? StopAt(BallAhead ball, string part)
    {
        ArgumentNullException.ThrowIfNull(ball);
        return ball.StopAt(part, SetAside.FirstOrDefault(a => a.Ball == ball.Ball.Start.Id)?.Part);
    }

    /// <summary>Whether yarn is put by for a part: a brim or crown that comes last of several from one ball.</summary>
    public static bool IsPutBy(BallInWork ball, string part)
    {
        ArgumentNullException.ThrowIfNull(ball);
        return ball.Uses.Count > 1 && ball.Uses[^1].Part == part && PartNames.Read(part) is { Kind: PartKind.Crown or PartKind.Brim };
    }

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

        var hat = await hats.FindAsync(plan.Hat, cancel);
        return Of(plan, hat, (await leftovers.ListAsync(cancel)).ToDictionary(l => l.Id, StringComparer.Ordinal));
    }

    /// <summary>A plan's sheet, with its hat as it is now where there is one, and the bag by id.</summary>
    public static SheetView Of(SavedPlan plan, Hat? hat, IReadOnlyDictionary<string, LoggedLeftover> bag)
    {
        ArgumentNullException.ThrowIfNull(plan);
        HatNeeds? known = null;
        hat?.TryNeeds(plan.Size, plan.Stripes, out known, out _);
        return new SheetView(plan, known, bag);
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

    private IReadOnlyList<PartLacking> LackingOf(PlannedQuestion? question)
    {
        var asked = question?.Asked ?? Said.Nothing;
        var arrangement = Names.All<Arrangement>().GetValueOrDefault(Plan.Arrangement, Arrangement.AsItFalls);
        var turns = new Reading(asked, new FieldErrors()).Whole(MatchQuestion.InTurn) ?? Math.Clamp(Hat.Stripes - 1, 2, 3);
        var lacking = PartLacking.Of(Hat, arrangement, turns, new Reading(asked, new FieldErrors()).EachText(Pairings.Apart), part => GivenTo(part, asked));

        // A plan without its question was not planned with today's needs: only a part with nothing in it surely lacks yarn.
        return question is null ? [.. lacking.Where(l => Plan.Parts.All(p => p.Part != l.Part))] : lacking;
    }

    // Two leftovers held together run side by side, so one of them tells how far they reach; one held with itself reaches half as far.
    private Metres GivenTo(string part, Said asked)
    {
        var here = Plan.Parts.Where(p => p.Part == part).ToList();
        long Of(string? ball) => here.Where(p => p.Leftover == ball).Sum(p => p.Length.Millimetres);
        var twice = Together.NamedHeld(asked).Sum(held => held.Value is [var first, var second] ? first == second ? Of(first) / 2 : Math.Min(Of(first), Of(second)) : 0);
        return Metres.FromMillimetres(here.Sum(p => p.Length.Millimetres) - twice);
    }

    // The share of a part that lacks yarn, 0 to 1.
    private double LacksOf(string part) => Lacking.FirstOrDefault(l => l.Part == part) is { } lacks
        ? lacks.Planned.Millimetres / (double)(lacks.Planned.Millimetres + Plan.Parts.Where(p => p.Part == part).Sum(p => p.Length.Millimetres))
        : 0;

    // Crown or brim that come after other parts of the same ball keep their yarn, with the reserve as far as it reaches; the smaller share is wound off.
    private SetAside? AsideOf(BallAhead ball)
    {
        if (ball.Parts.Count < 2 || !IsPutBy(ball.Ball, ball.Parts[^1].Part))
        {
            return null;
        }

        var last = ball.Parts[^1];
        var (start, others) = (ball.Ball.Start, ball.Need - last.Forecast);
        var most = ball.Left > others ? ball.Left - others : default;
        var wanted = last.Forecast.WithAllowance(AllowancePercent);
        var length = wanted > most && most > last.Forecast ? most : wanted > most ? last.Forecast : wanted;
        length = length > ball.Left ? ball.Left : length;
        var rest = others.WithAllowance(AllowancePercent);
        rest = rest > ball.Left - length ? ball.Left - length : rest;
        var keepsRest = !ball.Measured && rest >= others && rest < length;
        var wound = keepsRest ? rest : length;
        return new SetAside(
            last.Part, [.. ball.Parts.SkipLast(1).Select(p => p.Part)], start.Id, CodeOf(start.Id), NameOf(start.Id), keepsRest, wound, start.Ratio.GramsOf(wound), (ball.Ball.Now ?? start.Weighing).ScaleStep, ball.Measured);
    }
}
