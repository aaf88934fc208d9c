using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Questions;

/// <summary>What a question changes about its hat, described by measurements: its brim, its edge, its braids, its stripes' rows.</summary>
public static class ChangedHat
{
    /// <summary>The most rows a stripe can be asked to have.</summary>
    public const int MostRows = 1_000;

    /// <summary>A brim folded by the hat is knitted single.</summary>
    public static readonly Field Brim = Field.Word("brim", "folded", "single");

    /// <summary>The brim's depth, where it is not the hat's own.</summary>
    public static readonly Field BrimDepthCm = Field.Number("brimDepthCm", 1, 20) with { Called = "the brim's depth", Before = ["brimDepth"], GoesWith = ["hat"] };

    /// <summary>How the edge is worked, where it is not as the hat says.</summary>
    public static readonly Field BindOff = Field.Word<EdgeKind>("bindOff") with { GoesWith = ["hat"] };

    /// <summary>Numbers of braids left out.</summary>
    public static readonly Field Without = Field.Whole("without", 1, 24).Several(24) with { GoesWith = ["hat", "stripes"], Says = "Numbers of braids left out." };

    /// <summary>Rows of each stripe.</summary>
    public static readonly Field Rows = Field.Whole("rows", 1, MostRows).Several(24) with
    {
        Called = "depths",
        Before = ["depths"],
        GoesWith = ["hat", "size", "stripes"],
        Must = "must be whole rows for each stripe, such as 28,30,29",
        Says = "Rows of each stripe, from the cast-on or brim.",
    };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [Brim, BrimDepthCm, BindOff, Without, Rows];

    /// <summary>The hat as asked for; messages for what cannot be read or does not fit.</summary>
    internal static Hat Read(Reading asked, Hat hat, string? size, int? stripes)
    {
        var (brim, depth, edge) = (asked.Text(Brim), asked.Number(BrimDepthCm), asked.Word<EdgeKind>(BindOff));
        var (without, rows) = (asked.EachWhole(Without), asked.EachWhole(Rows));
        if (hat is not HatDesign design)
        {
            if (Fields.FirstOrDefault(f => asked.Has(f) && f != Brim && f != BindOff) is { } stray)
            {
                asked.Wrong(stray, "belong to a hat described by measurements");
            }

            return hat;
        }

        if (without.Count > 0)
        {
            design = design with { Braids = design.Braids with { Without = [.. without] } };
        }

        if (design.Brim is { } own)
        {
            own = brim == "single" ? own with { Folded = false } : own;
            own = depth is { } cm ? own with { Depth = Centimetres.From(cm) } : own;
            design = design with { Brim = edge is { } kind ? own with { BindOff = kind } : own };
        }

        return asked.Has(Rows) && !asked.Errors.Any ? WithRows(asked, design, size!, rows, stripes) : design;
    }

    private static HatDesign WithRows(Reading asked, HatDesign design, string size, IReadOnlyList<int> rows, int? stripes)
    {
        if (rows.Count == 0 || (stripes ?? rows.Count) != rows.Count)
        {
            asked.Wrong(Rows, Rows.Must);
        }
        else if (OwnRows.TryPut(design, size, rows, out var own, out var why))
        {
            return own;
        }
        else
        {
            asked.Wrong(Rows, $"do not fit. {why.Reason.TrimEnd('.')}");
        }

        return design;
    }

    /// <summary>What must be said to make one hat of another.</summary>
    internal static Said Say(Said asked, Hat from, Hat to)
    {
        if (from is not HatDesign before || to is not HatDesign after)
        {
            return asked;
        }

        if (before.Brim is { } was && after.Brim is { } now)
        {
            asked = was.Folded == now.Folded ? asked : asked.With(Brim, now.Folded ? "folded" : "single");
            asked = was.Depth == now.Depth ? asked : asked.With(BrimDepthCm, Said.Exact(Said.Number(now.Depth.Value)));
            asked = was.BindOff == now.BindOff ? asked : asked.With(BindOff, Names.Of(now.BindOff));
        }

        if (!before.Braids.Without.SequenceEqual(after.Braids.Without))
        {
            asked = asked.With(Without, Said.Several(after.Braids.Without.Select(b => Said.Number(b)))).With(Rows, Said.Nothing);
        }

        return before.Stripes == after.Stripes || after.Stripes is not { InCentimetres: true } depths
            ? asked
            : asked.With(Rows, Said.Several(depths.Values.Select(d => Said.Number(decimal.Round(d * after.Gauge.RowsPerCm)))));
    }
}
