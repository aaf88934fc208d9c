using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Pictures;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What the answer page shows, read off an answer; no sums of its own.</summary>
public sealed class AnswerView
{
    private readonly Dictionary<string, string> _codes;
    private readonly Dictionary<string, LeftoverAnswer> _byId;
    private readonly List<string> _tiles = [];

    /// <summary>An answer as it is shown.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="codes">The code of each leftover.</param>
    /// <param name="share">Which of its plans is shown; the surest where it has no such one.</param>
    /// <param name="allowancePercent">The reserve asked for, 0 to 100 %.</param>
    public AnswerView(Answer answer, IReadOnlyDictionary<string, string> codes, PlanKind share = PlanKind.Surest, decimal allowancePercent = 10)
    {
        Answer = answer ?? throw new ArgumentNullException(nameof(answer));
        AllowancePercent = allowancePercent;
        _codes = new(codes, StringComparer.Ordinal);
        Shared = answer.Plans.FirstOrDefault(p => p.Kind == share) ?? (answer.Plans.Count > 0 ? answer.Plans[0] : null);
        Parts = Shared?.Parts ?? answer.Parts;
        Leftovers = Shared?.Leftovers ?? answer.Leftovers;
        Words = new Words(answer with { Parts = Parts, Leftovers = Leftovers, ChanceOfEnough = Chance });
        Numbers = Parts.Select((p, i) => (p.Part.Name, i + 1)).ToDictionary(p => p.Name, p => p.Item2, StringComparer.Ordinal);
        _byId = Leftovers.ToDictionary(l => l.Leftover.Id, StringComparer.Ordinal);
        Paint = PaintOf(Parts);
        Rows = HatRow.Of(Parts, a => new RowYarn(_byId[a.Leftover], CodeOf(a.Leftover), TileOf(a.Leftover), a.Metres));
        Ruler = Ruler.For(
            Leftovers.Where(l => l.Used.Millimetres > 0).SelectMany(l => new[] { l.Leftover.Held, l.Used.WithAllowance(allowancePercent) })
                .Concat(Parts.Select(p => p.Need))
                    .Concat(Parts.Where(p => p.From is not null && p.Short.Millimetres > 0).Select(p => _byId[p.From!.Leftover].Leftover.Held + p.Short)));
    }

    public Answer Answer { get; }

    /// <summary>The plan that is shown; null where an answer tells none.</summary>
    public SharedPlan? Shared { get; }

    /// <summary>What goes where in the plan shown, in knitting order.</summary>
    public IReadOnlyList<PartAnswer> Parts { get; }

    /// <summary>What becomes of each leftover in the plan shown.</summary>
    public IReadOnlyList<LeftoverAnswer> Leftovers { get; }

    /// <summary>The chance that the yarn lasts in the plan shown.</summary>
    public double Chance => Shared?.ChanceOfEnough ?? Answer.ChanceOfEnough;

    /// <summary>The allowance it was asked with.</summary>
    public decimal AllowancePercent { get; }

    public Words Words { get; }

    /// <summary>Each part's number in knitting order.</summary>
    public IReadOnlyDictionary<string, int> Numbers { get; }

    public IReadOnlyDictionary<string, PartPaint> Paint { get; }

    /// <summary>One line a part, a braid's two strands together.</summary>
    public IReadOnlyList<HatRow> Rows { get; }

    /// <summary>The one ruler of the page.</summary>
    public Ruler Ruler { get; }

    /// <summary>The colours of the yarns in the order of their tiles.</summary>
    public IReadOnlyList<string?> Tiles => [.. _tiles.Select(id => _byId[id].Leftover.Colour?.Hex)];

    /// <summary>Every leftover that goes in, in the order of its first part.</summary>
    public IReadOnlyList<LeftoverAnswer> Used => [.. _tiles.Select(id => _byId[id])];

    /// <summary>The row that falls short most; null where nothing is short.</summary>
    public HatRow? Shortest => Rows.Where(r => r.Short.Millimetres > 0).MaxBy(r => r.Short.Millimetres);

    /// <summary>
    /// The ball that limits the plan shown: the one furthest from the reserve asked, else the one least sure to last; null where nothing goes in.
    /// </summary>
    public LeftoverAnswer? Limiting => Words.Limiting(Leftovers);

    public string Title => $"{Answer.Hat.HatName}, size {Answer.Hat.Size}, {Answer.Hat.Stripes} {(Answer.Hat.Stripes == 1 ? "stripe" : "stripes")}";

    public string CodeOf(string id) => _codes.GetValueOrDefault(id) ?? "";

    public string NameOf(string id) => _byId.TryGetValue(id, out var found) ? found.Leftover.Name : id;

    /// <summary>The names of the rows a leftover goes in.</summary>
    public IReadOnlyList<string> RowsOf(string id) => [.. Rows.Where(r => r.Yarns.Any(y => y?.Leftover.Id == id)).Select(r => r.Name)];

    /// <summary>The plan shown, as wool.</summary>
    public WoolHat Wool => WoolOf(Parts);

    /// <summary>A plan of this answer as wool.</summary>
    public WoolHat WoolOf(IReadOnlyList<PartAnswer> parts) =>
        HatPictures.HatOf(Answer.Hat, parts, _byId.ToDictionary(l => l.Key, l => l.Value.Leftover, StringComparer.Ordinal));

    /// <summary>How a ratio's source shows in its frame.</summary>
    public static string FrameOf(RatioSource source) => source switch
    {
        RatioSource.Measured => "measured",
        RatioSource.Guessed => "guessed",
        _ => "printed",
    };

    /// <summary>The strands of a row on the ruler.</summary>
    public IReadOnlyList<Strand> StrandsOf(HatRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return [.. row.Yarns.OfType<RowYarn>().Select(y =>
        {
            var held = row.Short.Millimetres > 0 ? y.Takes : y.Takes + y.Answer.Left;
            return new Strand(y.Tile, Ruler.At(y.Takes), Ruler.At(held))
            {
                Short = row.Short.Millimetres > 0,
                Guessed = y.Guessed,
                Wanted = row.Short.Millimetres > 0 ? Ruler.At(y.Takes + row.Short) : y.Answer.ShortOfReserve.Millimetres > 0
                    && RowsOf(y.Leftover.Id).Count == 1 ? Ruler.At(y.Takes.WithAllowance(AllowancePercent)) : null,
            };
        })];
    }

    /// <summary>What every part is drawn with.</summary>
    public IReadOnlyDictionary<string, PartPaint> PaintOf(IReadOnlyList<PartAnswer> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.ToDictionary(
            p => p.Part.Name,
            p =>
            {
                var leftover = p.From is { } f ? _byId[f.Leftover].Leftover : null;
                var label = leftover is null ? $"{Words.Part(p.Part.Name)}, no yarn yet" : $"{Words.Part(p.Part.Name)}, {leftover.Name}";
                return new PartPaint(leftover?.Colour?.Hex, leftover is null ? null : CodeOf(leftover.Id), label, p.Short.Millimetres > 0,
                    p.Short.Millimetres > 0 ? (double)(p.Short.Value / p.Need.Value) : 0);
            },
            StringComparer.Ordinal);
    }

    /// <summary>The label as printed; of leftovers held together, what they come to.</summary>
    public static string RatioOf(Leftover leftover)
    {
        ArgumentNullException.ThrowIfNull(leftover);
        return leftover.Id.Contains('+', StringComparison.Ordinal)
            ? $"{leftover.Ratio.MetresPer100Grams.ToString("0", CultureInfo.InvariantCulture)} m to 100 g" : leftover.Ratio.ToString();
    }

    /// <summary>Stripes in order with their yarns: the strip of colours.</summary>
    public IReadOnlyList<StripColour> Stripes =>
    [
        .. Parts.Where(p => p.Part.Kind == PartKind.Stripe).Select(p => new StripColour(
            p.Part.Name, p.From is { } f ? NameOf(f.Leftover) : CanIMakeItWords.NoYarn, Paint[p.Part.Name].Code, Paint[p.Part.Name].Hex)),
    ];

    /// <summary>Why a leftover is not used.</summary>
    public enum NotUsedWhy
    {
        /// <summary>It stays in the bag.</summary>
        Stays,

        /// <summary>It is thinner than the hat's yarn.</summary>
        Thinner,

        /// <summary>It is thicker than the hat's yarn.</summary>
        Thicker,

        /// <summary>It is not of the fibres asked for.</summary>
        WrongFibre,

        /// <summary>Nobody said what it is spun of.</summary>
        UnknownFibre,

        /// <summary>The knitter said so.</summary>
        Said,
    }

    /// <summary>Which leftovers are not used, and why: so that none is missed in silence.</summary>
    /// <param name="bag">What the bag holds.</param>
    /// <param name="fibres">Which fibres may go in.</param>
    /// <param name="back">What the knitter does not want in this hat.</param>
    public IEnumerable<(NotUsedWhy Why, IReadOnlyList<FreeLeftover> Some)> NotUsed(IEnumerable<FreeLeftover> bag, FibreChoice fibres,
        IReadOnlyList<string> back)
    {
        ArgumentNullException.ThrowIfNull(bag);
        ArgumentNullException.ThrowIfNull(back);
        NotUsedWhy Why(FreeLeftover l) =>
            back.Contains(l.Of.Id, StringComparer.Ordinal) ? NotUsedWhy.Said
            : !fibres.Allows(l.Free) ? l.Free.Fibre.Contains(FibreFamily.Unknown) ? NotUsedWhy.UnknownFibre : NotUsedWhy.WrongFibre
            : l.Free.ClassOrGuess < Answer.Hat.WeightClass ? NotUsedWhy.Thinner
            : l.Free.ClassOrGuess > Answer.Hat.WeightClass ? NotUsedWhy.Thicker : NotUsedWhy.Stays;
        return bag.Where(b => !_byId.TryGetValue(b.Of.Id, out var l) || l.Used.Millimetres == 0).GroupBy(Why).OrderBy(g => g.Key)
            .Select(g => (g.Key, (IReadOnlyList<FreeLeftover>)[.. g]));
    }

    private int TileOf(string id)
    {
        var at = _tiles.IndexOf(id);
        if (at < 0)
        {
            _tiles.Add(id);
            at = _tiles.Count - 1;
        }

        return at;
    }
}
