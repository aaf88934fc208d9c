using System.Globalization;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web.Pieces;

/// <summary>Figures as a screen shows them: one decimal, both units, what is left to nearest, what is needed or short up.</summary>
public static class Shown
{
    /// <summary>What there is, to nearest.</summary>
    public static string Metres(Metres length) => One(length.Value) + " m";

    /// <summary>What there is, to nearest.</summary>
    public static string Yards(Metres length) => One(length.Yards) + " yd";

    /// <summary>What there is in both units, the knitter's own first.</summary>
    public static string Both(Metres length) => OwnFirst(Metres(length), Yards(length));

    /// <summary>The same for two cells, or two lines of one.</summary>
    public static (string First, string Second) Pair(Metres length) => InOrder(Metres(length), Yards(length));

    /// <summary>What is needed or short, up.</summary>
    public static string MetresUp(Metres length) => One(Up(length.Value)) + " m";

    /// <summary>What is needed or short, up.</summary>
    public static string YardsUp(Metres length) => One(Up(length.Yards)) + " yd";

    /// <summary>What is needed or short in both units, the knitter's own first.</summary>
    public static string BothUp(Metres length) => OwnFirst(MetresUp(length), YardsUp(length));

    /// <summary>The same for two cells, or two lines of one.</summary>
    public static (string First, string Second) PairUp(Metres length) => InOrder(MetresUp(length), YardsUp(length));

    /// <summary>What there is, in the knitter's own unit alone.</summary>
    public static string Own(Metres length) => Pair(length).First;

    /// <summary>What is needed or short, up, in the knitter's own unit alone.</summary>
    public static string OwnUp(Metres length) => PairUp(length).First;

    /// <summary>What is needed or short, for a sentence: whole units up, under two to the tenth, in the knitter's own unit.</summary>
    public static string OwnAbout(Metres length) => length.Value < 2
        ? OwnUp(length)
        : InOrder($"{Math.Ceiling(length.Value):0} m", $"{Math.Ceiling(length.Yards):0} yd").First;

    /// <summary>A depth in the knitter's own unit, to the hundredth of a centimetre or the eighth of an inch.</summary>
    public static string OwnDepth(Centimetres depth) =>
        InOrder($"{depth.Value.ToString("0.##", CultureInfo.InvariantCulture)} cm", $"{Eighths(depth.Inches)} in").First;

    /// <summary>What is needed or short, said in a sentence: no false precision, up; under two metres to the tenth.</summary>
    public static string About(Metres length) => length.Value < 2
        ? BothUp(length)
        : OwnFirst($"{Math.Ceiling(length.Value):0} m", $"{Math.Ceiling(length.Yards):0} yd");

    /// <summary>What goes to so many grams, in whole metres and yards.</summary>
    public static string Whole(decimal metres) => OwnFirst($"{metres:0} m", $"{metres / Knitting.Quantities.Metres.PerYard:0} yd");

    /// <summary>Grams as fine as the scale, at least to a tenth.</summary>
    public static string Grams(decimal grams, Grams scaleStep) =>
        grams.ToString(scaleStep.Value < 0.1m ? "0.00" : "0.0", CultureInfo.InvariantCulture) + " g";

    /// <summary>Grams needed, up, as fine as the scale.</summary>
    public static string GramsUp(decimal grams, Grams scaleStep)
    {
        var per = scaleStep.Value < 0.1m ? 100 : 10;
        return Grams(Math.Ceiling(grams * per) / per, scaleStep);
    }

    /// <summary>A depth in both units, inches to the eighth; inches first beside yards.</summary>
    public static string Depth(Centimetres depth) => OwnFirst($"{One(depth.Value)} cm", $"{Eighths(depth.Inches)} in");

    /// <summary>Two figures for one measure, in the order of the knitter's own first unit.</summary>
    public static string OwnFirst(string metric, string other)
    {
        var (first, second) = InOrder(metric, other);
        return $"{first} / {second}";
    }

    /// <summary>Two things in the order of the knitter's own first unit.</summary>
    public static (T First, T Second) InOrder<T>(T metric, T other) => Habits.Now.FirstUnit == LengthUnit.Yards ? (other, metric) : (metric, other);

    /// <summary>A measure in centimetres, to the tenth.</summary>
    public static string Centimetres(Centimetres measure) => One(measure.Value);

    /// <summary>A measure in inches to the nearest eighth, such as 2⅞.</summary>
    public static string Inches(Centimetres measure) => Eighths(measure.Inches);

    /// <summary>A chance in whole per cent, never 100 or 0 where it is not.</summary>
    public static string Chance(double chance) => chance switch
    {
        <= 0 => "0 %",
        >= 1 => "100 %",
        < 0.01 => "under 1 %",
        > 0.99 => "over 99 %",
        _ => Math.Floor(chance * 100).ToString(CultureInfo.InvariantCulture) + " %",
    };

    /// <summary>A chance in tenths, rounded down: "8 times in 10".</summary>
    public static string TimesInTen(double chance) => Math.Floor(chance * 10) switch
    {
        < 1 => "less than once in 10",
        1 => "once in 10",
        var times => $"{Math.Min(9, times).ToString(CultureInfo.InvariantCulture)} times in 10",
    };

    /// <summary>What is wrong with a field, as a sentence that begins with what the page calls it.</summary>
    public static string Sentence(string field, string message)
    {
        ArgumentException.ThrowIfNullOrEmpty(field);
        return $"{Terms.Capital(Terms.Called(field))} {message}.";
    }

    /// <summary>A number for CSS or SVG.</summary>
    public static string Css(decimal number) => Math.Round(number, 3).ToString("0.###", CultureInfo.InvariantCulture);

    private static decimal Up(decimal value) => Math.Ceiling(value * 10) / 10;

    private static string One(decimal value) => Math.Round(value, 1, MidpointRounding.AwayFromZero).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Eighths(decimal inches)
    {
        var eighths = (int)Math.Round(inches * 8, MidpointRounding.AwayFromZero);
        var (whole, part) = (eighths / 8, eighths % 8);
        var fraction = part switch { 0 => "", 1 => "⅛", 2 => "¼", 3 => "⅜", 4 => "½", 5 => "⅝", 6 => "¾", _ => "⅞" };
        return whole == 0 && part > 0 ? fraction : $"{whole}{fraction}";
    }
}
