using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using F = StashMatch.Questions.HatFields;

namespace StashMatch.Questions;

/// <summary>Reads a hat's printed table.</summary>
internal static class PrintedText
{
    public static PrintedHat? Read(Reading printed, string name, WeightClass weightClass)
    {
        var before = printed.Errors.Count;
        var unit = printed.Wanted(F.Unit);
        var sizes = new List<PrintedSize>();
        if (printed.Said[F.PrintedSizes].Each is null or [])
        {
            printed.Wrong(F.PrintedSizes, $"must be 1 to {F.MostSizes} sizes");
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var size in printed.Each(F.PrintedSizes))
        {
            var called = HatText.SizeName(size, names);
            sizes.Add(new PrintedSize(called ?? "", size.Number(F.HeadCm) is { } cm ? Centimetres.From(cm) : null, ReadLines(size, unit == "yd" ? Metres.PerYard : 1)));
        }

        return printed.Errors.Count > before ? null : new PrintedHat
        {
            Name = name,
            WeightClass = weightClass,
            AllowanceIncluded = printed.YesNo(F.AllowanceIncluded) ?? false,
            Sizes = sizes,
        };
    }

    private static List<PrintedLine> ReadLines(Reading size, decimal unit)
    {
        var lines = new List<PrintedLine>();
        if (size.Said[F.Parts].Each is null or [])
        {
            size.Wrong(F.Parts, $"must be 1 to {F.Parts.MostOfThem} lengths");
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in size.Each(F.Parts))
        {
            var (part, yarn) = (line.Said[F.Part].Words, line.Said[F.Yarn].Words);
            if (string.IsNullOrWhiteSpace(yarn) || yarn.Length > F.Yarn.Longest)
            {
                line.Wrong(F.Yarn, $"is missing, or longer than {F.Yarn.Longest} characters");
            }

            if (part is not null && PartNames.Read(part) is null)
            {
                line.Wrong(F.Part, $"{Shorten(part)} is not a part: try brim, stripe 1, crown or seam");
            }
            else if (!seen.Add(part ?? "letter " + yarn))
            {
                line.Wrong(F.Part, $"{part ?? yarn} is there twice");
            }

            if (line.NumberWanted(F.Length) is { } length && yarn is not null)
            {
                lines.Add(new PrintedLine(part, yarn, length * unit));
            }
        }

        CheckNumbers(lines, size);
        return lines;
    }

    // Stripes count from 1 without a gap, strands come in pairs, and a letter is told by parts or as one total.
    private static void CheckNumbers(List<PrintedLine> lines, Reading size)
    {
        var read = lines.Select(l => (l.Yarn, Part: l.Part is null ? null : PartNames.Read(l.Part))).ToList();
        var stripes = read.Where(p => p.Part is { Kind: PartKind.Stripe }).Select(p => p.Part!.Value.Number).Order().ToList();
        if (!stripes.SequenceEqual(Enumerable.Range(1, stripes.Count)) || stripes.Count > 24)
        {
            size.Wrong(F.Parts, "stripes must be numbered 1, 2, 3 and so on, at most 24");
        }

        foreach (var braid in read.Where(p => p.Part is { Kind: PartKind.Strand }).GroupBy(p => p.Part!.Value.Number).Where(g => g.Count() != 2))
        {
            size.Wrong(F.Parts, $"braid {braid.Key} needs both its strands, a and b");
        }

        foreach (var letter in read.GroupBy(p => p.Yarn, StringComparer.Ordinal).Where(g => g.Any(p => p.Part is null) && g.Any(p => p.Part is not null)))
        {
            size.Wrong(F.Parts, $"yarn {letter.Key} is given by parts and as one total: keep one of them");
        }
    }

    private static string Shorten(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
