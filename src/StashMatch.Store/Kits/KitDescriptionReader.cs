using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Makes a kit of a description, or says field by field what stands in the way.</summary>
public static class KitDescriptionReader
{
    /// <summary>The most rows of a kit.</summary>
    public const int MostRows = 100;

    /// <summary>The most like skeins in a row.</summary>
    public const int MostAlike = 200;

    /// <summary>The most skeins in all.</summary>
    public const int MostSkeins = 500;

    /// <summary>Reads a description; null where <paramref name="errors"/> got something, each under <paramref name="at"/>.</summary>
    public static Kit? Read(KitDescription description, FieldErrors errors, string at)
    {
        ArgumentNullException.ThrowIfNull(description);
        ArgumentNullException.ThrowIfNull(errors);
        if (description.Name is { Length: > 80 })
        {
            errors.Add($"{at}name", "must be at most 80 characters");
        }

        var rows = description.Skeins ?? [];
        if (rows.Count > MostRows)
        {
            errors.Add($"{at}skeins", $"must be at most {MostRows}");
            return null;
        }

        var skeins = rows.Select((row, i) => ReadSkein(row, errors, $"{at}skeins[{i}].", i)).ToList();
        Check([.. skeins.OfType<KitSkein>()], errors, at);
        return errors.Any ? null : new Kit(description.Name is { Length: > 0 } name ? name : "unnamed kit", [.. skeins.OfType<KitSkein>()]);
    }

    /// <summary>Checks what no skein tells alone: names used once, and not too many in all.</summary>
    public static void Check(IReadOnlyList<KitSkein> skeins, FieldErrors errors, string at)
    {
        ArgumentNullException.ThrowIfNull(skeins);
        ArgumentNullException.ThrowIfNull(errors);
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < skeins.Count; i++)
        {
            if (!names.Add(skeins[i].Name))
            {
                errors.Add($"{at}skeins[{i}].name", $"{skeins[i].Name} is there twice");
            }
        }

        if (skeins.Sum(s => s.Count) > MostSkeins)
        {
            errors.Add($"{at}skeins", $"must come to at most {MostSkeins} skeins");
        }
    }

    private static KitSkein? ReadSkein(KitSkeinDescription? row, FieldErrors errors, string at, int index)
    {
        var grams = errors.Number($"{at}grams", (double?)row?.Grams, 0.1m, Weighing.MostGrams);
        if (row?.Count is not (null or (>= 1 and <= MostAlike)))
        {
            errors.Add($"{at}count", $"must be a whole number from 1 to {MostAlike}");
        }

        if (row?.Name is { Length: > 60 })
        {
            errors.Add($"{at}name", "must be at most 60 characters");
        }

        if (!LabelText.TryParse(row?.Label, RatioSource.Printed, out var label, out var labelMessage))
        {
            errors.Add($"{at}label", $"cannot be read: {labelMessage}");
        }

        if (!FibreBlend.TryParse(row?.Fibre, out var fibre, out var fibreMessage))
        {
            errors.Add($"{at}fibre", fibreMessage);
        }

        YarnColour? colour = null;
        if (!string.IsNullOrWhiteSpace(row?.Colour))
        {
            if (YarnColour.TryParse(row.Colour, out var read, out var colourMessage))
            {
                colour = read;
            }
            else
            {
                errors.Add($"{at}colour", colourMessage);
            }
        }

        if (row?.WeightClass is not (null or (>= 0 and <= 7)))
        {
            errors.Add($"{at}weightClass", "must be a whole number from 0 to 7");
        }

        return grams is null || label is null || fibre is null || errors.Any ? null
            : new KitSkein(string.IsNullOrWhiteSpace(row!.Name) ? $"skein {index + 1}" : row.Name, Grams.From(grams.Value), row.Count ?? 1, label)
            {
                Colour = colour,
                Fibre = fibre,
                Class = (WeightClass?)row.WeightClass,
            };
    }
}
