using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>What is said where a label is lost, and where a colour is chosen.</summary>
public static class NoLabelWords
{
    public const string Heading = "I have no label";
    public const string HowTo = "Measure off a length and weigh it alone. That tells the length of the whole ball.";
    public const string LengthMeasured = "length you measured";
    public const string In = "in";
    public const string ItsWeight = "weight of that length, g";
    public const string UseMeasured = "Use it as measured";
    public const string OrGuess = "or guess by thickness";
    public const string UseGuess = "Use it as a guess";

    public static string Usual(WeightClass weightClass, string length) => $"{Terms.Of(weightClass)}: about {length} to 100 g";

    public static string Told(string per100Grams, decimal off, string? inAll) =>
        $"{per100Grams} to 100 g, give or take {off:0.#} %{(inAll is null ? "" : $"; about {inAll} in all")}";

    public static string MeasureLonger(string lengths) => $"Your scale is too coarse for that length. Measure a longer one: {lengths}.";

    // Choosing a colour.
    public const string ChooseColour = "Choose the colour";
    public const string ChooseBy = "Choose by";
    public const string ByName = "by name";
    public const string ByPicker = "by colour picker";
    public const string FromPhoto = "from a photo";
    public const string Picker = "Colour picker";
    public const string NoColourYet = "no colour yet";
    public const string BeforeAny = "Or put light, bright or dark before a colour.";

    public static string AlsoTyped(IEnumerable<string> names) => $"You can also type: {string.Join(", ", names)}.";

    // A photo.
    public const string PhotoOfBall = "a photo of the ball";
    public const string PhotoRinged = "The photo, with the colours found ringed and numbered";
    public const string WhichIsYarn = "Which is the yarn? Tap its ring, or type its number.";
    public const string CannotRead = "This browser cannot read the photo. Try another, or choose by name.";
    public const string DidNotArrive = "The photo did not arrive. Try again, or choose by name.";

    public static string ShareOf(string hex, double share) => $"{hex}, {100 * share:0} % of the photo";

    public static string StaysHere(int side) => $"Your photo stays on your device. Only a {side}-pixel thumbnail is saved.";
}
