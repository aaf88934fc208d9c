using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>A kit's skeins at one weight, those of the hat's weight class, in the matcher's order.</summary>
internal sealed class Supply
{
    private readonly bool[] _mayTouch;
    private readonly Dictionary<string, int> _at;

    public Supply(IReadOnlyList<Leftover> skeins, WeightClass weightClass)
    {
        Bins = [.. skeins.Where(l => l.ClassOrGuess == weightClass && l.Held.Millimetres > 0)
            .OrderByDescending(l => l.Held).ThenBy(l => l.Colour?.Hex, StringComparer.Ordinal).ThenBy(l => l.Id, StringComparer.Ordinal)];
        _at = Bins.Select((b, i) => (b.Id, i)).ToDictionary(b => b.Id, b => b.i, StringComparer.Ordinal);
        Held = [.. Bins.Select(b => b.Held.Millimetres)];
        BrimWidth = [.. Bins.Select(b => BrimSet.WidthOf(b.Brim))];
        Widths = [.. BrimWidth.Distinct().Order()];
        _mayTouch = new bool[Bins.Length * Bins.Length];
        for (var a = 0; a < Bins.Length; a++)
        {
            for (var b = 0; b < Bins.Length; b++)
            {
                _mayTouch[(a * Bins.Length) + b] = a != b
                    && (Bins[a].Colour is not { } x || Bins[b].Colour is not { } y || ColourDifference.Ciede2000(x.Lab, y.Lab) >= ColourRule.ReadsAsOne);
            }
        }
    }

    public Leftover[] Bins { get; }

    public long[] Held { get; }

    /// <summary>The narrowest brim set each skein is in, 0 to 3.</summary>
    public int[] BrimWidth { get; }

    /// <summary>The widths there are, narrowest first.</summary>
    public int[] Widths { get; }

    /// <summary>Where the skein with an id stands.</summary>
    public int At(string id) => _at[id];

    public bool MayTouch(int a, int b) => _mayTouch[(a * Bins.Length) + b];

    public long[] CapacityAt(decimal rungPercent) =>
        rungPercent == 0 ? Held : [.. Held.Select(h => (long)Math.Floor(h * 100m / (100m + rungPercent)))];
}
