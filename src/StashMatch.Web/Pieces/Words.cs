using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pieces;

/// <summary>What an answer says, in sentences made of its typed facts.</summary>
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

    /// <summary>An arrangement as a choice on a page.</summary>
    /// <param name="arrangement">How the yarns are shared out.</param>
    /// <param name="inTurn">How many colours are repeated, where they are.</param>
    public static string Of(Arrangement arrangement, int inTurn = 3) => arrangement switch
    {
        Arrangement.OwnColours => "every stripe different",
        Arrangement.OneGround => "one main colour",
        Arrangement.OneThread => "one colour through braids and brim",
        Arrangement.InTurn => $"repeat {inTurn} colours",
        _ => "whatever fits",
    };

    /// <summary>Which fibres may be used: what an address says, and what a person reads.</summary>
    public static IReadOnlyList<(string Value, string Text)> Fibres { get; } =
        [("", "any fibre"), ("no-wool", "no wool"), ("only-wool", "wool only"), ("machine-washable", "machine-washable only")];

    /// <summary>A part as a heading: "stripe 3", "braid 1: first colour".</summary>
    public static string Part(string part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return PartNames.Read(part) is { Kind: PartKind.Strand, Number: var braid, Strand: { } strand } ? $"braid {braid}: {Strand(strand)}" : part;
    }

    /// <summary>A part in a sentence: "the brim", "the first colour of braid 1", but "stripe 3".</summary>
    public static string The(string part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return PartNames.Read(part) is { Kind: PartKind.Strand, Number: var braid, Strand: { } strand } ? $"the {Strand(strand)} of braid {braid}"
            : part is PartNames.Brim or PartNames.Crown or PartNames.Seam or PartNames.PomPom ? $"the {part}" : part;
    }

    /// <summary>One of a braid's two yarns: "first colour".</summary>
    public static string Strand(char strand) => strand == 'a' ? "first colour" : "second colour";

    /// <summary>The reason, in sentences a person can check.</summary>
    public string Why() => _answer.Why switch
    {
        Knitting.Matching.Why.Covered => "Every yarn lasts and leaves the reserve you asked for.",
        Knitting.Matching.Why.Allowance when Limiting(_answer.Leftovers) is { } ball =>
            $"There is enough, but {ball.Leftover.Name} leaves about {Shown.OwnAbout(ball.ShortOfReserve)} less in reserve than you asked.",
        Knitting.Matching.Why.Chance or Knitting.Matching.Why.NotCalibrated when Limiting(_answer.Leftovers) is { } ball => Unsure(ball),
        Knitting.Matching.Why.Colour => "There is enough yarn, but neighbouring stripes would look the same.",
        Knitting.Matching.Why.TooFewLeftovers when _answer.TooFew is { } few => TooFewSentence(few),
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
        var where = Terms.Capital(Terms.And([.. alike.Select(Where).Distinct(StringComparer.Ordinal)]));
        var close = warning.CloseCall ? " (a close call)" : "";
        return warning.Code switch
        {
            WarningCode.BrimStretch => $"{first} may stretch in the brim{close}. Try a smaller needle, or 10 to 15 % fewer stitches. "
                + "A firmer rib, a folded brim or a fine wool or nylon strand alongside helps. Or choose another leftover for the brim.",
            WarningCode.BrimRelax => $"{first} loosens with wear in a brim{close}. A smaller needle or a firmer rib helps.",
            WarningCode.BrimUnknownFibre => $"{first}: fibre unknown. If it is not wool, it may stretch in the brim.",
            WarningCode.WeightClassMix =>
                $"{first} is thicker or thinner than the hat’s yarn. {Terms.Capital(Where(warning))} comes out wider or narrower, and pulls.",
            WarningCode.LowContrast => $"{where}: {first} and {second} are hard to tell apart.",
            WarningCode.BraidSameValue => $"{where}: {first} and {second} are equally light, so the braid hardly shows.",
            WarningCode.ColourUnknown when many => $"{all} have no colour yet, so they count as different.",
            WarningCode.ColourUnknown => $"{all} has no colour yet, so it counts as different.",
            WarningCode.CareMix when warning.Leftover == warning.OtherLeftover =>
                $"Only a part of {first} is machine-washable. It would felt unevenly in a machine: wash by hand.",
            WarningCode.CareMix => $"{first} is machine-washable and {second} is not. Part of the hat would felt in a machine: wash by hand.",
            WarningCode.ColourRun => $"{first} is strong and {second} is pale. First rub {first} with a wet white cloth.",
            WarningCode.CoarseScale when many => $"Your scale is too coarse for balls as small as {all}. Use a finer scale if you can.",
            WarningCode.CoarseScale => $"Your scale is too coarse for a ball as small as {all}. Use a finer scale if you can.",
            WarningCode.GaugeOrLabel => $"{first} is unusual at this gauge. Check the gauge, and the label of {first}.",
            WarningCode.LabelOrClass => $"The label of {first} is unusual for its weight class. Check them both.",
            WarningCode.SeamSameColour when warning.Leftover == warning.OtherLeftover => $"First and last stripe meet at the seam, and both are {first}.",
            WarningCode.SeamSameColour => $"First and last stripe meet at the seam: {first} and {second} look the same.",
            _ => many
                ? $"{all} have no label: their lengths may be a quarter out."
                : $"{first} has no label: its length may be a quarter out.",
        };
    }

    public static string Text(CautionCode caution) => caution switch
    {
        CautionCode.SmallParts => "For under threes: no pom-poms, buttons or beads that can come off.",
        CautionCode.Cords => "For children: no ties or long cords.",
        CautionCode.NotForSleep => "For babies: not for sleep, not indoors or in a warm car seat.",
        CautionCode.Floats => "Weave in the braids’ ends. Leave no long floats that catch small fingers.",
        CautionCode.AskFirst => "It holds angora or elastic: ask the wearer first.",
        _ => "Is it for a child? Then no ties or long cords. For under threes, nothing small that can come off.",
    };

    public string Text(Repair repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        return repair.Code switch
        {
            RepairCode.MoveOne => $"Use {Name(repair.Leftover)} for {The(repair.Part!)}.",
            RepairCode.LeaveOut => $"Don’t use {Name(repair.Leftover)}.",
            RepairCode.FewerStripes => $"Knit {Terms.Stripes(repair.Stripes ?? 1)}.",
            RepairCode.FewerRows => $"Knit {repair.Part} {Rows(repair.RowsMoved!.Value)} shorter, and {repair.OtherPart} as much deeper.",
            RepairCode.RePairBraid => $"Use other leftovers for {repair.Part}.",
            RepairCode.DropBraid => $"Leave out {repair.Part} (the stripes get its rows).",
            RepairCode.JoinNearMatch =>
                $"Knit {The(repair.Part ?? "a part")} from {Name(repair.Leftover)}, then {Name(repair.OtherLeftover)}: they nearly match.",
            RepairCode.ShallowerBrim => $"Knit the brim {Shown.Depth(repair.BrimDepth!.Value)} deep{With(repair)}.",
            RepairCode.AnotherArrangement => $"{Arranged(repair)}{With(repair)}.",
            RepairCode.Blend => $"Let neighbouring stripes look alike{With(repair)}.",
            RepairCode.UnfoldBrim => $"Single brim, not folded{With(repair)}.",
            RepairCode.SmallerSize => $"Knit size {repair.Size}{With(repair)}.",
            RepairCode.ThriftierBindOff =>
                $"{(repair.BindOff == EdgeKind.Tubular ? $"Tubular {Edge} instead of stretchy" : $"Plain {Edge} instead of tubular")}{With(repair)}.",
            RepairCode.WeighSwatch => "Weigh a swatch. If you use yarn as most knitters do, it is enough.",
            _ => Buy(repair),
        };
    }

    /// <summary>A leftover's name, or "a new ball".</summary>
    public string Name(string? id) => id is not null && _names.TryGetValue(id, out var name) ? name : "a new ball";

    /// <summary>What the smallest kit's brims are knitted from at worst; null where no hat asked for has a brim.</summary>
    public static string? OfBrim(BrimYarn? yarn) => yarn switch
    {
        BrimYarn.KeepsShape => "Every brim is knitted from yarn that keeps its shape.",
        BrimYarn.Relaxes => "No skein that keeps its shape is long enough for every brim. One brim is knitted from yarn that loosens with wear.",
        BrimYarn.Unknown => "The fibre of the brim’s skein is unknown: it may stretch.",
        BrimYarn.Stretches => "Only yarn that may stretch is long enough for every brim.",
        _ => null,
    };

    private string Edge => _answer.Hat.Plan is { Construction: not Construction.SideToSide } ? "cast-on" : "bind-off";

    // A braid's two yarns are named once, by their braid.
    private static string Where(Warning warning) =>
        (warning.Part, warning.OtherPart) is ({ } a, { } b)
            ? PartNames.Read(a) is { Kind: PartKind.Strand } x && PartNames.Read(b) is { Kind: PartKind.Strand } y && x.Number == y.Number
                ? $"braid {x.Number}"
                : $"{Part(a)} and {Part(b)}"
            : The(warning.Part ?? warning.OtherPart ?? "that part");

    private string Names(IEnumerable<string?> ids) => Terms.And([.. ids.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(Name)]);

    /// <summary>The ball that limits a plan: the one furthest from the reserve asked, else the one least sure to last; null where none is used.</summary>
    public static LeftoverAnswer? Limiting(IEnumerable<LeftoverAnswer> leftovers)
    {
        var used = leftovers.Where(l => l.Used.Millimetres > 0).ToList();
        return used.Where(l => l.ShortOfReserve.Millimetres > 0).MaxBy(l => l.ShortOfReserve.Millimetres) ?? used.MinBy(l => l.OwnSureness);
    }

    private string Unsure(LeftoverAnswer ball)
    {
        if (_answer.ChanceOfEnough < 0.5)
        {
            return "There is enough by the label, but the yarn is more likely to run out.";
        }

        var measure = ball.Leftover.Ratio.Source == RatioSource.Guessed ? $" {ball.Leftover.Name}’s length is a guess: measure off 10 m."
            : _answer.Why == Knitting.Matching.Why.NotCalibrated ? " Weigh a swatch to be surer." : "";
        return $"There is enough, with your reserve, but knitters differ: {ball.Leftover.Name} lasts {Shown.TimesInTen(ball.OwnSureness)}.{measure}";
    }

    private string TooFewSentence(TooFew few)
    {
        var (stripes, brim) = (_answer.Hat.Stripes, _answer.Hat.Parts.Any(p => p.Kind == PartKind.Brim) ? 1 : 0);
        var (wanted, there) = (Terms.Number(few.Wanted), Terms.Number(few.There));
        var parts = $"{Terms.Capital(Terms.Number(stripes))} {(stripes == 1 ? "stripe" : "stripes")}{(brim == 1 ? " and a brim" : "")}";
        return few.Wanted == stripes + brim
            ? $"{parts} need {wanted} colours; you have {there}."
            : $"This hat needs {wanted} yarns of {Shown.OwnAbout(few.Each)} or more; you have {there}.";
    }

    private string ShortSentence()
    {
        var parts = _answer.Parts.Where(p => p.Short.Millimetres > 0).ToList();
        return parts switch
        {
            [{ Part.Kind: PartKind.Brim } brim] when _answer.Leftovers.All(l => l.Leftover.Held < brim.Need) =>
                $"No ball is long enough for {(_answer.Hat.Plan is { BrimFolded: true } ? "a folded brim" : "the brim")} in size {_answer.Hat.Size}.",
            [{ From: null } one] => $"Nothing is left for {The(one.Part.Name)}: it needs {Shown.OwnAbout(one.Need)}.",
            [var one] => $"{Terms.Capital(The(one.Part.Name))} is short by {Shown.OwnAbout(one.Short)}.",
            _ => $"{Terms.Capital(Terms.Number(parts.Count))} parts are short of yarn, by {Shown.OwnAbout(_answer.Short)} in all.",
        };
    }

    private static string Arranged(Repair repair) => repair.Arrangement switch
    {
        Arrangement.OwnColours => "Make every stripe different",
        Arrangement.OneGround => "Use one main colour",
        Arrangement.OneThread => "Use one colour through braids and brim",
        Arrangement.InTurn => $"Repeat {Terms.Number(repair.InTurn ?? 3)} colours",
        _ => "Let any yarn go anywhere",
    };

    private string Buy(Repair repair)
    {
        var yarn = Terms.Short(_answer.Hat.WeightClass);
        var colours = repair.BuyBalls > 1 ? $" in {Terms.Number(repair.BuyBalls.Value)} colours" : "";
        var what = repair.BuyMiniSkeins is { } many ? $"{Terms.Number(many)} 20 g mini-{(many == 1 ? "skein" : "skeins")} of {yarn}"
            : $"{repair.BuyGrams} g of {yarn}";
        return $"Buy {what}{colours}, {(repair.BuyBalls > 1 ? "first " : "")}for {The(repair.Part!)}.";
    }

    private static string Rows(int count) => count == 1 ? "one row" : $"{Terms.Number(count)} rows";

    private static string With(Repair repair) => repair.Stripes is { } n ? $", with {Terms.Stripes(n)}" : "";
}
