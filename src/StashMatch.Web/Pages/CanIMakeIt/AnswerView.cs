using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Pictures;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>One leftover on its tape.</summary>
public sealed record TapeLine(LeftoverAnswer Answer, string Code, IReadOnlyList<TapeStretch> Stretches, Metres Doubt);

/// <summary>What the answer page shows, read off an answer; no sums of its own.</summary>
public sealed class AnswerView
{
    private const int MostNamed = 8;
    private readonly Dictionary<string, string> _codes;

    public AnswerView(Answer answer, IReadOnlyDictionary<string, string> codes)
    {
        Answer = answer ?? throw new ArgumentNullException(nameof(answer));
        _codes = new(codes, StringComparer.Ordinal);
        Words = new Words(answer);
        Numbers = answer.Parts.Select((p, i) => (p.Part.Name, i + 1)).ToDictionary(p => p.Name, p => p.Item2, StringComparer.Ordinal);
        var byId = answer.Leftovers.ToDictionary(l => l.Leftover.Id, l => l.Leftover, StringComparer.Ordinal);
        Paint = answer.Parts.ToDictionary(
            p => p.Part.Name,
            p =>
            {
                var leftover = p.From is { } f ? byId[f.Leftover] : null;
                var label = leftover is null ? $"{p.Part.Name}, nothing goes in" : $"{p.Part.Name}, {leftover.Name}";
                return new PartPaint(leftover?.Colour?.Hex, leftover is null ? null : CodeOf(leftover.Id), label, p.Short.Millimetres > 0, p.Short.Millimetres > 0 ? (double)(p.Short.Value / p.Need.Value) : 0);
            },
            StringComparer.Ordinal);
        Tapes = [.. answer.Leftovers.Where(l => l.Used.Millimetres > 0).OrderBy(l => FirstUse(l.Leftover.Id)).Select(ToLine)];
        Scale = TapeScale.For(Tapes.Select(t => t.Answer.Leftover.Held + t.Doubt).Concat(Unfilled.Select(p => p.Need)).Concat(
            answer.Parts.Where(p => p.From is not null && p.Short.Millimetres > 0).Select(p => byId[p.From!.Leftover].Held + p.Short)));
    }

    public Answer Answer { get; }

    /// <summary>The allowance it was asked with.</summary>
    public decimal AllowancePercent { get; init; } = 10;

    public Words Words { get; }

    /// <summary>Each part's number in knitting order.</summary>
    public IReadOnlyDictionary<string, int> Numbers { get; }

    public IReadOnlyDictionary<string, PartPaint> Paint { get; }

    public IReadOnlyList<TapeLine> Tapes { get; }

    public TapeScale Scale { get; }

    /// <summary>Parts nothing goes in.</summary>
    public IEnumerable<PartAnswer> Unfilled => Answer.Parts.Where(p => p.From is null);

    /// <summary>Stripes in order with what goes in: the strip of colours.</summary>
    public IReadOnlyList<StripColour> Stripes =>
    [
        .. Answer.Parts.Where(p => p.Part.Kind == PartKind.Stripe).Select(p => new StripColour(
            p.Part.Name, p.From is { } f ? Words.Name(f.Leftover) : "open", Paint[p.Part.Name].Code, Paint[p.Part.Name].Hex)),
    ];

    public string Title => $"{Answer.Hat.HatName}, size {Answer.Hat.Size}, {Answer.Hat.Stripes} {(Answer.Hat.Stripes == 1 ? "stripe" : "stripes")}";

    public string CodeOf(string id) => _codes.GetValueOrDefault(id) ?? "";

    /// <summary>How a ratio's source shows in its frame.</summary>
    public static string FrameOf(RatioSource source) => source switch
    {
        RatioSource.Measured => "measured",
        RatioSource.Guessed => "guessed",
        _ => "printed",
    };

    /// <summary>Which leftovers were not asked for this hat, and why: so that none is missed in silence.</summary>
    /// <param name="bag">What the bag holds.</param>
    /// <param name="fibres">Which fibres may go in.</param>
    public IEnumerable<string> LeftOut(IEnumerable<FreeLeftover> bag, FibreChoice fibres)
    {
        ArgumentNullException.ThrowIfNull(bag);
        var others = bag.Where(b => Answer.Leftovers.All(l => l.Leftover.Id != b.Of.Id || l.Used.Millimetres == 0)).ToList();
        var wrong = others.Where(b => !fibres.Allows(b.Free)).ToList();
        var unknown = wrong.Where(b => b.Free.Fibre.Contains(FibreFamily.Unknown)).ToList();
        foreach (var (some, why) in new[]
        {
            (others.Except(wrong).Where(b => b.Free.ClassOrGuess < Answer.Hat.WeightClass), "Thinner than this hat’s yarn"),
            (others.Except(wrong).Where(b => b.Free.ClassOrGuess > Answer.Hat.WeightClass), "Thicker than this hat’s yarn"),
            (wrong.Except(unknown), "Not of the fibres asked for"),
            (unknown, "Of fibres nobody knows"),
        })
        {
            var names = some.Select(b => b.Of.Name).ToList();
            if (names.Count > 0)
            {
                yield return $"{why}: {string.Join(", ", names.Take(MostNamed))}{(names.Count > MostNamed ? $" and {names.Count - MostNamed} more" : "")}.";
            }
        }
    }

    /// <summary>The label as printed; of leftovers held together, what they come to.</summary>
    public static string RatioOf(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return leftover.Id.Contains('+', StringComparison.Ordinal) ? $"{leftover.Ratio.MetresPer100Grams.ToString("0", CultureInfo.InvariantCulture)} m to 100 g" : leftover.Ratio.ToString();
    }

    /// <summary>The parts a leftover goes in, in a sentence.</summary>
    public string GoesIn(TapeLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var parts = line.Stretches.Select(s => Words.The(s.Part)).ToList();
        return parts.Count switch
        {
            0 => "stays whole",
            1 => $"goes in {parts[0]}",
            _ => $"goes in {string.Join(", ", parts.SkipLast(1))} and {parts[^1]}",
        };
    }

    private int FirstUse(string id) => Answer.Parts.Select((p, i) => (p, i)).First(x => x.p.All.Any(a => a.Leftover == id)).i;

    private TapeLine ToLine(LeftoverAnswer answer)
    {
        var stretches = new List<TapeStretch>();
        var at = default(Metres);

        // What is short lies last, so that its gap begins where the leftover ends.
        foreach (var (part, goesIn) in Answer.Parts.OrderBy(p => p.Short.Millimetres > 0).SelectMany(p => p.All.Where(a => a.Leftover == answer.Leftover.Id).Select(a => (p, a.Metres))))
        {
            stretches.Add(new TapeStretch(part.Part.Name, Numbers[part.Part.Name], at, goesIn));
            at += goesIn;
        }

        var leftover = answer.Leftover;
        return new TapeLine(answer, CodeOf(leftover.Id), stretches, leftover.Doubt);
    }
}
