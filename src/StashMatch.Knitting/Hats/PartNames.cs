using System.Globalization;
using System.Text.RegularExpressions;

namespace StashMatch.Knitting.Hats;

/// <summary>The fixed names of parts: brim, stripe 1, braid 1 strand a, crown, seam.</summary>
public static partial class PartNames
{
    /// <summary>The brim.</summary>
    public const string Brim = "brim";

    /// <summary>A crown of its own.</summary>
    public const string Crown = "crown";

    /// <summary>Seam and gathering thread.</summary>
    public const string Seam = "seam";

    /// <summary>A pom-pom in yarn.</summary>
    public const string PomPom = "pom-pom";

    /// <summary>The name of stripe <paramref name="number"/>, counted from the cast-on or brim.</summary>
    public static string Stripe(int number) => $"stripe {number}";

    /// <summary>A braid, both its strands.</summary>
    public static string Braid(int number) => $"braid {number}";

    /// <summary>The name of a braid's strand, 'a' or 'b'.</summary>
    public static string Strand(int braid, char strand) => $"braid {braid} strand {strand}";

    /// <summary>Reads a part's name; null where it is none.</summary>
    public static (PartKind Kind, int Number, char? Strand)? Read(string name)
    {
        if (name is Brim or Crown or Seam or PomPom)
        {
            return (name switch { Brim => PartKind.Brim, Crown => PartKind.Crown, Seam => PartKind.Seam, _ => PartKind.PomPom }, 0, null);
        }

        var found = Numbered().Match(name.Length > 30 ? "" : name);
        if (!found.Success)
        {
            return null;
        }

        return found.Groups["stripe"].Success
            ? (PartKind.Stripe, int.Parse(found.Groups["stripe"].ValueSpan, CultureInfo.InvariantCulture), null)
            : (PartKind.Strand, int.Parse(found.Groups["braid"].ValueSpan, CultureInfo.InvariantCulture), found.Groups["strand"].Value[0]);
    }

    [GeneratedRegex("^(?:stripe (?<stripe>[1-9][0-9]?)|braid (?<braid>[1-9][0-9]?) strand (?<strand>[ab]))$", RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();
}
