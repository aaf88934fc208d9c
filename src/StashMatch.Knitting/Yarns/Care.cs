using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace StashMatch.Knitting.Yarns;

/// <summary>How hard a wash may be, mildest first.</summary>
public enum WashAction
{
    /// <summary>By hand.</summary>
    Hand,

    /// <summary>Very mild.</summary>
    VeryMild,

    /// <summary>Mild.</summary>
    Mild,

    /// <summary>Normal.</summary>
    Normal,
}

/// <summary>How it may be dried, mildest first.</summary>
public enum Drying
{
    /// <summary>Lying flat.</summary>
    Flat,

    /// <summary>On a line.</summary>
    Line,

    /// <summary>Tumbled at 60 °C.</summary>
    Tumble60,

    /// <summary>Tumbled at 80 °C.</summary>
    Tumble80,
}

/// <summary>How a yarn may be washed and dried, in words; what the label does not say is null.</summary>
/// <remarks>A treatment milder than the label is always acceptable (ISO 3758, GINETEX practice) [practice]; taking the mildest of each column is [ours].</remarks>
public sealed partial record Care
{
    /// <summary>Must not be washed at all.</summary>
    public bool DoNotWash { get; init; }

    /// <summary>Highest wash temperature, °C.</summary>
    public int? Degrees { get; init; }

    /// <summary>How hard the wash may be.</summary>
    public WashAction? Action { get; init; }

    /// <summary>How it may be dried.</summary>
    public Drying? Drying { get; init; }

    /// <summary>Whether bleach is ruled out.</summary>
    public bool NoBleach { get; init; }

    /// <summary>What nobody knows is washed by hand at 30 °C, unbleached, dried flat.</summary>
    public static Care Unknown { get; } = new() { Degrees = 30, Action = WashAction.Hand, Drying = Yarns.Drying.Flat, NoBleach = true };

    /// <summary>Reads "40 C normal, tumble 60", "hand wash, flat", "do not wash", "unknown".</summary>
    public static bool TryParse(string? text, [NotNullWhen(true)] out Care? care, [NotNullWhen(false)] out string? message)
    {
        (care, message) = (null, null);
        var typed = (text ?? "").Trim().ToLowerInvariant();
        if (typed is "" or "unknown")
        {
            care = Unknown;
            return true;
        }

        if (typed is "do not wash")
        {
            care = new Care { DoNotWash = true };
            return true;
        }

        var found = Shape().Match(typed);
        if (!found.Success)
        {
            message = "type it as 30 C mild, flat, or hand wash, line, or unknown";
            return false;
        }

        var hand = found.Groups["hand"].Success;
        care = new Care
        {
            Action = hand ? WashAction.Hand : found.Groups["action"].Value switch { "very mild" => WashAction.VeryMild, "mild" => WashAction.Mild, _ => WashAction.Normal },
            Degrees = found.Groups["degrees"] is { Success: true } d ? int.Parse(d.ValueSpan, CultureInfo.InvariantCulture) : hand ? 30 : null,
            Drying = found.Groups["dry"].Value switch
            {
                "flat" => Yarns.Drying.Flat,
                "line" => Yarns.Drying.Line,
                "tumble 60" => Yarns.Drying.Tumble60,
                "tumble 80" => Yarns.Drying.Tumble80,
                _ => null,
            },
            NoBleach = found.Groups["bleach"].Success,
        };
        return true;
    }

    /// <summary>The care of a hat of both: the mildest of each column.</summary>
    public static Care Merge(Care a, Care b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        if (a.DoNotWash || b.DoNotWash)
        {
            return new Care { DoNotWash = true };
        }

        static T? Milder<T>(T? x, T? y)
            where T : struct => x is null ? y : y is null ? x : Comparer<T>.Default.Compare(x.Value, y.Value) <= 0 ? x : y;
        return new Care
        {
            Degrees = Milder(a.Degrees, b.Degrees),
            Action = Milder(a.Action, b.Action),
            Drying = Milder(a.Drying, b.Drying),
            NoBleach = a.NoBleach || b.NoBleach,
        };
    }

    /// <summary>In words, such as "hand wash 30 C, flat, no bleach".</summary>
    public override string ToString()
    {
        if (DoNotWash)
        {
            return "do not wash";
        }

        var wash = Action == WashAction.Hand ? $"hand wash {Degrees} C" : $"{Degrees} C {(Action == WashAction.VeryMild ? "very mild" : Action?.ToString().ToLowerInvariant())}";
        var dry = Drying switch { Yarns.Drying.Flat => ", flat", Yarns.Drying.Line => ", line", Yarns.Drying.Tumble60 => ", tumble 60", Yarns.Drying.Tumble80 => ", tumble 80", _ => "" };
        return wash.Trim() + dry + (NoBleach ? ", no bleach" : "");
    }

    [GeneratedRegex(@"^(?:(?<hand>hand wash)(?: (?<degrees>[0-9]{2}) ?c)?|(?<degrees>[0-9]{2}) ?c (?<action>very mild|mild|normal))(?:, (?<dry>flat|line|tumble 60|tumble 80))?(?<bleach>, no bleach)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
