using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pieces;

/// <summary>The words every page shares: one word for a thing, one for an act. A page's own sentences stand in the words beside it.</summary>
public static class Terms
{
    // What buttons do.
    public const string Save = "Save";
    public const string Show = "Show";
    public const string Check = "Check";
    public const string Cancel = "Cancel";
    public const string Close = "close";
    public const string Delete = "delete";
    public const string Remove = "remove";
    public const string Details = "details";
    public const string Copy = "copy";
    public const string SwitchOn = "switch on";
    public const string SwitchOff = "switch off";
    public const string UseThisFactor = "Use this factor";

    // What fields and columns are called.
    public const string Name = "name";
    public const string Hat = "hat";
    public const string Size = "size";
    public const string Sizes = "sizes";
    public const string StripesField = "stripes";
    public const string StripesFrom = "stripes from";
    public const string To = "to";
    public const string Part = "part";
    public const string Yarn = "yarn";
    public const string Grams = "grams";
    public const string Label = "label";
    public const string Colour = "colour";
    public const string Fibre = "fibre";
    public const string Bag = "bag";
    public const string Care = "care";
    public const string ClassField = "weight class";
    public const string Needs = "needs";
    public const string ShortBy = "short by";
    public const string Reserve = "% in reserve";
    public const string ScaleStep = "my scale shows every … g";
    public const string CoreOrBowl = "weight of core or bowl (taken off)";
    public const string LengthFrom = "length from";
    public const string LabelAsPrinted = "label, as printed";
    public const string LabelHint = "100 g / 400 m";
    public const string StitchesTo10Cm = "stitches to 10 cm";
    public const string RowsTo10Cm = "rows to 10 cm";
    public const string ChooseOne = "choose one";

    // What is said of a leftover.
    public const string TooSmall = "too small to use";
    public const string NoLabel = "no label";
    public const string FibreUnknown = "fibre unknown";
    public const string Invented = "demo, invented";
    public const string Free = "free";
    public const string KnittedUp = "knitted up";
    public const string Metres = "metres";
    public const string Yards = "yards";

    /// <summary>After a save the disk did not take.</summary>
    public const string NotSaved = "Not saved: the disk could not be written. Is it full, or read-only?";

    /// <summary>What stands where a hat cannot be knitted as asked; the reason follows.</summary>
    public const string CannotBeKnitted = "This cannot be knitted.";

    /// <summary>"1 stripe", "6 stripes".</summary>
    public static string Stripes(int count) => Counted(count, "stripe");

    /// <summary>So many of a thing whose plural ends in s.</summary>
    public static string Counted(int count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";

    /// <summary>A small number as it is said in a sentence.</summary>
    public static string Number(int count) => count switch
    {
        1 => "one",
        2 => "two",
        3 => "three",
        4 => "four",
        5 => "five",
        6 => "six",
        7 => "seven",
        8 => "eight",
        9 => "nine",
        10 => "ten",
        _ => $"{count}",
    };

    /// <summary>A weight class by its names: "fingering (4-ply)".</summary>
    public static string Of(WeightClass weightClass) => weightClass switch
    {
        WeightClass.SuperFine => "fingering (4-ply)",
        WeightClass.Medium => "worsted (aran)",
        _ => Short(weightClass),
    };

    /// <summary>The same in a sentence: "fingering".</summary>
    public static string Short(WeightClass weightClass) => weightClass switch
    {
        WeightClass.Lace => "lace",
        WeightClass.SuperFine => "fingering",
        WeightClass.Fine => "sport",
        WeightClass.Light => "DK",
        WeightClass.Medium => "worsted",
        WeightClass.Bulky => "bulky",
        WeightClass.SuperBulky => "super bulky",
        _ => "jumbo",
    };

    /// <summary>Where a ball's length comes from.</summary>
    public static string Of(RatioSource source) => source switch
    {
        RatioSource.Measured => "measured",
        RatioSource.Guessed => "guess",
        _ => "label",
    };

    /// <summary>A label as printed; one measured or guessed says so.</summary>
    public static string Of(LabelRatio? ratio) => ratio switch
    {
        null => NoLabel,
        { Source: RatioSource.Printed } => ratio.ToString(),
        _ => $"{ratio}, {Of(ratio.Source)}",
    };

    /// <summary>How a yarn is spun.</summary>
    public static string Of(YarnMake make) => make switch
    {
        YarnMake.Singles => "singles",
        YarnMake.Drape => "made to drape",
        _ => "plied",
    };

    /// <summary>How the stripes' colours follow each other.</summary>
    public static string Of(ColourOrder order) => order switch
    {
        ColourOrder.Gradient => "gradual",
        ColourOrder.Contrast => "contrasting",
        _ => "any",
    };

    /// <summary>What a message calls a field, where that is not the field's own name.</summary>
    public static string Called(string field) => field switch
    {
        "scale step" => "the step of your scale",
        "core or bowl" => "the weight of core or bowl",
        "class" => ClassField,
        "kept in" => "where it is kept",
        "keep for" => "what it is kept for",
        "lot" => "dye lot",
        "store" => "StashMatch",
        "allowance" => "the reserve",
        "reserve" => "the reserve",
        "its grams" => "the weight of that length",
        "length measured off" => "the length you measured",
        _ => field,
    };

    /// <summary>Several things in a sentence: "a, b and c".</summary>
    public static string And(IReadOnlyList<string> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        return items.Count switch
        {
            0 => "",
            1 => items[0],
            _ when items.Any(i => i.Contains(" and ", StringComparison.Ordinal)) => string.Join("; ", items),
            _ => $"{string.Join(", ", items.SkipLast(1))} and {items[^1]}",
        };
    }

    /// <summary>The first letter large.</summary>
    public static string Capital(string text)
    {
        ArgumentException.ThrowIfNullOrEmpty(text);
        return char.ToUpperInvariant(text[0]) + text[1..];
    }
}
