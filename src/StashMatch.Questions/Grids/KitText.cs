using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Questions;

/// <summary>Makes a kit of what is said of it, or says field by field what stands in the way.</summary>
public static class KitText
{
    /// <summary>The most rows of a kit.</summary>
    public const int MostRows = 100;

    /// <summary>The most like skeins in a row.</summary>
    public const int MostAlike = 200;

    /// <summary>The most skeins in all.</summary>
    public const int MostSkeins = 500;

    /// <summary>What the kit is called.</summary>
    public static readonly Field Name = Field.Text("name");

    /// <summary>What like skeins are called; "skein 1" and so on where nothing is said.</summary>
    public static readonly Field SkeinName = Field.Text("name", 60);

    /// <summary>What one of them weighs.</summary>
    public static readonly Field Grams = LeftoverText.Grams with { Says = "What one of them should weigh." };

    /// <summary>How many of them.</summary>
    public static readonly Field Count = Field.Whole("count", 1, MostAlike);

    /// <summary>Their label.</summary>
    public static readonly Field Label = LeftoverFields.Label;

    /// <summary>Their colour.</summary>
    public static readonly Field Colour = Field.Text("colour", 60);

    /// <summary>What they are spun of.</summary>
    public static readonly Field Fibre = Field.Text("fibre", 300);

    /// <summary>Their weight class.</summary>
    public static readonly Field WeightClass = Field.Whole("weightClass", 0, 7);

    /// <summary>So many like skeins, row by row.</summary>
    public static readonly Field Skeins = Field.Of("skeins", SkeinName, Grams, Count, Label, Colour, Fibre, WeightClass).Several(MostRows);

    /// <summary>All fields of a kit.</summary>
    public static IReadOnlyList<Field> Fields { get; } = [Name, Skeins];

    /// <summary>Reads a kit; null with messages.</summary>
    public static Kit? Read(Reading kit)
    {
        ArgumentNullException.ThrowIfNull(kit);
        var before = kit.Errors.Count;
        var name = kit.Text(Name) is { Length: > 0 } given ? given : "unnamed kit";
        var skeins = ReadSkeins(kit);
        return kit.Errors.Count > before ? null : new Kit(name, skeins);
    }

    /// <summary>Reads the skeins of a kit; those that can be read, with messages for the others.</summary>
    internal static List<KitSkein> ReadSkeins(Reading kit)
    {
        var skeins = new List<KitSkein>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (row, i) in kit.Each(Skeins).Select((r, i) => (r, i)))
        {
            var before = row.Errors.Count;
            var name = row.Text(SkeinName) is { } given && !string.IsNullOrWhiteSpace(given) ? given : $"skein {i + 1}";
            var (grams, count, label) = (row.NumberWanted(Grams), row.Whole(Count) ?? 1, LabelReading.Read(row, Label, RatioSource.Printed));
            var (colour, fibre, weightClass) = (row.Colour(Colour), row.Fibre(Fibre), (WeightClass?)row.Whole(WeightClass));
            if (!names.Add(name))
            {
                row.Wrong(SkeinName, $"{name} is there twice");
            }

            if (row.Errors.Count == before)
            {
                skeins.Add(new KitSkein(name, Knitting.Quantities.Grams.From(grams!.Value), count, label!) { Colour = colour, Fibre = fibre, Class = weightClass });
            }
        }

        if (skeins.Sum(s => s.Count) > MostSkeins)
        {
            kit.Wrong(Skeins, $"must come to at most {MostSkeins} skeins");
        }

        return skeins;
    }
}
