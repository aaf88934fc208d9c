using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pieces;

/// <summary>Makes sentences of an answer's typed facts.</summary>
public sealed class Words
{
    private readonly Answer _answer;
    private readonly Dictionary<string, string> _names;

    public Words(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        _answer = answer;
        _names = answer.Leftovers.ToDictionary(l => l.Leftover.Id, l => l.Leftover.Name, StringComparer.Ordinal);
    }

    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Yes => "yes",
        Verdict.OnlyJust => "only just",
        _ => "no",
    };

    public static string Of(Arrangement arrangement) => arrangement switch
    {
        Arrangement.OwnColours => "own colours",
        Arrangement.OneGround => "one ground",
        Arrangement.OneThread => "one thread through",
        Arrangement.InTurn => "in turn",
        _ => "as it falls",
    };

    /// <summary>Which fibres may go in: what an address says, and what a person reads.</summary>
    public static IReadOnlyList<(string Value, string Text)> Fibres { get; } =
        [("", "any fibre"), ("no-wool", "no wool"), ("only-wool", "wool alone"), ("machine-washable", "machine-washable alone")];

    /// <summary>A part in a sentence: "the brim", but "stripe 3".</summary>
    public static string The(string part) => part is PartNames.Brim or PartNames.Crown or PartNames.Seam ? $"the {part}" : part;

    /// <summary>The reason in one sentence.</summary>
    public string Why() => _answer.Why switch
    {
        Knitting.Matching.Why.Covered => "Everything is covered with the allowance.",
        Knitting.Matching.Why.Allowance => $"Everything is covered, but {Name(_answer.WeakestLeftover)} misses the allowance by {Shown.BothUp(_answer.ShortForAllowance)}.",
        Knitting.Matching.Why.NotCalibrated => LessLikely() + "Your own use is not known yet; weigh a swatch to be sure.",
        Knitting.Matching.Why.Chance => LessLikely() + $"{Name(_answer.WeakestLeftover)} is the tightest.",
        Knitting.Matching.Why.Colour => $"There is yarn enough, but next-door colours would read as one. Short by {Shown.BothUp(_answer.Short)} as it stands.",
        Knitting.Matching.Why.TooFewLeftovers => $"{_answer.TooFew!.Wanted} different leftovers of at least {Shown.BothUp(_answer.TooFew.Each)} are wanted; {_answer.TooFew.There} {(_answer.TooFew.There == 1 ? "is" : "are")} there.",
        _ => ShortSentence(),
    };

    /// <summary>All warnings as a page shows them: like ones said once.</summary>
    public IReadOnlyList<string> Notices() =>
    [
        .. _answer.Warnings.GroupBy(w => w.Code switch
        {
            WarningCode.BraidSameValue or WarningCode.LowContrast => $"{w.Code} {Names([w.Leftover, w.OtherLeftover])}",
            WarningCode.CoarseScale or WarningCode.GuessedRatio or WarningCode.ColourUnknown => $"{w.Code}",
            _ => $"{w.Code} {w.Part} {w.Leftover} {w.OtherPart} {w.OtherLeftover}",
        }, StringComparer.Ordinal).Select(g => Text(g.First(), [.. g])),
    ];

    public string Text(Warning warning)
    {
        ArgumentNullException.ThrowIfNull(warning);
        return Text(warning, [warning]);
    }

    private string Text(Warning warning, IReadOnlyList<Warning> alike)
    {
        var (first, second) = (Name(warning.Leftover), Name(warning.OtherLeftover));
        var (all, many) = (Names(alike.Select(w => w.Leftover)), alike.Select(w => w.Leftover).Distinct(StringComparer.Ordinal).Count() > 1);
        var where = Capital(Listed([.. alike.Select(Where).Distinct(StringComparer.Ordinal)]));
        var close = warning.CloseCall ? " It is a close call." : "";
        return warning.Code switch
        {
            WarningCode.BrimStretch => $"{first} is prone to stretching in a brim.{close} Cures: a smaller needle, 10-15 % fewer stitches, a firmer rib or a doubled brim, a fine wool or nylon strand alongside, or another leftover for the brim.",
            WarningCode.BrimRelax => $"{first} relaxes with wear in a brim.{close} A smaller needle or a firmer rib helps.",
            WarningCode.BrimUnknownFibre => $"Nobody knows what {first} is spun of. If it is not wool, the brim may not keep its shape.",
            WarningCode.WeightClassMix => $"{first} is of another thickness than the hat: the part it goes in comes out narrower or wider and pulls.",
            WarningCode.LowContrast => $"{where}: {first} and {second} are close and hard to tell apart.",
            WarningCode.BraidSameValue => $"{where}: {first} and {second} are as light as each other, so a braid of them hardly shows.",
            WarningCode.ColourUnknown => $"The colour of {all} is not known; {(many ? "they are" : "it is")} taken to differ.",
            WarningCode.CareMix when warning.Leftover == warning.OtherLeftover => $"{first} holds machine-washable and untreated wool together: a machine wash felts it unevenly. Wash by hand.",
            WarningCode.CareMix => $"{first} is machine-washable and {second} is not: a machine wash felts some parts only. Wash by hand.",
            WarningCode.ColourRun => $"{first} is strong and {second} pale: try a wet white cloth on {first} first.",
            WarningCode.CoarseScale => $"One step of the scale is much against what is on or left of {all}. Weigh {(many ? "them" : "it")} on a finer scale if you can.",
            WarningCode.GaugeOrLabel => $"{first} and this gauge do not go together as usual. Is the gauge right, and the label of {first}?",
            WarningCode.LabelOrClass => $"The label of {first} is far from what is usual for its weight class. Is one of them mistyped?",
            WarningCode.SeamSameColour => $"The first and the last stripe meet at the seam: {first}{(warning.Leftover == warning.OtherLeftover ? " is in both" : $" and {second} look the same")}.",
            _ => many
                ? $"The label ratios of {all} are guesses, so their metres may be off by a quarter."
                : $"The label ratio of {first} is a guess, so its metres may be off by a quarter.",
        };
    }

    public static string Text(CautionCode caution) => caution switch
    {
        CautionCode.SmallParts => "For under threes: no pom-poms, buttons or beads that can come off.",
        CautionCode.Cords => "For children: no ties or long cords.",
        CautionCode.NotForSleep => "For babies: not for sleep, not indoors or in a warm car seat.",
        CautionCode.Floats => "Weave in the braids' ends and leave no long floats that catch small fingers.",
        CautionCode.AskFirst => "Angora or elastic in it: ask first whether the wearer can bear it.",
        _ => "Is it for a child? Then no ties or long cords, and for under threes nothing small that can come off.",
    };

    public string Text(Repair repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        return repair.Code switch
        {
            RepairCode.MoveOne => $"Let {Name(repair.Leftover)} go in {The(repair.Part!)}.",
            RepairCode.LeaveOut => $"Leave {Name(repair.Leftover)} in the bag.",
            RepairCode.FewerStripes => $"Knit {repair.Stripes} {(repair.Stripes == 1 ? "stripe" : "stripes")}.",
            RepairCode.FewerRows => $"Knit {repair.Part} {Number(repair.RowsMoved!.Value)} {(repair.RowsMoved == 1 ? "row" : "rows")} shorter and {repair.OtherPart} as much deeper.",
            RepairCode.RePairBraid => $"Cut the strands of {repair.Part} from other leftovers.",
            RepairCode.DropBraid => $"Leave {repair.Part} out; its rows go to the stripes.",
            RepairCode.JoinNearMatch => $"Knit {The(repair.Part ?? "a part")} from {Name(repair.Leftover)} and {Name(repair.OtherLeftover)}, one after the other: they nearly match.",
            RepairCode.ShallowerBrim => $"Knit the brim {Shown.Depth(repair.BrimDepth!.Value)} deep{With(repair)}.",
            RepairCode.AnotherArrangement when repair.Arrangement == Arrangement.InTurn => $"Let {Number(repair.InTurn ?? 3)} leftovers take the stripes in turn{With(repair)}.",
            RepairCode.AnotherArrangement => $"Arrange them {(repair.Arrangement == Arrangement.OwnColours ? "in " : "")}{Of(repair.Arrangement!.Value)}{With(repair)}.",
            RepairCode.Blend => $"Let next-door colours blend{With(repair)}.",
            RepairCode.WiderBrimSet => $"Take {Name(repair.Leftover)} for the brim, though it keeps its shape less well.",
            RepairCode.UnfoldBrim => $"Knit the brim single instead of folded{With(repair)}.",
            RepairCode.SmallerSize => $"Knit size {repair.Size}{With(repair)}.",
            RepairCode.ThriftierBindOff => $"Work the edge the {(repair.BindOff == Knitting.Hats.EdgeKind.Tubular ? "tubular" : "ordinary")} way{With(repair)}.",
            RepairCode.WeighSwatch => "Weigh a swatch: if you use yarn as most do, it is enough.",
            _ => Buy(repair),
        };
    }

    /// <summary>A leftover's name, or "a bought ball".</summary>
    public string Name(string? id) => id is not null && _names.TryGetValue(id, out var name) ? name : "a bought ball";

    // A braid's two strands are named once, by their braid.
    private static string Where(Warning warning) =>
        (warning.Part, warning.OtherPart) is ({ } a, { } b)
            ? PartNames.Read(a) is { Kind: PartKind.Strand } x && PartNames.Read(b) is { Kind: PartKind.Strand } y && x.Number == y.Number ? $"braid {x.Number}" : $"{a} and {b}"
            : warning.Part ?? warning.OtherPart ?? "parts";

    private string Names(IEnumerable<string?> ids) => Listed([.. ids.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(Name)]);

    private static string Listed(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "",
        1 => items[0],
        _ when items.Any(i => i.Contains(" and ", StringComparison.Ordinal)) => string.Join("; ", items),
        _ => $"{string.Join(", ", items.SkipLast(1))} and {items[^1]}",
    };

    private string LessLikely() => _answer.ChanceOfEnough < 0.5
        ? "Covered, but more likely to run out than not. "
        : "Everything is covered, but not surely enough. ";

    private string ShortSentence()
    {
        var parts = _answer.Parts.Where(p => p.Short.Millimetres > 0).ToList();
        var which = parts.Count switch
        {
            0 => "Something",
            1 => Capital(The(parts[0].Part.Name)),
            _ => $"{Capital(Number(parts.Count))} parts",
        };
        return $"{which} {(parts.Count == 1 ? "lacks" : "lack")} yarn: short by {Shown.BothUp(_answer.Short)}.";
    }

    private string Buy(Repair repair)
    {
        var what = repair.BuyBalls > 1 ? $"{Number(repair.BuyBalls.Value)} balls, {repair.BuyGrams} g in all" : $"{repair.BuyGrams} g";
        var of = WeightClasses.Name(_answer.Hat.WeightClass).ToLowerInvariant();
        var minis = repair.BuyMiniSkeins is { } many ? many == 1 ? ", a mini-skein of 20 g" : $", {Number(many)} mini-skeins of 20 g" : "";
        return $"Buy {what} ({Shown.Both(repair.BuyMetres ?? default)}{minis}) of {of} yarn, first for {The(repair.Part!)}.";
    }

    private static string With(Repair repair) => repair.Stripes is { } n ? $", with {n} {(n == 1 ? "stripe" : "stripes")}" : "";

    private static string Number(int n) => n switch
    {
        2 => "two",
        3 => "three",
        4 => "four",
        5 => "five",
        6 => "six",
        7 => "seven",
        8 => "eight",
        9 => "nine",
        10 => "ten",
        _ => $"{n}",
    };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What the smallest kit's brims are knitted from at worst; null where no hat asked for has a brim.</summary>
    public static string? OfBrim(BrimYarn? yarn) => yarn switch
    {
        BrimYarn.KeepsShape => "Every brim is knitted from yarn that keeps its shape.",
        BrimYarn.Relaxes => "No skein that keeps its shape is long enough for every brim: one is knitted from yarn that relaxes with wear.",
        BrimYarn.Unknown => "What the brim’s skein is spun of is not told, so whether it keeps its shape could not be looked at.",
        BrimYarn.Stretches => "Only yarn that is prone to stretching is long enough for every brim.",
        _ => null,
    };
}
