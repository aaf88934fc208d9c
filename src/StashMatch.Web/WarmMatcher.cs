using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Web;

/// <summary>Asks a few questions when the program starts, so that the first person who asks does not wait for the code to be made ready.</summary>
internal sealed class WarmMatcher : BackgroundService
{
    private const int Leftovers = 24;
    private const int Rounds = 3;

    private static readonly HatDesign Hat = new()
    {
        Name = "any",
        Construction = Construction.SideToSide,
        Gauge = Gauge.Of(28, 40),
        WeightClass = WeightClass.SuperFine,
        Brim = new Brim(Centimetres.From(5)),
        Braids = new Braids(BraidPlaces.BetweenStripes, StrandSource.Neighbours),
        Sizes = HatSizes.Default,
    };

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The program goes on starting meanwhile.
        await Task.Yield();
        var bag = Enumerable.Range(0, Leftovers).Select(Leftover).ToList();
        for (var round = 0; round < Rounds && !stoppingToken.IsCancellationRequested; round++)
        {
            foreach (var arrangement in FromThisBag.Usual)
            {
                var question = FromThisBag.QuestionOf(Hat, Hat.SizeNames[2 * round], 6, arrangement, bag, 10);
                if (Matcher.TryAnswer(question, out var answer, out _, CancellationToken.None))
                {
                    _ = answer.Plans;
                }
            }
        }
    }

    private static Leftover Leftover(int number) => new(
        $"{number}",
        $"{number}",
        new Weighing(Grams.From(2 + number), default, Grams.From(number % 3 == 0 ? 1 : 0.1m)),
        new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, number % 5 == 0 ? RatioSource.Guessed : RatioSource.Printed))
    {
        Class = WeightClass.SuperFine,
        Colour = YarnColour.FromRgb((byte)(10 * number), (byte)(90 * number % 256), (byte)(250 - (10 * number))),
    };
}
