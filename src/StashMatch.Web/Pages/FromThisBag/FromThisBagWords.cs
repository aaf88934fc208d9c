using System.Globalization;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.FromThisBag;

/// <summary>Every word of the page that says what a bag will make.</summary>
public static class FromThisBagWords
{
    public const string Title = "What will it make?";
    public const string TheBest = "The best";
    public const string InEachSize = "in each size,";
    public const string HatField = "Hat";
    public const string Arrangement = "Colours";
    public const string AnyOfThese = "any of the usual ways";
    public const string By = "by";
    public const string More = "more";
    public const string Question = "Which hat";
    public const string SizesHint = "Tick sizes to see only those.";
    public const string LeftoversHint = "Tick leftovers to use only those.";
    public const string AllBags = "all bags";
    public const string FibresAllowed = "fibres";
    public const string FromBag = "from";
    public const string Reserve = "reserve, %";
    public const string NothingYet = "Weigh your first ball, and see what it will make.";
    public const string AllKept = "All your yarn is kept for other hats.";
    public const string WeighFirst = "Weigh your first ball";
    public const string CannotRead = "Correct the marked field, and the hats come back.";
    public const string None = "None of these sizes can be knitted like that.";
    public const string Head = "head";
    public const string Rail = "The best hat in each size";
    public const string Table = "Every size, every number of stripes";
    public const string FigureIsChance = "The figure is the chance, in per cent, that the yarn lasts.";
    public const string SeeWhich = "See which";
    public const string SeeThisHat = "See this hat";
    public const string FromWholeBag = "From the whole bag:";
    public const string UseUp = "Use up these balls";
    public const string UseUpHint = "Choose balls; each becomes one stripe, as deep as it reaches";
    public const string UseUpHow = "Each ball gets one stripe. The hat keeps its size.";
    public const string MeasuredOnly = "This needs a hat described by measurements.";
    public const string WorkOut = "Work out the stripes";
    public const string InSize = "In size";
    public const string AtLeast = "at least";
    public const string AtMost = "and at most";
    public const string Rows = "rows";
    public const string RowsEach = "rows a stripe";
    public const string ThisHat = "See this hat";
    public const string StripeByStripe = "Stripe by stripe";
    public const string LeftOnIt = "left on the ball";
    public const string Depth = "depth";
    public const string HatsHere = "Hats";
    public const string StripesLabel = "stripes";

    /// <summary>How the hats may be ordered: what an address says, and what a person reads.</summary>
    public static IReadOnlyList<(string Value, string Text)> Orders { get; } = [("", "size"), ("surest", "surest"), ("uses-up-most", "uses up most")];

    /// <summary>"Four sizes are a yes, three only just."</summary>
    public static string Told(IReadOnlyList<BagCell> best)
    {
        ArgumentNullException.ThrowIfNull(best);
        int Of(Verdict verdict) => best.Count(c => c.Verdict == verdict);
        var (yes, just, all) = (Of(Verdict.Yes), Of(Verdict.OnlyJust), best.Count);
        return (yes, just) switch
        {
            _ when all == 0 => None,
            _ when yes == all => all == 1 ? "This size is a yes." : $"{All(all)} sizes are a yes.",
            _ when just == all => all == 1 ? "This size is only just enough." : $"{All(all)} sizes are only just enough.",
            (0, 0) => all == 1 ? "There is too little yarn for this size." : "There is too little yarn for any size.",
            (0, _) => $"{Capital(Sizes(just))} {(just == 1 ? "is" : "are")} only just enough.",
            (_, 0) => $"{Capital(Sizes(yes))} {(yes == 1 ? "is" : "are")} a yes.",
            _ => $"{Capital(Sizes(yes))} {(yes == 1 ? "is" : "are")} a yes, {Number(just)} only just.",
        };
    }

    /// <summary>"yes 88 %", "no 1.9 m short".</summary>
    public static (string Word, string Figure) Outcome(BagCell cell, double? chance = null)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return (Words.Of(cell.Verdict), cell.Verdict == Verdict.No ? ShortBy(cell.Short) : Shown.Chance(chance ?? cell.ChanceOfEnough));
    }

    /// <summary>Why a cell of the table is what it is, for a pointer that rests on it.</summary>
    public static string Because(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Cannot is { } cannot ? cannot.Reason
            : cell.WeakestPart is not { } part ? ""
            : cell.Why == Why.Colour ? "Neighbouring stripes would look the same."
            : cell.Verdict == Verdict.No ? $"{Capital(Words.The(part))} is short most." : $"{Capital(Words.The(part))} is the limit.";
    }

    public static string ShortBy(Metres length) => $"{Shown.OwnAbout(length)} short";

    /// <summary>The table's heading: "Every stripe different, keeping 10 % in reserve."</summary>
    public static string Caption(Arrangement arrangement, decimal reserve) =>
        $"{Capital(Words.Of(arrangement))}, keeping {reserve.ToString("0.#", CultureInfo.InvariantCulture)} % in reserve.";

    /// <summary>"1 hat", "at least 3 hats, at most 4".</summary>
    public static string HowMany(WholeBagAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.AtMost == 0 ? "no hat." : answer.AtLeast == answer.AtMost ? $"{Hats(answer.AtMost)}." : $"at least {Hats(answer.AtLeast)}, at most {answer.AtMost}.";
    }

    /// <summary>Why a bag makes no more hats: "Only one ball is long enough for a brim."</summary>
    public static string WhyNoMore(WholeBagAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.Limit is not { } limit ? ""
            : !limit.ByCount ? $"The balls long enough for a {Kind(limit.Part)} hold too little for more."
            : limit.Balls == 0 ? $"No ball is long enough for a {Kind(limit.Part)}."
            : $"Only {Number(limit.Balls)} {(limit.Balls == 1 ? "ball is" : "balls are")} long enough for a {Kind(limit.Part)}.";
    }

    /// <summary>"all sizes, all leftovers": what the rarer choices are set to.</summary>
    public static string OfLeftovers(int chosen, int all) => chosen == 0 ? $"using all {all} leftovers" : $"using {chosen} of {all} leftovers";

    /// <summary>"Not counted: 12.0 m of Sloe, kept for your other hats."</summary>
    public static string Kept(bool counted, string yarns) => $"{(counted ? "Counted too" : "Not counted")}: {yarns}, kept for your other hats.";

    public static string CountKept(bool counted) => counted ? "Leave it out" : "Count it too";

    /// <summary>What came of using balls up, in a few sentences.</summary>
    public static string Depths(DepthPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var up = plan.Stripes.Where(s => s.KnittedUp).Select(s => s.Leftover.Name).ToList();
        return string.Join(' ', new[]
        {
            $"{Terms.Stripes(plan.Stripes.Count)}.",
            up.Count == 0 ? "" : $"Used up, but for your reserve: {string.Join(", ", up)}.",
            $"{Shown.Both(plan.Left)} stay on the balls.",
            plan.ProvenBest ? "No other stripes leave less." : "This is the best found for this order of colours.",
            plan.NotIn.Count == 0 ? "" : $"The hat has no room for {string.Join(", ", plan.NotIn.Select(l => l.Name))}.",
        }.Where(s => s.Length > 0));
    }

    /// <summary>How to hear one cell of the table.</summary>
    public static string Spoken(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return $"size {cell.Size}, {Terms.Stripes(cell.Stripes)}";
    }

    public static string Number(int count) => count is >= 0 and <= 12
        ? new[] { "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve" }[count]
        : count.ToString(CultureInfo.InvariantCulture);

    private static string All(int count) => count == 2 ? "Both" : $"All {Number(count)}";

    private static string Sizes(int count) => $"{Number(count)} {(count == 1 ? "size" : "sizes")}";

    private static string Hats(int count) => $"{count} {(count == 1 ? "hat" : "hats")}";

    private static string Kind(PartKind kind) => kind switch { PartKind.Strand => "braid", _ => kind.ToString().ToLowerInvariant() };

    private static string Capital(string words) => Terms.Capital(words);
}
