using System.Diagnostics.CodeAnalysis;

namespace StashMatch.Knitting.Colours;

/// <summary>A plain word for a colour, and the colour it stands for [ours].</summary>
/// <param name="Name">Such as "blue-grey".</param>
/// <param name="Colour">What it stands for.</param>
public sealed record NamedColour(string Name, YarnColour Colour)
{
    private const int Shortlist = 5;
    private const int MostCharacters = 60;

    /// <summary>All of them, greys first, then round the circle.</summary>
    public static IReadOnlyList<NamedColour> All { get; } = Listed("colour-names.json");

    /// <summary>Further words that are read, near to some of <see cref="All"/>; no colour is called by them.</summary>
    public static IReadOnlyList<NamedColour> Also { get; } = Listed("colour-words.json");

    private static readonly OkLab[] Places = [.. All.Select(n => n.Colour.OkLab)];

    /// <summary>The one that looks nearest to a colour: of the five nearest in OKLab, the nearest by CIEDE2000.</summary>
    public static NamedColour Nearest(YarnColour colour)
    {
        var sought = colour.OkLab;
        Span<int> near = stackalloc int[Shortlist];
        Span<double> apart = stackalloc double[Shortlist];
        apart.Fill(double.MaxValue);
        for (var i = 0; i < Places.Length; i++)
        {
            var (l, a, b) = (Places[i].L - sought.L, Places[i].A - sought.A, Places[i].B - sought.B);
            var (index, distance) = (i, (l * l) + (a * a) + (b * b));
            for (var slot = 0; slot < Shortlist; slot++)
            {
                if (distance < apart[slot])
                {
                    (near[slot], index) = (index, near[slot]);
                    (apart[slot], distance) = (distance, apart[slot]);
                }
            }
        }

        var (best, least, lab) = (near[0], double.MaxValue, colour.Lab);
        foreach (var i in near)
        {
            var looks = ColourDifference.Ciede2000(All[i].Colour.Lab, lab);
            (best, least) = looks < least ? (i, looks) : (best, least);
        }

        return All[best];
    }

    /// <summary>Reads a name or a word people type for a colour, with light, pale, bright, dark or deep before it, or a code such as "#5B7A3A".</summary>
    public static bool TryRead(string? text, out YarnColour colour, [NotNullWhen(false)] out string? message)
    {
        (colour, message) = (default, null);
        var typed = (text ?? "").Trim();
        if (YarnColour.TryParse(typed, out colour, out _) || (typed.Length <= MostCharacters && ColourWords.TryRead(typed, out colour)))
        {
            return true;
        }

        message = "must be a colour such as cream, dark green or light blue, or a code such as #5B7A3A";
        return false;
    }

    /// <summary>What each row of a file of names stands for.</summary>
    internal static NamedColour[] Listed(string file) =>
    [
        .. SeedData.Rows<Row>(file).Select(r => YarnColour.TryParse(r.Colour, out var colour, out var wrong)
            ? new NamedColour(r.Name, colour)
            : throw new InvalidOperationException($"{r.Name} {wrong}")),
    ];

    private sealed record Row(string Name, string Colour, string Source);
}
