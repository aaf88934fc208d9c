using StashMatch.Knitting.Quantities;

namespace StashMatch.Web.Pieces;

/// <summary>The one scale of a page's tapes: metres above, yards below.</summary>
public sealed record TapeScale(decimal FullMetres)
{
    private static readonly decimal[] Steps = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000, 10000, 50000];

    /// <summary>A scale on which the longest of these has room.</summary>
    public static TapeScale For(IEnumerable<Metres> lengths)
    {
        var longest = lengths.Select(l => l.Value).DefaultIfEmpty(10).Max();
        return new TapeScale(Math.Max(5, longest * 1.02m));
    }

    /// <summary>Where a length lies, in per cent of the tape.</summary>
    public string At(decimal metres) => Shown.Css(Math.Clamp(metres / FullMetres * 100, 0, 100)) + "%";

    /// <summary>Marks in metres, at most six.</summary>
    public IEnumerable<(string At, string Text)> MetreMarks => Marks(FullMetres).Select(m => (At(m), $"{m:0}"));

    /// <summary>Marks in yards, at most six.</summary>
    public IEnumerable<(string At, string Text)> YardMarks => Marks(FullMetres / Metres.PerYard).Select(y => (At(y * Metres.PerYard), $"{y:0}"));

    private static IEnumerable<decimal> Marks(decimal full)
    {
        var step = Array.Find(Steps, s => full / s <= 6) is > 0 and var found ? found : Steps[^1];
        for (var mark = step; mark < full * 0.93m; mark += step)
        {
            yield return mark;
        }
    }
}

/// <summary>A stretch of a leftover on the tape that goes in a part.</summary>
/// <param name="Part">The part's name.</param>
/// <param name="Number">Its number in knitting order.</param>
/// <param name="From">Where it begins.</param>
/// <param name="Length">How long it is.</param>
public sealed record TapeStretch(string Part, int Number, Metres From, Metres Length);
