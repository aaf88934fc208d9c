using System.Globalization;
using StashMatch.Knitting.Designing;

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

    public static KitForm Of(Said kit)
    {
        ArgumentNullException.ThrowIfNull(kit);
        string Words(Said said, Field field) => said[field].Words ?? "";
        var form = new KitForm { Name = Words(kit, KitText.Name) };
        foreach (var s in kit[KitText.Skeins].Each ?? [])
        {
            form.Skeins.Add(new SkeinLine
            {
                Name = Words(s, KitText.SkeinName),
                Grams = Words(s, KitText.Grams),
                Count = s[KitText.Count].Words ?? "1",
                Label = LabelReading.Printed(s[KitText.Label]),
                Colour = Words(s, KitText.Colour),
                Fibre = Words(s, KitText.Fibre),
            });
        }

        return form;
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

    /// <summary>What is said of the kit, by the names of <see cref="KitText"/>.</summary>
    public Said Read() => Said.Of((KitText.Name, Said.Typed(Name.Trim())), (KitText.Skeins, Said.Several(Skeins.Select(s => Said.Of(
        (KitText.SkeinName, Said.Typed(s.Name.Trim())),
        (KitText.Grams, Said.Typed(s.Grams)),
        (KitText.Count, Said.Typed(s.Count.Length == 0 ? "none" : s.Count)),
        (KitText.Label, Said.Typed(s.Label)),
        (KitText.Colour, Said.Typed(Knitting.Colours.NamedColour.TryRead(s.Colour, out var colour, out _) ? colour.Hex : s.Colour.Trim())),
        (KitText.Fibre, Said.Typed(s.Fibre.Trim())))))));

    private static string Text(decimal? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
