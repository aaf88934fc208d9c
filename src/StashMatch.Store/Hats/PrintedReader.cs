using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Reads a hat's printed table.</summary>
internal static class PrintedReader
{
    private const int MostSizes = 40;
    private const int MostParts = 120;

    private static readonly Dictionary<string, decimal> Units = new(StringComparer.Ordinal) { ["m"] = 1, ["yd"] = Metres.PerYard };

    public static PrintedHat? Read(PrintedDescription printed, string name, WeightClass weightClass, FieldErrors errors, string at)
    {
        var unit = errors.OneOf($"{at}unit", printed.Unit, Units);
        var sizes = new List<PrintedSize>();
        if (printed.Sizes is not { Count: > 0 and <= MostSizes })
        {
            errors.Add($"{at}sizes", $"must be 1 to {MostSizes} sizes");
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < (printed.Sizes?.Count ?? 0) && i < MostSizes; i++)
        {
            var (size, field) = (printed.Sizes![i], $"{at}sizes[{i}].");
            HatDescriptionReader.SizeName(size?.Size, names, errors, $"{field}size");
            var head = size?.HeadCm is null ? null : errors.Number($"{field}headCm", size.HeadCm, 30, 75);
            var lines = ReadLines(size?.Parts, unit ?? 1, errors, $"{field}parts");
            sizes.Add(new PrintedSize(size?.Size ?? "", head is { } cm ? Centimetres.From(cm) : null, lines));
        }

        return errors.Any ? null : new PrintedHat
        {
            Name = name,
            WeightClass = weightClass,
            AllowanceIncluded = printed.AllowanceIncluded ?? false,
            Sizes = sizes,
        };
    }

    private static List<PrintedLine> ReadLines(IReadOnlyList<PrintedPartDescription?>? parts, decimal unit, FieldErrors errors, string at)
    {
        var lines = new List<PrintedLine>();
        if (parts is not { Count: > 0 and <= MostParts })
        {
            errors.Add(at, $"must be 1 to {MostParts} lengths");
            return lines;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < parts.Count; i++)
        {
            var (part, field) = (parts[i], $"{at}[{i}].");
            if (string.IsNullOrWhiteSpace(part?.Yarn) || part.Yarn.Length > 20)
            {
                errors.Add($"{field}yarn", "is missing, or longer than 20 characters");
            }

            if (part?.Part is { } name && PartNames.Read(name) is null)
            {
                errors.Add($"{field}part", $"{Shorten(name)} is not a part: try brim, stripe 1, crown or seam");
            }
            else if (!seen.Add(part?.Part ?? "letter " + part?.Yarn))
            {
                errors.Add($"{field}part", $"{part?.Part ?? part?.Yarn} is there twice");
            }

            var length = errors.Number($"{field}length", part?.Length, 0, 100_000, leastItself: false);
            if (length is { } l && part?.Yarn is { } yarn)
            {
                lines.Add(new PrintedLine(part.Part, yarn, l * unit));
            }
        }

        CheckNumbers(lines, errors, at);
        return lines;
    }

    // Stripes count from 1 without a gap, strands come in pairs, and a letter is told by parts or as one total.
    private static void CheckNumbers(List<PrintedLine> lines, FieldErrors errors, string at)
    {
        var read = lines.Select(l => (l.Yarn, Part: l.Part is null ? null : PartNames.Read(l.Part))).ToList();
        var stripes = read.Where(p => p.Part is { Kind: PartKind.Stripe }).Select(p => p.Part!.Value.Number).Order().ToList();
        if (!stripes.SequenceEqual(Enumerable.Range(1, stripes.Count)) || stripes.Count > 24)
        {
            errors.Add(at, "stripes must be numbered 1, 2, 3 and so on, at most 24");
        }

        foreach (var braid in read.Where(p => p.Part is { Kind: PartKind.Strand }).GroupBy(p => p.Part!.Value.Number).Where(g => g.Count() != 2))
        {
            errors.Add(at, $"braid {braid.Key} needs both its strands, a and b");
        }

        foreach (var letter in read.GroupBy(p => p.Yarn, StringComparer.Ordinal).Where(g => g.Any(p => p.Part is null) && g.Any(p => p.Part is not null)))
        {
            errors.Add(at, $"yarn {letter.Key} is given by parts and as one total: keep one of them");
        }
    }

    private static string Shorten(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
