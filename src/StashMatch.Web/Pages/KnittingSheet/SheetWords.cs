using System.Globalization;
using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>What the knitting sheet says: round its steps, half-way, and at the end.</summary>
public static class SheetWords
{
    // Round the steps.
    public const string AllHats = "Knitting now";
    public const string ChangeThisHat = "Change this hat";
    public const string ShowAs = "Show the sheet";
    public const string SaveToShare = "Save a copy to share";
    public const string TheSheet = "The knitting sheet";
    public const string Print = "Print the sheet";
    public const string TheHat = "The hat";
    public const string FromHere = "From here:";
    public const string WillItLast = "Will my yarn last?";
    public const string Gone = "This hat is no longer here.";
    public const string WindOffFirst = "Wind off first";

    /// <summary>The forms a sheet comes in.</summary>
    public static IReadOnlyList<(string Key, string Name)> Forms { get; } =
        [("", "with boxes"), ("large", "in large print"), ("words", "in words, for a screen reader")];

    // Half-way.
    public const string AllDone = "Every part is done. Weigh what is left below, and put the rest back in the bag.";
    public const string WaysToMakeItWork = "Ways to make it work";
    public const string Unknown = "unknown";
    public const string NotPrinted = "The printed table does not say what one round takes.";
    public const string WeighAgain = "Weigh a ball again";
    public const string Ball = "ball";
    public const string ScaleShows = "the scale shows, g";
    public const string WhenToWeigh = "Weigh when a part is finished and ticked off. Then you see whether you use more than planned.";
    public const string WeighAll = "Weigh the whole ball, with the yarn you wound off.";

    // At the end.
    public const string FinishedHeading = "Finished";
    public const string FinishHeading = "Finished? Put the rest back in the bag";
    public const string WeighWhatIsLeft = "Weigh what is left of each ball, without core or bowl. Leave a field empty to use the estimate.";
    public const string NotAllDone = "Some parts are not ticked off. They count as not knitted.";
    public const string FinishMeans = "What you used comes off each leftover, and the rest is free again. You can undo it under";
    public const string MyLeftovers = "My leftovers";
    public const string Finish = "Finish and put the rest back";
    public const string UseItNow = "Use that for your next hats?";
    public const string UseIt = "Use it for my next hats";
    public const string InUse = "Your next hats count on it.";

    public static string Finished(string day) => $"Finished on {day}. What you used is off your leftovers, and the rest is free again.";

    public static string GramsLeft(string ball) => $"{ball}, grams left";

    /// <summary>What a finished hat is remembered by.</summary>
    public static string LearnedFrom(string plan, int balls) => $"the hat {plan}, {Terms.Counted(balls, "ball")} weighed";

    public static string SharedTitle(string plan) => $"{plan}, a knitting sheet";

    public static string SharedFoot(decimal reserve) =>
        $"Made with StashMatch. Needs are rounded up. Each ball keeps {reserve.ToString("0.###", CultureInfo.InvariantCulture)} % in reserve.";

    public static string ForAHead(string head) => $"for a head of {head}";

    public static string Gauge(RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (stitches, rows) = (plan.Gauge.StitchesPer10Cm, plan.Gauge.RowsPer10Cm);
        return string.Create(CultureInfo.InvariantCulture, $"{stitches:0.#} stitches and {rows:0.#} {StepWords.Row(plan)}s to 10 cm / 4 in.");
    }

    /// <summary>What is wound off before the first part: the smaller share, so that little is wound.</summary>
    public static string WindOff(SetAside aside, string ball)
    {
        ArgumentNullException.ThrowIfNull(aside);
        var measure = $"{Shown.BothUp(aside.WoundOff)} ({Shown.GramsUp(aside.WoundOffGrams, aside.Step)})";
        return Wound(aside, measure, ball);
    }

    /// <summary>The same with no signs.</summary>
    public static string Spoken(SetAside aside)
    {
        ArgumentNullException.ThrowIfNull(aside);
        return Wound(aside, $"{Length(aside.WoundOff)}, {Weight(aside.WoundOffGrams, aside.Step)},", $"{aside.Name}, tag {aside.Code},");
    }

    private static string Wound(SetAside aside, string measure, string ball) => aside.KeepsRest
        ? $"Wind off {measure} of {ball} for {Terms.And([.. aside.Others.Select(Words.The)])}. Keep the rest for {Words.The(aside.Part)}."
        : $"Wind off {measure} of {ball} for {Words.The(aside.Part)}{(aside.InAll ? ", in all" : "")}.";

    /// <summary>A weight a ball must still have, up; with the core it is on.</summary>
    public static string StopAt(Grams stop, Grams core, Grams step) => core > default(Grams)
        ? $"{Shown.GramsUp(stop.Value, step)} ({Shown.GramsUp((stop + core).Value, step)} with its core or bowl)"
        : Shown.GramsUp(stop.Value, step);

    /// <summary>What a ball must weigh before a step; empty where nothing is to be said.</summary>
    public static string Before(SheetYarn yarn, bool done)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        return done ? ""
            : yarn.StopAt is { } stop
                ? $" Start only if the ball weighs {StopAt(stop, yarn.Core, yarn.Step)} or more{(yarn.PutBy ? ", with the yarn kept for it" : "")}."
            : yarn.PutBy ? " Use the yarn kept for it." : "";
    }

    /// <summary>The same on the ball's own line half-way.</summary>
    public static string StartOnly(string part, string weight, string takes) =>
        $"Start {Words.The(part)} only if the ball weighs {weight} or more. It takes {takes}.";

    public static string FromKept(string part, string takes) => $"{Terms.Capital(Words.The(part))} takes {takes}, from the yarn kept for it.";

    /// <summary>What a part lacks.</summary>
    public static string Lacks(PartLacking lacks)
    {
        ArgumentNullException.ThrowIfNull(lacks);
        return $"{Terms.Capital(LacksOf(lacks))}.";
    }

    /// <summary>How the rest stands, in a few words.</summary>
    public static string State(Ahead ahead)
    {
        ArgumentNullException.ThrowIfNull(ahead);
        return ahead.Verdict == Verdict.No ? $"no, short by {Shown.BothUp(ahead.Short)}" : $"{Words.Of(ahead.Verdict)}, {Chance(ahead.ChanceOfEnough)}";
    }

    public static string Chance(double chance) => $"{Shown.Chance(chance)} chance that the yarn lasts";

    public static string Short(Metres length) => $"short by {Shown.BothUp(length)}";

    public static string StillShort(Metres length) => $"still short by {Shown.BothUp(length)}";

    /// <summary>What the forecast stands on.</summary>
    public static string Proof(Ahead ahead)
    {
        ArgumentNullException.ThrowIfNull(ahead);
        var weighed = ahead.Balls.Where(b => b.Measured).Select(b => b.Ball.Start.Name).ToList();
        return weighed.Count == 0 ? "No ball is weighed again yet, so this is the plan."
            : ahead.Balls.All(b => b.Measured || b.Parts.Count == 0) ? "Judged by what you used so far."
            : $"Judged by {Terms.And(weighed)}; weigh the others to be surer.";
    }

    /// <summary>How a yarn comes into a step, and what becomes of it after.</summary>
    public static string Comes(SheetYarn yarn)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        var comes = yarn.Joining switch
        {
            Joining.Join => "Join. ",
            Joining.Again => "Rejoin. ",
            Joining.Carried => "Carry it along. ",
            _ => "",
        };
        return $"{comes}{(yarn.Cut ? "Cut after." : "Don’t cut.")}";
    }

    /// <summary>The reason of the forecast.</summary>
    public static string Why(Ahead ahead, SheetView view)
    {
        ArgumentNullException.ThrowIfNull(ahead);
        ArgumentNullException.ThrowIfNull(view);
        if (!ahead.Anything)
        {
            return "Every part is done.";
        }

        var shortages = ahead.Shortages.Select(s => s.Part is { } part ? LacksOf(part)
            : $"{view.NameOf(s.Ball!.Ball.Start.Id)} is short by {Shown.BothUp(s.Length)}").ToList();
        var rate = ahead.Balls.Any(b => b.Measured) ? "at your rate, " : "";
        var name = ahead.Weakest is { } tight ? view.NameOf(tight.Ball.Start.Id) : "";
        return ahead.Why switch
        {
            Knitting.Matching.Why.Short when shortages is [var one] => Terms.Capital($"{rate}{one}."),
            Knitting.Matching.Why.Short => Terms.Capital($"{rate}it is short by {Shown.BothUp(ahead.Short)} in all: {Terms.And(shortages)}."),
            Knitting.Matching.Why.Allowance => $"There is enough, but {name} leaves {Shown.About(OwnLack(ahead, view))} less in reserve than you asked.",
            Knitting.Matching.Why.Chance => $"There is enough, with your reserve, but knitters differ. {name} is closest to running out.",
            _ => "There is enough for the rest, with your reserve.",
        };
    }

    public static string Offer(Offer offer, Func<string, string> name)
    {
        ArgumentNullException.ThrowIfNull(offer);
        ArgumentNullException.ThrowIfNull(name);
        var part = Words.The(offer.Part);
        return offer.Kind switch
        {
            OfferKind.BallOfTheHat => $"Knit {part} in {name(offer.Leftover!)}, the stripe colour with most left.",
            OfferKind.DecreaseSooner =>
                $"Decrease a round sooner: {part} has one plain round less{(offer.Saves is { } saves ? $", which saves {Shown.Both(saves)}" : "")}.",
            _ => $"Knit {part} in {name(offer.Leftover!)}, which this hat does not use.",
        };
    }

    /// <summary>How a rate reads: "9.4 % more than planned".</summary>
    public static string Rate(double rate)
    {
        var percent = Math.Round((rate - 1) * 100, 1);
        return percent == 0 ? "as planned"
            : $"{Math.Abs(percent).ToString("0.0", CultureInfo.InvariantCulture)} % {(percent > 0 ? "more" : "less")} than planned";
    }

    public static string Used(BallAhead ball)
    {
        ArgumentNullException.ThrowIfNull(ball);
        return $", used {Shown.Both(ball.Used)}, planned {Shown.Both(ball.PlannedSoFar)}: {Rate(ball.Rate)}";
    }

    public static string Left(BallAhead ball, Grams step)
    {
        ArgumentNullException.ThrowIfNull(ball);
        return $"left {Shown.Grams(ball.Ball.Start.Ratio.GramsOf(ball.Left), step)}, {Shown.Both(ball.Left)}";
    }

    /// <summary>What will be on the ball at the end.</summary>
    public static string Ends(BallAhead ball)
    {
        ArgumentNullException.ThrowIfNull(ball);
        if (ball.Spare < 0)
        {
            return Short(ball.Short);
        }

        var grams = Math.Round(ball.SpareGrams, 1).ToString("0.0", CultureInfo.InvariantCulture);
        return $"At the end {Shown.Both(Metres.Held(ball.Spare))} ({grams} g) left; probably {Whole(ball.LeastSpare)} to {Whole(ball.MostSpare)} m.";
    }

    public static string DeleteWeighing(string ball) => $"delete the weighing of {ball}";

    /// <summary>A step in sentences with no signs.</summary>
    public static IEnumerable<string> Spoken(SheetView view, SheetStep step)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(step);
        if (step.Rows > 0)
        {
            yield return $"{Terms.Counted(step.Rows, StepWords.Row(view.Hat.Plan, step.Key))}{(step.Depth.Value > 0 ? $", {Spoken(step.Depth)} deep" : "")}.";
        }

        foreach (var yarn in step.Yarns)
        {
            var named = yarn.Strand is { } strand ? $"The {Words.Strand(strand)} is {yarn.Name}" : $"The yarn is {yarn.Name}";
            yield return $"{named}{(yarn.Code.Length > 0 ? $", tag {yarn.Code}" : "")}. {Comes(yarn)}";
            yield return $"It takes {Length(yarn.Length)}{(yarn.Grams is { } grams ? $", {Weight(grams, yarn.Step)}" : "")}."
                + Before(yarn, step.Done).Replace(" g (", " grams (", StringComparison.Ordinal).Replace(" g ", " grams ", StringComparison.Ordinal);
        }

        foreach (var lacks in step.Lacking)
        {
            yield return $"{Terms.Capital(Words.The(lacks.Part))} is short by {Length(lacks.Forecast)}.";
        }

        foreach (var sentence in step.How)
        {
            yield return sentence.Replace(" cm / ", " centimetres or ", StringComparison.Ordinal)
                .Replace(" in at the end", " inches at the end", StringComparison.Ordinal)
                .Replace(" in / ", " inches or ", StringComparison.Ordinal).Replace(" cm at the end", " centimetres at the end", StringComparison.Ordinal);
        }
    }

    private static string LacksOf(PartLacking lacks) => $"{Words.The(lacks.Part)} is short by {Shown.BothUp(lacks.Forecast)}";

    // What the closest ball lacks by itself.
    private static Metres OwnLack(Ahead ahead, SheetView view) =>
        ahead.Weakest is { } ball && ball.Need.WithAllowance(view.AllowancePercent) is var wanted && wanted > ball.Left
            ? wanted - ball.Left
            : ahead.ShortForAllowance;

    private static string Whole(decimal metres) => Math.Max(0, Math.Round(metres)).ToString("0", CultureInfo.InvariantCulture);

    private static string Weight(decimal grams, Grams step) => Shown.GramsUp(grams, step)[..^2] + " grams";

    private static string Length(Metres length) => Or(Shown.InOrder($"{Up(length.Value)} metres", $"{Up(length.Yards)} yards"));

    private static string Or((string First, string Second) measures) => $"{measures.First} or {measures.Second}";

    private static string Up(decimal value) => (Math.Ceiling(value * 10) / 10).ToString("0.0", CultureInfo.InvariantCulture);

    // Inches in eighths, spelled.
    private static string Spoken(Centimetres depth)
    {
        var eighths = (int)Math.Round(depth.Inches * 8, MidpointRounding.AwayFromZero);
        var (whole, part) = (eighths / 8, eighths % 8);
        var fraction = part switch { 0 => "", 1 => "1 eighth", 2 => "1 quarter", 4 => "a half", 6 => "3 quarters", _ => $"{part} eighths" };
        var inches = (whole, part) switch
        {
            (1, 0) => "1 inch",
            (_, 0) => $"{whole} inches",
            (0, _) => $"{fraction} of an inch",
            _ => $"{whole} and {fraction} inches",
        };
        return Or(Shown.InOrder($"{Shown.Centimetres(depth)} centimetres", inches));
    }
}
