using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>A table as every form of it shows it, read off the rows; no sums of its own.</summary>
public sealed class TableView
{
    private static readonly TableColumn[] All =
    [
        new("stripe", TableWords.Stripe, TableWords.StripeTakes, r => r.Largest(PartKind.Stripe)?.Figure),
        new("strand", TableWords.Strand, TableWords.StrandTakes, r => r.Largest(PartKind.Strand)?.Figure),
        new("brim", TableWords.Brim, TableWords.BrimTakes, r => r.Largest(PartKind.Brim)?.Figure),
        new("crown", TableWords.Crown, TableWords.CrownTakes, r => r.Largest(PartKind.Crown)?.Figure),
        new("seam", TableWords.Seam, TableWords.SeamTakes, r => r.Largest(PartKind.Seam)?.Figure),
        new("pom_pom", TableWords.PomPom, TableWords.PomPomTakes, r => r.Largest(PartKind.PomPom)?.Figure),
        new("all", TableWords.WholeHat, TableWords.WholeHatTakes, r => r.Cannot is null ? r.Whole : null),
    ];

    public TableView(Hat hat, IReadOnlyList<string> sizes, IReadOnlyList<int>? counts, decimal allowance, LabelRatio label, bool labelTyped, TesterJudgement? judged)
    {
        (Hat, Sizes, Allowance, Label, LabelTyped, Judged) = (hat, sizes, allowance, label, labelTyped, judged);

        // A designer asks beyond the usual counts; what the hat's own range forbids is no reason to leave a row out.
        var open = hat is HatDesign { Stripes: null } design ? design with { StripeCounts = null } : hat;
        Rows = Yardage.Table(open, sizes, counts, allowance, judged?.Weighed);
        Asked = open;
        Columns =
        [
            .. All.SkipLast(1).Where(c => Rows.Any(r => c.Of(r) is not null)),
            .. hat is PrintedHat ? Letters() : [],
            All[^1],
        ];
    }

    public Hat Hat { get; }

    /// <summary>The hat without its own range of counts.</summary>
    public Hat Asked { get; }

    public IReadOnlyList<string> Sizes { get; }

    public decimal Allowance { get; }

    public LabelRatio Label { get; }

    public bool LabelTyped { get; }

    public TesterJudgement? Judged { get; }

    public IReadOnlyList<YardageRow> Rows { get; }

    public IReadOnlyList<TableColumn> Columns { get; }

    public bool Measured => Hat is HatDesign;

    public string AllowanceText => Allowance.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Where the factor comes from that estimates use; null where it is not the testers'.</summary>
    public string? FactorFrom { get; private set; }

    /// <summary>The same table, its hat counted with what testers said of it.</summary>
    public TableView With(KnownCalibration taken)
    {
        ArgumentNullException.ThrowIfNull(taken);
        FactorFrom = TableWords.EstimatesAre(taken.Calibration.Factor, Measured, taken.From);
        return this;
    }

    public IEnumerable<YardageRow> RowsOf(string size) => Rows.Where(r => r.Size == size);

    /// <summary>"Size C, for a head of 52 cm / 20½ in".</summary>
    public string SizeTitle(string size) => TableWords.Size(size, HeadOf(size) is { } head ? Shown.Depth(head) : null);

    public Centimetres? HeadOf(string size) => Hat switch
    {
        HatDesign design => design.Sizes.First(s => s.Size == size).Head,
        PrintedHat printed => printed.Sizes.First(s => s.Size == size).Head,
        _ => null,
    };

    /// <summary>Whole units, up.</summary>
    public static string Lengths(Figure figure) => Shown.OwnFirst($"{figure.WholeMetres} m", $"{figure.WholeYards} yd");

    public string Grams(Figure figure) => figure.GramsAt(Label).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>Where a row's figures come from: "estimated", "testers", "testers: brim, stripe 2; the rest estimated".</summary>
    public static string SourceOf(YardageRow row)
    {
        var kinds = row.Pieces.GroupBy(p => p.Figure.Source).OrderByDescending(g => g.Key).ToList();
        return kinds.Count switch
        {
            0 => "",
            1 => TableWords.Source(kinds[0].Key),
            _ => string.Join("; ", kinds.Select(g => g.Key == FigureSource.Estimated ? TableWords.RestEstimated : $"{TableWords.Source(g.Key)}: {string.Join(", ", g.Select(p => Words.Part(p.Piece.Name)))}")),
        };
    }

    private IEnumerable<TableColumn> Letters() => Rows.SelectMany(r => r.Pieces).Select(p => p.Piece.Name).Distinct(StringComparer.Ordinal).Select(letter =>
        new TableColumn($"yarn_{letter}", TableWords.Yarn(letter), TableWords.YarnTakes(letter), r => r.Pieces.FirstOrDefault(p => p.Piece.Name == letter).Figure));
}
