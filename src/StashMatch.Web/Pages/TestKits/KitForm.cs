using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.Pages.TestKits;

/// <summary>So many like mini-skeins, as typed.</summary>
public sealed class SkeinLine
{
    public string Name { get; set; } = "";

    public string Grams { get; set; } = "";

    public string Count { get; set; } = "1";

    public string Label { get; set; } = "";

    public string Colour { get; set; } = "";

    public string Fibre { get; set; } = "";
}

/// <summary>A kit as typed.</summary>
public sealed class KitForm
{
    public string Name { get; set; } = "";

    public IList<SkeinLine> Skeins { get; } = (List<SkeinLine>)[];

    /// <summary>An invented kit to begin with: one large skein for the brim, minis for the stripes.</summary>
    public static KitForm Example()
    {
        var kit = new KitForm { Name = "One large, seven minis (invented)" };
        kit.Skeins.Add(new SkeinLine { Name = "Ground", Grams = "50", Label = "50 g / 210 m", Fibre = "80% wool, 20% nylon", Colour = "#E2D3B2" });
        kit.Skeins.Add(new SkeinLine { Name = "Mini", Grams = "10", Count = "7", Label = "100 g / 400 m", Fibre = "100% superwash merino" });
        return kit;
    }

    public static KitForm Of(KitDescription description)
    {
        ArgumentNullException.ThrowIfNull(description);
        var kit = new KitForm { Name = description.Name ?? "" };
        foreach (var s in description.Skeins?.OfType<KitSkeinDescription>() ?? [])
        {
            kit.Skeins.Add(new SkeinLine { Name = s.Name ?? "", Grams = Text(s.Grams), Count = Text(s.Count ?? 1), Label = s.Label ?? "", Colour = s.Colour ?? "", Fibre = s.Fibre ?? "" });
        }

        return kit;
    }

    /// <summary>A kit of whole skeins found to be the smallest.</summary>
    public static KitForm Of(SmallestKit smallest, IReadOnlyList<SkeinSize> sizes)
    {
        ArgumentNullException.ThrowIfNull(smallest);
        ArgumentNullException.ThrowIfNull(sizes);
        var kit = new KitForm { Name = $"The smallest, {Text(smallest.Total.Value)} g" };
        foreach (var (count, i) in smallest.Counts.Select((c, i) => (c, i)).Where(c => c.c > 0))
        {
            var grams = Text(sizes[i].Grams.Value);
            kit.Skeins.Add(new SkeinLine { Name = $"{grams} g", Grams = grams, Count = Text(count), Label = sizes[i].Label.ToString(), Fibre = sizes[i].Fibre.IsUnknown ? "" : sizes[i].Fibre.ToString() });
        }

        return kit;
    }

    /// <summary>The description as far as it can be read; numbers that are none go to <paramref name="errors"/> by row.</summary>
    public KitDescription Read(FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        decimal? Number(string field, string typed)
        {
            if (TypedNumber.TryRead(typed, out var value, out var message))
            {
                return value;
            }

            errors.Add(field, message);
            return null;
        }

        return new KitDescription(Name.Trim(), [.. Skeins.Select((s, i) => new KitSkeinDescription(
            s.Name.Trim(),
            Number($"skeins[{i}].grams", s.Grams),
            int.TryParse(s.Count, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 0,
            s.Label,
            Knitting.Colours.NamedColour.TryRead(s.Colour, out var colour, out _) ? colour.Hex : s.Colour.Trim(),
            s.Fibre.Trim()))]);
    }

    private static string Text(decimal? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
