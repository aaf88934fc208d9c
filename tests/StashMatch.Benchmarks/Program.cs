using System.Diagnostics;
using System.Globalization;
using StashMatch.Benchmarks;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var hat = new HatDesign
{
    Name = "side to side",
    Construction = Construction.SideToSide,
    Gauge = Gauge.Of(28, 40),
    WeightClass = WeightClass.SuperFine,
    Brim = new Brim(Centimetres.From(5), Folded: true, BindOff: EdgeKind.Tubular),
    Braids = new Braids(BraidPlaces.BetweenStripes, StrandSource.Scraps),
    Sizes = HatSizes.Default,
};
foreach (var arrangement in Enum.GetValues<Arrangement>())
{
    foreach (var count in (int[])[12, 60, 300])
    {
        foreach (var stripes in (int[])[6, 12])
        {
            var times = new List<double>();
            var verdicts = new List<string>();
            for (var seed = 0; seed < 12; seed++)
            {
                var question = new Question(hat, "CF"[seed % 2].ToString(), Bags.Of(count, seed)) { Stripes = stripes, Arrangement = arrangement };
                var watch = Stopwatch.StartNew();
                Matcher.TryAnswer(question, out var answer, out _);
                times.Add(watch.Elapsed.TotalMilliseconds);
                verdicts.Add($"{answer!.Verdict}{(answer.ProvenBest ? "" : "*")}");
            }

            times.Sort();
            Console.WriteLine($"{arrangement} {count} leftovers {stripes} stripes: median {times[6]:0.0} ms, most {times[^1]:0.0} ms  {string.Join(' ', verdicts)}");
        }
    }
}
