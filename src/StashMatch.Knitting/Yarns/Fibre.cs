using System.Collections.Frozen;

namespace StashMatch.Knitting.Yarns;

/// <summary>What kind of fibre it is, as far as brim, care and cautions go.</summary>
public enum FibreFamily
{
    /// <summary>Wool that felts.</summary>
    Wool,

    /// <summary>Wool made machine-washable.</summary>
    SuperwashWool,

    /// <summary>Other animal fibres and silk.</summary>
    OtherAnimal,

    /// <summary>Plant fibres.</summary>
    Plant,

    /// <summary>Regenerated cellulose.</summary>
    Regenerated,

    /// <summary>Man-made fibres.</summary>
    Synthetic,

    /// <summary>Elastane.</summary>
    Elastane,

    /// <summary>Not known.</summary>
    Unknown,
}

/// <summary>A fibre and how well it keeps a brim's shape.</summary>
/// <param name="Name">What it is called here.</param>
/// <param name="Points">Shape points, 0 to 100 [ours].</param>
/// <param name="Family">Its kind.</param>
public sealed record Fibre(string Name, decimal Points, FibreFamily Family)
{
    private static readonly FrozenDictionary<string, Fibre> ByName = ReadAll();

    /// <summary>A fibre nobody knows.</summary>
    public static Fibre Unknown => ByName["unknown"];

    /// <summary>Untreated wool.</summary>
    public static Fibre Wool => ByName["wool"];

    /// <summary>Machine-washable wool.</summary>
    public static Fibre SuperwashWool => ByName["superwash wool"];

    /// <summary>The fibre a word on a label means, whatever its case; null for a word that means none.</summary>
    public static Fibre? Find(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return ByName.GetValueOrDefault(word.Trim().ToLowerInvariant());
    }

    private static FrozenDictionary<string, Fibre> ReadAll()
    {
        var all = new Dictionary<string, Fibre>(StringComparer.Ordinal);
        foreach (var row in SeedData.Rows<Row>("fibres.json"))
        {
            var fibre = new Fibre(row.Name, row.Points, Enum.Parse<FibreFamily>(row.Family.Replace("-", "", StringComparison.Ordinal), ignoreCase: true));
            foreach (var word in row.Also.Append(row.Name))
            {
                all.Add(word, fibre);
            }
        }

        return all.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private sealed record Row(string Name, decimal Points, string Family, IReadOnlyList<string> Also, string Source);
}
