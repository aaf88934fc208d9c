using System.Globalization;
using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>Sentences of the sheet, and the same with no signs for large print and screen readers.</summary>
public static class SheetWords
{
    /// <summary>Where a ball may stop, up, with the core it is on.</summary>
    public static string StopAt(Grams stop, Grams core, Grams step) => core > default(Grams)
        ? $"{Shown.GramsUp(stop.Value, step)} ({Shown.GramsUp((stop + core).Value, step)} with its core or bowl)"
        : Shown.GramsUp(stop.Value, step);

    /// <summary>What must be left on a ball before a step; empty where nothing is to be said.</summary>
    public static string Before(SheetYarn yarn, bool done)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        return done ? ""
            : yarn.StopAt is { } stop ? $" Before it at least {StopAt(stop, yarn.Core, yarn.Step)} must be left{(yarn.PutBy ? ", what was put by counted in" : "")}."
            : yarn.PutBy ? " What was put by is for it." : "";
    }

    /// <summary>What a part lacks: "Stripe 1 lacks 16.4 m / 18.0 yd."</summary>
    public static string Lacks(PartLacking lacks)
    {
        ArgumentNullException.ThrowIfNull(lacks);
        return Capital(LacksOf(lacks)) + ".";
    }

    /// <summary>The state of what is ahead in a few words: "only just, 83 %".</summary>
    public static string State(Ahead ahead)
    {
        ArgumentNullException.ThrowIfNull(ahead);
        return ahead.Verdict == Verdict.No ? $"no, short by {Shown.BothUp(ahead.Short)}" : $"{Words.Of(ahead.Verdict)}, {Shown.Chance(ahead.ChanceOfEnough)}";
    }

    /// <summary>What the forecast stands on.</summary>
    public static string Proof(Ahead ahead)
    {
        ArgumentNullException.ThrowIfNull(ahead);
        var weighed = ahead.Balls.Where(b => b.Measured).Select(b => b.Ball.Start.Name).ToList();
        var others = ahead.Balls.Where(b => !b.Measured && b.Parts.Count > 0).ToList();
        return weighed.Count == 0 ? "As planned: no ball is weighed again yet. Tick off what is finished, then weigh its ball."
            : others.Count == 0 ? "Forecast from your own rate so far."
            : $"Forecast from your own rate so far. What {And(weighed)} {(weighed.Count == 1 ? "tells" : "tell")} is taken for the other {(others.Count == 1 ? "ball until it is" : "balls until they are")} weighed.";
    }

    public static string Comes(SheetYarn yarn)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        var comes = yarn.Joining switch
        {
            Joining.Join => "joins here",
            Joining.GoOn => "goes on",
            Joining.Again => "joins again",
            _ => "is carried along",
        };
        return yarn.Cut ? $"{comes}, then is cut" : comes;
    }

    /// <summary>The reason of the forecast in one sentence.</summary>
    public static string Why(Ahead ahead, SheetView view)
    {
        ArgumentNullException.ThrowIfNull(ahead);
        ArgumentNullException.ThrowIfNull(view);
        if (!ahead.Anything)
        {
            return "Every part is ticked off.";
        }

        var shortages = ahead.Shortages.Select(s => s.Part is { } part ? LacksOf(part) : $"{view.NameOf(s.Ball!.Ball.Start.Id)} is short by {Shown.BothUp(s.Length)}").ToList();
        var rate = ahead.Balls.Any(b => b.Measured) ? "At the rate forecast " : "";
        var name = ahead.Weakest is { } tight ? view.NameOf(tight.Ball.Start.Id) : "";
        return ahead.Why switch
        {
            Knitting.Matching.Why.Short when shortages is [var one] => Capital($"{rate}{one}."),
            Knitting.Matching.Why.Short => Capital($"{rate}it is short by {Shown.BothUp(ahead.Short)} in all: {And(shortages)}."),
            Knitting.Matching.Why.Allowance => $"Everything ahead is covered, but {name} misses the allowance by {Shown.BothUp(ahead.ShortForAllowance)}.",
            Knitting.Matching.Why.Chance => $"Everything ahead is covered, but not surely enough. {name} is the tightest.",
            _ => "Everything ahead is covered with the allowance.",
        };
    }

    public static string Offer(Offer offer, Func<string, string> name)
    {
        ArgumentNullException.ThrowIfNull(offer);
        ArgumentNullException.ThrowIfNull(name);
        var part = Words.The(offer.Part);
        return offer.Kind switch
        {
            OfferKind.BallOfTheHat => $"Knit {part} in {name(offer.Leftover!)}, the stripe colour with most to spare.",
            OfferKind.DecreaseSooner => $"Decrease a round sooner: {part} has one plain round less{(offer.Saves is { } saves ? $", which saves {Shown.Both(saves)}" : "")}.",
            _ => $"Knit {part} in {name(offer.Leftover!)}, which the hat does not use.",
        };
    }

    /// <summary>How a rate reads: "9.4 % more than planned".</summary>
    public static string Rate(double rate)
    {
        var percent = Math.Round((rate - 1) * 100, 1);
        return percent == 0 ? "as planned" : $"{Math.Abs(percent).ToString("0.0", CultureInfo.InvariantCulture)} % {(percent > 0 ? "more" : "less")} than planned";
    }

    /// <summary>A step in sentences with no signs.</summary>
    public static IEnumerable<string> Spoken(SheetView view, SheetStep step)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(step);
        if (step.Rows > 0)
        {
            yield return $"{step.Rows} {StepWords.Row(step.Key == PartNames.Brim ? null : view.Hat.Plan)}s{(step.Depth.Value > 0 ? $", {Spoken(step.Depth)} deep" : "")}.";
        }

        foreach (var yarn in step.Yarns)
        {
            var named = yarn.Strand is { } strand ? $"Strand {strand} is {yarn.Name}" : $"The yarn is {yarn.Name}";
            yield return $"{named}{(yarn.Code.Length > 0 ? $", tag {yarn.Code}" : "")}. It {Comes(yarn)}.";
            yield return $"It takes {Length(yarn.Length)}{(yarn.Grams is { } grams ? $", {Weight(grams, yarn.Step)}" : "")}."
                + Before(yarn, step.Done).Replace(" g (", " grams (", StringComparison.Ordinal).Replace(" g ", " grams ", StringComparison.Ordinal);
        }

        foreach (var lacks in step.Lacking)
        {
            yield return $"{Capital(Words.The(lacks.Part))} lacks {Length(lacks.Forecast)}.";
        }

        foreach (var sentence in step.How)
        {
            yield return sentence.Replace(" cm / ", " centimetres or ", StringComparison.Ordinal).Replace(" in at the end", " inches at the end", StringComparison.Ordinal)
                .Replace(" in / ", " inches or ", StringComparison.Ordinal).Replace(" cm at the end", " centimetres at the end", StringComparison.Ordinal);
        }
    }

    /// <summary>What is put by first, with no signs.</summary>
    public static string Spoken(SetAside aside)
    {
        ArgumentNullException.ThrowIfNull(aside);
        return $"Wind off {Length(aside.Length)}, {Weight(aside.Grams, aside.Step)}{(aside.InAll ? " in all" : "")}, of {aside.Name}, tag {aside.Code}, for {Words.The(aside.Part)}, before the other parts take it.";
    }

    private static string LacksOf(PartLacking lacks) => $"{Words.The(lacks.Part)} lacks {Shown.BothUp(lacks.Forecast)}";

    private static string And(List<string> items) => items.Count == 1 ? items[0] : $"{string.Join(", ", items.SkipLast(1))} and {items[^1]}";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

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
