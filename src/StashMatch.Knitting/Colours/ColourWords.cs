namespace StashMatch.Knitting.Colours;

/// <summary>Colours as people write them: "light grey", "Gray", "bright red", "dark-teal".</summary>
internal static class ColourWords
{
    // How far towards white, black or the full colour a word before it goes [ours].
    private const int LightTenths = 5;
    private const int DarkTenths = 4;
    private const int BrightTenths = 4;
    private const int GreyApart = 16;

    private static readonly string[] Modifiers = ["pale", "dark", "bright", "mid"];

    private static readonly Dictionary<string, YarnColour> Known = NamedColour.All.Concat(NamedColour.Also)
        .ToDictionary(n => string.Join(' ', Words(n.Name)), n => n.Colour, StringComparer.Ordinal);

    /// <summary>Reads a word or a few; a name of its own comes before one made of a modifier and a name.</summary>
    public static bool TryRead(string typed, out YarnColour colour)
    {
        var words = Words(typed);
        if (Known.TryGetValue(string.Join(' ', words), out colour))
        {
            return true;
        }

        if (words.Length < 2)
        {
            return words.Length == 1 && Known.TryGetValue(Without(words[0]), out colour);
        }

        // "Olive green" is olive, "greyish pink" a pink.
        if (words.Length == 2 && Known.TryGetValue(Without(words[1]), out var second))
        {
            if (words[0].EndsWith("ish", StringComparison.Ordinal) && Known.ContainsKey(Without(words[0])))
            {
                colour = second;
                return true;
            }

            if (Known.TryGetValue(words[0], out colour))
            {
                return true;
            }
        }

        if (!Modifiers.Contains(words[0]) || words[0] == words[1] || !TryRead(string.Join(' ', words[1..]), out var plain))
        {
            colour = default;
            return false;
        }

        colour = words[0] switch
        {
            "pale" => Each(plain, c => c + ((255 - c) * LightTenths / 10)),
            "dark" => Each(plain, c => c - (c * DarkTenths / 10)),
            "bright" => Brighter(plain),
            _ => plain,
        };
        return true;
    }

    // "Pinkish", "reddish", "bluish": the colour alone.
    private static string Without(string word)
    {
        if (!word.EndsWith("ish", StringComparison.Ordinal))
        {
            return word;
        }

        var stem = word[..^3];
        return new[] { stem, stem + "e", stem.Length > 0 ? stem[..^1] : stem }.FirstOrDefault(Known.ContainsKey) ?? word;
    }

    // Hyphens are gaps, gray is grey, and of words for one thing one is kept.
    private static string[] Words(string text) =>
    [
        .. text.ToLowerInvariant().Split([' ', '-', '\t', '\u00A0'], StringSplitOptions.RemoveEmptyEntries).Select(w => w switch
        {
            "gray" => "grey",
            "light" or "soft" or "baby" => "pale",
            "deep" => "dark",
            "vivid" => "bright",
            "medium" => "mid",
            _ => w,
        }),
    ];

    // Away from the grey of the same mean; a grey stays as it is.
    private static YarnColour Brighter(YarnColour plain)
    {
        if (Math.Max(plain.Red, Math.Max(plain.Green, plain.Blue)) - Math.Min(plain.Red, Math.Min(plain.Green, plain.Blue)) <= GreyApart)
        {
            return plain;
        }

        var mean = (plain.Red + plain.Green + plain.Blue) / 3;
        return Each(plain, c => c + ((c - mean) * BrightTenths / 10));
    }

    private static YarnColour Each(YarnColour of, Func<int, int> change)
    {
        return YarnColour.FromRgb(To(of.Red), To(of.Green), To(of.Blue));
        byte To(byte channel) => (byte)Math.Clamp(change(channel), 0, 255);
    }
}
