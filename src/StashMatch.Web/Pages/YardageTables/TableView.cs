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
        new("stripe", "a stripe", "A stripe takes", r => r.Largest(PartKind.Stripe)?.Figure),
        new("strand", "a braid's strand", "Each strand of a braid takes", r => r.Largest(PartKind.Strand)?.Figure),
        new("brim", "the brim", "The brim takes", r => r.Largest(PartKind.Brim)?.Figure),
        new("crown", "the crown", "The crown takes", r => r.Largest(PartKind.Crown)?.Figure),
        new("seam", "seam and gathering", "Seam and gathering thread take", r => r.Largest(PartKind.Seam)?.Figure),
        new("pom_pom", "the pom-pom", "The pom-pom takes", r => r.Largest(PartKind.PomPom)?.Figure),
        new("all", "all of it", "All of it takes", r => r.Cannot is null ? r.Whole : null),
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

    /// <summary>Where the factor comes from that estimated figures are reckoned with; null where it is not the testers'.</summary>
    public string? Reckoned { get; private set; }

    /// <summary>The same table, its hat reckoned with what testers said of it.</summary>
    public TableView With(KnownCalibration taken)
    {
        ArgumentNullException.ThrowIfNull(taken);
        Reckoned = $"What is estimated is reckoned with {taken.Calibration.Factor.ToString("0.00", CultureInfo.InvariantCulture)} times the {(Measured ? "bare metres" : "printed lengths")}, from {taken.From}.";
        return this;
    }

    public IEnumerable<YardageRow> RowsOf(string size) => Rows.Where(r => r.Size == size);

    /// <summary>"Size C, for a head of 52 cm / 20½ in".</summary>
    public string SizeTitle(string size) => HeadOf(size) is { } head ? $"Size {size}, for a head of {Shown.Depth(head)}" : $"Size {size}";

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
            1 => Word(kinds[0].Key),
            _ => string.Join("; ", kinds.Select(g => g.Key == FigureSource.Estimated ? "the rest estimated" : $"{Word(g.Key)}: {string.Join(", ", g.Select(p => p.Piece.Name))}")),
        };
    }

    public static string Word(FigureSource source) => source switch
    {
        FigureSource.Tester => "testers",
        FigureSource.Knitted => "knitted",
        _ => "estimated",
    };

    private IEnumerable<TableColumn> Letters() => Rows.SelectMany(r => r.Pieces).Select(p => p.Piece.Name).Distinct(StringComparer.Ordinal).Select(letter =>
        new TableColumn($"yarn_{letter}", $"yarn {letter}", $"Yarn {letter} takes", r => r.Pieces.FirstOrDefault(p => p.Piece.Name == letter).Figure));
}
