using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>Every word of the answer page, in reading order, so that they can be read through and translated in one place.</summary>
public static class CanIMakeItWords
{
    // The question.
    public const string Question = "The question";
    public const string CanIMake = "Can I make";
    public const string In = "in";
    public const string With = "with";
    public const string More = "more";
    public const string Change = "change";
    public const string Show = "Show";
    public const string Hat = "Hat";
    public const string Size = "Size";
    public const string Stripes = "Number of stripes";
    public const string Arrangement = "How the colours are shared out";
    public const string AnyNumber = "any number that works";
    public const string Order = "Colour order";
    public const string Reserve = "Keep in reserve, %";
    public const string FibresAllowed = "Fibres";
    public const string BagOf = "Bag";
    public const string AllBags = "all bags";
    public const string HoldTogether = "Hold two together";
    public const string HoldNothing = "nothing";
    public const string HoldWith = "with";
    public const string Doubled = "itself, doubled";
    public const string Decided = "You decided";
    public const string TickSome = "Tick some to use only those. Tick none to use all.";

    // The answer.
    public const string Answer = "The answer";
    public const string ChanceLasts = "chance the yarn lasts";
    public const string KnitThis = "Knit this";
    public const string SavePicture = "Save picture";
    public const string Print = "Print";
    public const string Empty = "Your bag is empty.";
    public const string WeighFirst = "Weigh your first ball";
    public const string TryDemo = "Try the demo bag";
    public const string CodesChanged = "Some tags have new codes: the old ones are words of the trade.";
    public const string CodesSeen = "Got it";
    public const string CountThem = "Count it too";
    /// <summary>Said where a hat has not the size asked for, and the nearest was taken.</summary>
    public static string NoSize(string hat, string missing, string? taken) => $"{hat} has no size {missing}. This is size {taken}, the nearest.";

    public const string KeptIsCounted = "Yarn kept for your other hats is counted.";
    public const string DontCountThem = "Don’t count it";
    public const string SeeWhatItMakes = "See what it will make";
    public const string CannotKnit = "This hat cannot be knitted.";
    public const string CannotRead = "One thing in the question cannot be read. It is marked above.";

    // The hat.
    public const string OnTheHead = "head";
    public const string Piece = "piece";
    public const string Above = "above";
    public const string TurnLeft = "Turn left";
    public const string TurnRight = "Turn right";
    public const string TheHat = "The hat";
    public const string TurnTheHat = "Turn the hat";
    public const string InFront = "in front: ";
    public const string Sides = "front|right side|back|left side";

    // Plans and rows.
    public const string ThreeWays = "Three ways to share it out";
    public const string OneWay = "One way to share it out";
    public const string TwoWays = "Two ways to share it out";
    public const string Rows = "Which yarn goes where";
    public const string PartColumn = "part";
    public const string YarnColumn = "yarn";
    public const string NeedsColumn = "needs";
    public const string LeftColumn = "left on the ball";
    public const string ChangeColumn = "change";
    public const string NoYarn = "no yarn left";
    public const string Undo = "undo";
    public const string Close = "Close";

    // The menu of a part.
    public const string SomethingElse = "Something else";
    public const string AnyOther = "Any other leftover";
    public const string UseThis = "Use this one";
    public const string Release = "Choose freely again";


    public static IReadOnlyList<(string Value, string Text)> Orders { get; } = [("", "any"), ("gradient", "gradual"), ("contrast", "contrasting")];

    /// <summary>The word and what it is about: the title of the page.</summary>
    public static string Title(Verdict verdict, HatNeeds hat) => $"{Terms.Capital(Words.Of(verdict))}: size {hat.Size}, {Counted(hat.Stripes, "stripe")}";

    /// <summary>The question as a phone shows it.</summary>
    public static string Short(string hat, string? size, string? stripes) =>
        string.Join(" · ",
            new[] { hat, size, string.IsNullOrEmpty(stripes) ? "any stripes" : stripes == "1" ? "1 stripe" : $"{stripes} stripes" }.Where(t =>
                !string.IsNullOrEmpty(t)));

    public static string OfSize(string size, string? forWhom) => forWhom is null ? $"size {size}" : $"size {size}, {forWhom}";

    public static string OfStripes(string count) => count == "1" ? "1 stripe" : $"{count} stripes";

    public static string KeepsReserve(string percent) => $"keeping {percent} % in reserve";

    public static string Using(int chosen, int all) => chosen == 0 ? $"Using all {all} leftovers" : $"Using {chosen} of {all} leftovers";

    public static string KeptElsewhere(int some) =>
        some == 1 ? "Yarn of one leftover is kept for another hat." : $"Yarn of {some} leftovers is kept for other hats.";

    /// <summary>What a message calls a field of the question.</summary>
    public static string Called(string field) =>
        field switch
        {
            "allowancePercent" => "the reserve",
            "colourOrder" => "colour order",
            "locks" => "what is always used",
            "brimDepthCm" =>
            "brim depth",
            "rows" => "the stripes’ rows",
            _ => field
        };

    public static string HeldWrong(string message) => $"What is held together {message}.";

    /// <summary>Two leftovers held together, and what stays of the longer one.</summary>
    public static string Held(Leftover together, IReadOnlyList<Leftover> over)
    {
        ArgumentNullException.ThrowIfNull(together);
        ArgumentNullException.ThrowIfNull(over);
        var metres = together.Ratio.MetresPer100Grams.ToString("0", CultureInfo.InvariantCulture);
        var left = string.Concat(over.Select(o => $"; {Shown.Both(o.Held)} of {o.Name} left"));
        return $"{together.Name}: {Shown.Both(together.Held)}, {metres} m in 100 g together{left}.";
    }

    /// <summary>What a question holds beside the hat: each with the name and value of its field, and in words.</summary>
    public static IEnumerable<(string Name, string Value, string Text)> DecidedIn(CanIMakeForm form, Func<string, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(nameOf);
        string In(string pair) => SaidInAddress.Apart(pair) is [_, var id] ? nameOf(id) : "";
        string Part(string pair) => Words.The(SaidInAddress.Apart(pair)[0]);
        (string, string, string)? One(string name, string? value, string text) => string.IsNullOrEmpty(value) ? null : (name, value, text);
        (string, string, string)?[] single =
        [
            form.NextDoor == "blend" ? One("nextDoor", "blend", "neighbouring stripes may look alike") : null,
            form.Brim == "single" ? One("brim", "single", "single brim, not folded") : null,
            One(ChangedHat.BrimDepthCm.Name, form.BrimDepth, $"brim {form.BrimDepth} cm deep"),
            One("bindOff", form.BindOff, form.BindOff == "tubular" ? "tubular bind-off" : "plain bind-off"),
            One("inTurn", form.InTurn, $"repeat {form.InTurn} colours"),
            One(ChangedHat.Rows.Name, form.Depths, $"stripes of {form.Depths?.Replace(",", ", ", StringComparison.Ordinal)} rows"),
        ];
        return
        [
            .. single.OfType<(string, string, string)>(),
            .. form.Without.Select(b => (ChangedHat.Without.Name, b, $"without braid {b}")),
            .. form.Apart.Select(p => (Pairings.Apart.Name, p, $"{Words.The(p)} from any leftover")),
            .. form.Join.Select(j => (Together.Joined.Name, j, $"{string.Join(" and ", SaidInAddress.Apart(j).Select(nameOf))}, one after the other")),
            .. form.Back.Select(b => (MatchQuestion.Back.Name, b, $"don’t use {nameOf(b)}")),
            .. form.Keep.Select(k => (Pairings.Locks.Name, k, $"always use {In(k)} in {Part(k)}")),
            .. form.Never.Select(n => (Pairings.Never.Name, n, $"not {In(n)} in {Part(n)}")),
        ];
    }

    /// <summary>Nothing in the bag is as thick as the hat's yarn.</summary>
    public static (string Line, string Why) NoneFits(WeightClass hat, IReadOnlyList<WeightClass> bag)
    {
        ArgumentNullException.ThrowIfNull(bag);
        var line = bag.All(c => c > hat) ? "Your yarn is too thick for this hat."
            : bag.All(c => c < hat) ? "Your yarn is too thin for this hat."
            : "None of your yarn is as thick as this hat’s.";
        return (line, $"This hat takes {Terms.Of(hat)}; you have {Terms.And([.. bag.Distinct().Order().Select(Terms.Of)])}.");
    }

    public static string ShowHat(string hat) => $"Show {hat}";

    /// <summary>What stands over the ways that help.</summary>
    public static string Makes(Verdict verdict) => verdict == Verdict.Yes ? "Makes it a yes" : "Makes it only just";

    public static string MoreWays(int more) => more == 1 ? "1 more way" : $"{more} more ways";

    /// <summary>What a way leads to.</summary>
    public static string Then(Verdict verdict, double chance) => verdict == Verdict.No ? Words.Of(verdict) : $"{Words.Of(verdict)} {Shown.Chance(chance)}";

    public static string ShortIn(IReadOnlyList<HatRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var lacking = rows.Where(r => r.Short.Millimetres > 0).ToList();
        return lacking.Count == 1 ? $"short, in {Words.The(lacking[0].Name)}" : $"short, in {Terms.Number(lacking.Count)} parts";
    }

    /// <summary>What lies under the word: the ball that limits it, and what it leaves.</summary>
    public static (string Left, string Right) Proof(AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Shortest is { } row)
        {
            var yarn = row.Yarns.OfType<RowYarn>().FirstOrDefault();
            return (yarn is null ? "no yarn left" : $"{yarn.Leftover.Name}: {Shown.Own(yarn.Takes)}", $"{row.Name} needs {Shown.OwnUp(Need(row))}");
        }

        if (view.Limiting is not { } ball)
        {
            return ("", "");
        }

        var parts = view.RowsOf(ball.Leftover.Id);
        var where = parts.Count switch { 1 => parts[0], 2 => $"{parts[0]} and {parts[1]}", var n => $"{n} parts" };
        return ($"{ball.Leftover.Name}: {where} {Shown.OwnUp(ball.Used)}",
            $"leaves {Shown.Own(ball.Left)}; you asked {Shown.OwnUp(Asked(view, ball)).Split(' ')[0]}");
    }

    /// <summary>The reserve asked of a ball.</summary>
    public static Metres Asked(AnswerView view, LeftoverAnswer ball)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(ball);
        return ball.Used.WithAllowance(view.AllowancePercent) - ball.Used;
    }

    public static Metres Need(HatRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Metres.FromMillimetres(row.Parts.Max(p => p.Need.Millimetres));
    }

    /// <summary>What a row needs: one length, twice the same, or two.</summary>
    public static (string Times, string Length) Needs(HatRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.Parts.Count == 2 && row.Parts[0].Need == row.Parts[1].Need ? ("2 × ", Shown.OwnUp(row.Parts[0].Need))
            : ("", string.Join(" + ", row.Parts.Select((p, i) => i < row.Parts.Count - 1 ? Shown.OwnUp(p.Need).Split(' ')[0] : Shown.OwnUp(p.Need))));
    }

    /// <summary>What is left on the balls of a row.</summary>
    public static string Left(HatRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var yarns = row.Yarns.OfType<RowYarn>().ToList();
        if (row.Short.Millimetres > 0)
        {
            return $"{Shown.OwnUp(row.Short)} short";
        }

        return yarns.Count == 1
            ? $"{Shown.Own(yarns[0].Answer.Left)} · {Shown.Grams(yarns[0].GramsLeft, yarns[0].Leftover.Weighing.ScaleStep)}"
            : string.Join(" and ", yarns.Select((y, i) => i < yarns.Count - 1 ? Shown.Own(y.Answer.Left).Split(' ')[0] : Shown.Own(y.Answer.Left)));
    }

    /// <summary>An empty bag: what this hat takes.</summary>
    public static string Takes(HatNeeds hat, Arrangement arrangement, Metres all)
    {
        ArgumentNullException.ThrowIfNull(hat);
        var colours = arrangement switch
        {
            Knitting.Matching.Arrangement.OwnColours => hat.Parts.Count(p => p.Kind is PartKind.Stripe or PartKind.Crown)
                + (hat.Parts.Any(p => p.Kind == PartKind.Brim) ? 1 : 0),
            _ => 0,
        };
        var about = Shown.OwnAbout(all);
        return colours > 1 ? $"This hat takes about {about} of yarn in {Terms.Number(colours)} colours." : $"This hat takes about {about} of yarn.";
    }

    /// <summary>The heading of a part's menu.</summary>
    public static string Menu(HatRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var names = row.Yarns.OfType<RowYarn>().Select(y => y.Leftover.Name).Distinct(StringComparer.Ordinal).ToList();
        var (times, length) = Needs(row);
        var other = row.Parts.Count == 1 ? $" ({Shown.PairUp(row.Parts[0].Need).Second})" : "";
        return $"{(names.Count == 0 ? NoYarn : string.Join(" + ", names))}, {times}{length}{other}";
    }

    /// <summary>A part with its yarn and what it needs in both units, in one line.</summary>
    public static string Told(HatRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var names = row.Yarns.OfType<RowYarn>().Select(y => y.Leftover.Name).Distinct(StringComparer.Ordinal).ToList();
        var (times, length) = Needs(row);
        var other = row.Parts.Count == 1 ? $" ({Shown.PairUp(row.Parts[0].Need).Second})" : "";
        return $"{row.Name}: {(names.Count == 0 ? NoYarn : string.Join(" + ", names))}, {times}{length}{other}";
    }

    /// <summary>A part's measures and what stays.</summary>
    public static string Measures(HatRow row, RowPlan? plan)
    {
        ArgumentNullException.ThrowIfNull(row);
        var part = row.Parts[0].Part;
        var rounds = part.Kind == PartKind.Brim || plan?.Construction == Construction.BrimUpRound;
        var facts = new List<string>();
        if (part.Rows > 0)
        {
            facts.Add(Counted(part.Rows, rounds ? "round" : "row"));
        }

        if (part.Depth.Value > 0)
        {
            facts.Add(Shown.OwnDepth(part.Depth));
        }

        var yarns = row.Yarns.OfType<RowYarn>().ToList();
        var measures = string.Join(", ", facts);
        var stays = row.Short.Millimetres > 0 ? $"{Shown.OwnUp(row.Short)} short"
            : yarns.Count == 1 ? $"{Shown.Own(yarns[0].Answer.Left)} stays on the ball"
            : string.Join(", ", yarns.Select(y => $"{Shown.Own(y.Answer.Left)} of {y.Leftover.Name} stays"));
        return string.Join(" · ", new[] { measures, stays }.Where(t => t.Length > 0));
    }

    public static string Always(string name, string part) => $"Always use {name} {(part == PartNames.Brim ? "for the brim" : "here")}";

    public static string NotHere(string name) => $"Not {name} here";

    public static string AllOf(string yarn) => $"all of {yarn}";

    public static string Alone(string part) => $"{part} alone";

    public static string DontUse(string name) => $"Don’t use {name} in this hat";

    /// <summary>What the dots of a row open.</summary>
    public static string Dots(string row) => $"{Terms.Capital(row)}: change its yarn";

    /// <summary>What changed since the plan before, in one line; null where nothing did.</summary>
    public static string? Changed(IReadOnlyList<(string Row, string? Before, string? Now)> changes, bool restStays)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var stays = restStays ? " The rest stays." : "";
        return changes.Count switch
        {
            0 => null,
            1 => $"{Terms.Capital(Words.The(changes[0].Row))} is now {changes[0].Now ?? NoYarn}, not {changes[0].Before ?? NoYarn}.{stays}",
            2 when changes[0].Now == changes[1].Before && changes[1].Now == changes[0].Before =>
                $"{Terms.Capital(Words.The(changes[0].Row))} and {Words.The(changes[1].Row)} changed places.{stays}",
            2 => $"{Terms.Capital(Words.The(changes[0].Row))} is now {changes[0].Now ?? NoYarn}, {Words.The(changes[1].Row)} {changes[1].Now ?? NoYarn}.",
            var n =>
                $"{Terms.Capital(Words.The(changes[0].Row))} is now {changes[0].Now ?? NoYarn}. {Terms.Capital(Terms.Number(n - 1))} other parts changed too.",
        };
    }

    public static string PlanName(PlanKind kind) => kind switch
    {
        PlanKind.Surest => "surest",
        PlanKind.UsesMostUp => "uses up most",
        _ => "gentlest colour steps",
    };

    public const string NothingChanged = "Your choice holds. Nothing else changed.";

    public static string KnitWith(int stripes) => stripes == 1 ? "Show it with one stripe" : $"Show it with {stripes} stripes";

    public static string Undyed(string title) => $"{title}, in undyed wool";

    public const string AfterClash = "Use other leftovers, or free the yarn in the other hat.";

    public const string WithoutKeeping = "Knit this, keep no yarn for it";

    public const string ChangedElsewhere = "This hat was changed in another window. Open it and look again.";

    public static string ChangePlan(string name) => $"Change “{name}” to this";

    public static string WantedAndFree(Store.PromiseClash clash)
    {
        ArgumentNullException.ThrowIfNull(clash);
        return $"{Shown.OwnUp(clash.Wanted)} needed, {Shown.Own(clash.Free)} free";
    }

    /// <summary>What is said of a plan that could not be kept.</summary>
    public static string NotSaved(bool spokenFor) =>
        spokenFor ? "Not saved: another hat needs some of this yarn." : "Not saved: some of this yarn is not in the bag any more.";

    public static string Counted(int number, string one) => number == 1 ? $"one {one}" : $"{Terms.Number(number)} {one}s";
}
