using System.Globalization;
using System.Text;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Pictures;
using StashMatch.Questions;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.FromThisBag;

/// <summary>One hat on the rail: the best of its size, drawn in its own colours.</summary>
/// <param name="Cell">What the table says of it.</param>
/// <param name="Head">The head it is for, centimetres; null where a printed hat does not say.</param>
/// <param name="Chance">The chance that its yarn lasts, 0 to 1.</param>
/// <param name="Opens">The address of its answer.</param>
/// <param name="Picture">The address of its picture.</param>
/// <param name="Share">Its width against the largest hat's, 0 to 1.</param>
/// <param name="ThreadHex">The colour of the thread it hangs by: its brim's, or its first yarn's.</param>
/// <param name="UsedUp">How much of the balls it takes from it uses up, 0 to 1.</param>
public sealed record Peg(BagCell Cell, decimal? Head, double Chance, string Opens, string Picture, double Share, string? ThreadHex, double UsedUp);

/// <summary>The rail: one hat a size, hanging at its head's place on one tape.</summary>
public sealed class RailView
{
    private const int Small = 124;
    private const double Wide = 1152;
    private const double Row = 72;
    private const double CmPerInch = 2.54;

    /// <param name="pegs">The hats in the order they hang.</param>
    /// <param name="bySize">Whether they hang by size, so that a tape of heads can run above them.</param>
    public RailView(IReadOnlyList<Peg> pegs, bool bySize)
    {
        Pegs = pegs ?? throw new ArgumentNullException(nameof(pegs));
        HasTape = bySize && pegs.Count is > 1 and <= 9 && pegs.All(p => p.Head is not null) && pegs.Zip(pegs.Skip(1)).All(p => p.First.Head < p.Second.Head);
    }

    public IReadOnlyList<Peg> Pegs { get; }

    /// <summary>Whether the hats hang on a tape of heads; else they stand in a row.</summary>
    public bool HasTape { get; }

    /// <summary>The hats of a bag, each the best of its size.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="best">The best cell of each size.</param>
    /// <param name="form">The form, for addresses.</param>
    /// <param name="pictures">Paints them.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<Peg> PegsOf(BagAsked asked, IReadOnlyList<BagCell> best, BagForm form, HatPictures pictures, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(best);
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(pictures);
        var byId = asked.Leftovers.ToDictionary(l => l.Id, StringComparer.Ordinal);
        var view = HatPictures.ViewOf("head", 0, Small);
        var pegs = new List<Peg>();
        foreach (var cell in best)
        {
            var question = Knitting.Bags.FromThisBag.QuestionOf(asked.Hat, cell.Size, cell.Stripes, cell.Arrangement, asked.Leftovers, asked.AllowancePercent);
            if (!Matcher.TryWithoutRepairs(question, out var answer, out _, cancel))
            {
                continue;
            }

            var used = answer.Leftovers.Where(l => l.Used.Millimetres > 0).ToList();
            var opens = form.PlanOf(cell);
            var picture = opens.Replace("/can-i-make?", "/hat.png?", StringComparison.Ordinal)
                + string.Create(CultureInfo.InvariantCulture, $"&width={Small}&seen={pictures.Begin(HatPictures.HatOf(answer.Hat, answer.Parts, byId), view)}");
            var thread = answer.Parts.OrderBy(p => p.Part.Kind != PartKind.Brim).Select(p => p.From).FirstOrDefault(f => f is not null);
            pegs.Add(new Peg(
                cell,
                HeadOf(asked.Hat, cell.Size),
                answer.ChanceOfEnough,
                opens,
                picture,
                (double)(answer.Hat.Plan?.Circumference.Value ?? HeadOf(asked.Hat, cell.Size) ?? 0),
                thread is null ? null : byId[thread.Leftover].Colour?.Hex,
                used.Count == 0 ? 0 : (double)used.Sum(l => l.Used.Millimetres) / used.Sum(l => l.Leftover.Held.Millimetres)));
        }

        var largest = pegs.Count == 0 ? 1 : Math.Max(1, pegs.Max(p => p.Share));
        return [.. pegs.Select(p => p with { Share = p.Share == 0 ? 1 : p.Share / largest })];
    }

    /// <summary>The hats in the order asked for: by size, the surest first, or those that use up most first.</summary>
    public static IReadOnlyList<Peg> InOrder(IReadOnlyList<Peg> pegs, string? by) => by switch
    {
        "surest" => [.. pegs.OrderByDescending(p => p.Cell.Verdict).ThenByDescending(p => p.Chance).ThenBy(p => p.Cell.Short)],
        "uses-up-most" => [.. pegs.OrderByDescending(p => p.Cell.Verdict != Verdict.No).ThenByDescending(p => p.UsedUp)],
        _ => pegs,
    };

    /// <summary>The tape and the threads as they lie at a desk; 1152 wide, 76 high.</summary>
    public string Lying()
    {
        var each = Wide / Pegs.Count;
        double At(double cm) => 45 + ((cm - From) * (Wide - 90) / (To - From));
        var svg = new StringBuilder($"""<svg class="tape-of-heads only-desk" viewBox="0 0 {Wide:0} 76" aria-hidden="true"><path d="M.5 .5H{Wide - 0.5:0.#}V40.5H.5Z" class="paper" />""");
        svg.Append($"""<text x="8" y="25">{FromThisBagWords.Head}</text>""");
        for (var half = (int)Math.Ceiling(From * 2); half <= To * 2; half++)
        {
            var x = At(half / 2.0);
            svg.Append($"""<path d="M{x:0.#} 0v{(half % 2 == 0 ? 9 : 5)}" />""");
            if (half % 2 == 0 && x < Wide - 44)
            {
                svg.Append($"""<text x="{x + 4:0.#}" y="16">{half / 2}{(half / 2 == (int)Math.Ceiling(From) ? " cm" : "")}</text>""");
            }
        }

        var first = true;
        for (var quarter = (int)Math.Ceiling(From / CmPerInch * 4); quarter <= To / CmPerInch * 4; quarter++)
        {
            var x = At(quarter * CmPerInch / 4);
            svg.Append($"""<path d="M{x:0.#} 40v{(quarter % 4 == 0 ? -9 : -5)}" />""");
            if (quarter % 4 == 0 && x < Wide - 44 && Pegs.All(p => Math.Abs(At((double)p.Head!.Value) - x - 10) > 15))
            {
                svg.Append($"""<text x="{x + 4:0.#}" y="35">{quarter / 4}{(first ? " in" : "")}</text>""");
                first = false;
            }
        }

        for (var i = 0; i < Pegs.Count; i++)
        {
            var (x, hangs) = (At((double)Pegs[i].Head!.Value), (i + 0.5) * each);
            Thread(svg, $"M{x:0.#} 36V40C{x:0.#} 56 {hangs:0.#} 52 {hangs:0.#} 76", Pegs[i].ThreadHex, $"""<circle cx="{x:0.#}" cy="36" r="5" class="eye" />""");
        }

        return svg.Append("</svg>").ToString();
    }

    /// <summary>The same upright, for a phone; 84 wide, 72 a hat.</summary>
    public string Upright()
    {
        var high = Row * Pegs.Count;
        double At(double cm) => 18 + ((cm - UprightFrom) * (high - 36) / (To - UprightFrom));
        var svg = new StringBuilder($"""<svg class="tape-upright only-phone" width="84" height="{high:0}" viewBox="0 0 84 {high:0}" aria-hidden="true"><path d="M.5 .5V{high - 0.5:0.#}H44.5V.5Z" class="paper" />""");
        for (var half = (int)Math.Ceiling(UprightFrom * 2); half <= To * 2; half++)
        {
            var y = At(half / 2.0);
            svg.Append($"""<path d="M0 {y:0.#}h{(half % 2 == 0 ? 9 : 5)}" />""");
            if (half % 2 == 0)
            {
                svg.Append($"""<text x="12" y="{y + 4:0.#}">{half / 2}</text>""");
            }
        }

        for (var i = 0; i < Pegs.Count; i++)
        {
            var (y, hangs) = (At((double)Pegs[i].Head!.Value), (i + 0.5) * Row);
            Thread(svg, $"M36 {y:0.#}C58 {y:0.#} 52 {hangs:0.#} 84 {hangs:0.#}", Pegs[i].ThreadHex, $"""<circle cx="36" cy="{y:0.#}" r="4" class="eye" />""");
        }

        return svg.Append("</svg>").ToString();
    }

    private double From => Math.Floor((double)Pegs[0].Head!.Value) - 1;

    private double UprightFrom => (double)Pegs[0].Head!.Value;

    private double To => (double)Pegs[^1].Head!.Value + 0.1;

    // A thread of the hat's own yarn, outlined so that a pale one shows on a light ground and a dark one on a dark.
    private static void Thread(StringBuilder svg, string path, string? hex, string eye)
    {
        var yarn = hex ?? "var(--pencil)";
        svg.Append($"""{eye}<path d="{path}" style="stroke:color-mix(in srgb,{yarn} 62%,var(--graphite));stroke-width:3.2" /><path d="{path}" style="stroke:{yarn};stroke-width:2" />""");
    }

    private static decimal? HeadOf(Hat hat, string size) => hat switch
    {
        HatDesign design => design.Sizes.FirstOrDefault(s => s.Size == size)?.Head?.Value,
        PrintedHat printed => printed.Sizes.FirstOrDefault(s => s.Size == size)?.Head?.Value,
        _ => null,
    };
}
