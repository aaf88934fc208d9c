using StashMatch.Knitting.Colours;

namespace StashMatch.Pictures;

/// <summary>What each part is painted with.</summary>
internal sealed class Palette(IReadOnlyDictionary<string, PartPaint> paint)
{
    /// <summary>A slip of paper, a card.</summary>
    public const string Paper = "#fbfaf5";

    /// <summary>What is written on paper with.</summary>
    public const string Graphite = "#23262b";

    /// <summary>The yarn's colour; null where it is not known or nothing goes in.</summary>
    public string? Hex(string part) => paint.GetValueOrDefault(part)?.Hex is { } hex && IsColour(hex) ? hex : null;

    public bool IsOpen(string part) => paint.GetValueOrDefault(part) is not { } found || (found.Hex is null && string.IsNullOrWhiteSpace(found.Code));

    /// <summary>Whether anything is said of the part.</summary>
    public bool Has(string part) => paint.ContainsKey(part);

    /// <summary>The share of a short part that lacks yarn, 0 to 1; 0 where it is not told.</summary>
    public double Lacks(string part) => IsShort(part) ? Math.Clamp(paint[part].Lacks, 0, 1) : 0;

    /// <summary>Whether stitches show on it as light rather than shade.</summary>
    public bool IsDark(string part) => YarnColour.TryParse(Hex(part), out var colour, out _) && colour.Lab.L < 42;

    public bool IsShort(string part) => paint.GetValueOrDefault(part) is { Short: true };

    public string Title(string part) =>
        paint.GetValueOrDefault(part)?.Label is { } label && !string.IsNullOrWhiteSpace(label) ? label : $"{part}, no yarn yet";

    /// <summary>The leftover's code, three characters at most; empty where there is none.</summary>
    public string Code(string part) =>
        string.Concat((paint.GetValueOrDefault(part)?.Code ?? "").Trim().EnumerateRunes().Take(3).Select(r => r.ToString()));

    /// <summary>What tells one leftover from another; null where nothing goes in.</summary>
    public string? Leftover(string part) => IsOpen(part) ? null : paint[part].Code ?? paint[part].Hex;

    private static bool IsColour(string hex) => hex.Length is 4 or 7 && hex[0] == '#' && hex.Skip(1).All(char.IsAsciiHexDigit);
}
