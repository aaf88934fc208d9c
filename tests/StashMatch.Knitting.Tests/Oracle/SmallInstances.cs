using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Seeded questions small enough to look at every possibility: up to five leftovers, few parts, every rule among them. All invented.</summary>
internal static class SmallInstances
{
    private const double MostWays = 60_000;

    public static Question Of(int seed)
    {
        var random = new Random(40_000 + seed);
        while (true)
        {
            var question = Draw(random);
            if (question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out _)
                && !(question.Arrangement == Arrangement.OneThread && !hat.Parts.Any(p => p.Kind is PartKind.Brim or PartKind.Strand)))
            {
                question = question with { Leftovers = Bag(Sheet.Of(question, hat), random, 1 + random.Next(5)) };
                question = random.Next(3) == 0 ? Pin(question, hat, random) : random.Next(4) == 0 ? Remember(question, hat, random) : question;
                // Two in three can be covered.
                var sheet = Sheet.Of(question, hat);
                if (Everything.WaysOf(sheet) <= MostWays && (seed % 3 == 0 || Everything.Ways(sheet, sheet.Held, bare: false).Any()))
                {
                    return question;
                }
            }
        }
    }

    private static Question Draw(Random random)
    {
        Hat hat = random.Next(3) == 0 ? Printed(random) : Measured(random);
        var stripes = hat is PrintedHat ? hat.CountsFor("X")[0] : random.Next(1, 6);
        var arrangement = hat is PrintedHat ? random.Next(2) == 0 ? Arrangement.OwnColours : Arrangement.AsItFalls : (Arrangement)random.Next(5);
        return new Question(hat, hat is PrintedHat ? "X" : "ACFH"[random.Next(4)].ToString(), [])
        {
            Stripes = stripes,
            Arrangement = arrangement == Arrangement.InTurn && stripes < 3 ? Arrangement.AsItFalls : arrangement,
            InTurn = random.Next(2, Math.Max(3, stripes)),
            AllowancePercent = new[] { 0, 5, 10, 10, 12.5m, 30 }[random.Next(6)],
            Blend = random.Next(6) == 0,
            Target = random.Next(2) == 0 ? 0.90 : (double)Rungs.All[random.Next(2, Rungs.All.Count)],
        };
    }

    private static HatDesign Measured(Random random)
    {
        var construction = (Construction)random.Next(3);
        return Samples.SideToSide with
        {
            Construction = construction,
            Brim = random.Next(5) == 0 ? null : new Brim(Centimetres.From(3 + random.Next(3)), random.Next(2) == 0, BindOff: (EdgeKind)random.Next(3)),
            Braids = new Braids((BraidPlaces)random.Next(construction == Construction.SideToSide ? 2 : 3), (StrandSource)random.Next(2),
                random.Next(5) == 0 ? 1 : 2),
            Crown = new Crown(8, (CrownYarn)random.Next(2)),
            StripeCounts = null,
            PomPom = random.Next(10) == 0 ? Metres.Held(12) : null,
            Usage = random.Next(3) == 0 ? new Usage(1.02, 0.05, Calibrated: true) : Usage.Uncalibrated,
        };
    }

    private static PrintedHat Printed(Random random)
    {
        var stripes = random.Next(1, 5);
        var lines = new List<PrintedLine>();
        string Letter() => $"Y{random.Next(4)}";
        decimal Long() => random.Next(40, 300) / 10m;
        if (random.Next(3) > 0)
        {
            lines.Add(new PrintedLine("brim", Letter(), Long()));
        }

        for (var i = 1; i <= stripes; i++)
        {
            lines.Add(new PrintedLine($"stripe {i}", Letter(), random.Next(2) == 0 ? 12 : Long()));
            if (i < stripes && random.Next(2) == 0)
            {
                lines.Add(new PrintedLine($"braid {i} strand a", Letter(), 2.5m));
                lines.Add(new PrintedLine($"braid {i} strand b", Letter(), 2.5m));
            }
        }

        if (random.Next(3) == 0)
        {
            lines.Add(new PrintedLine("crown", Letter(), Long()));
        }

        return new PrintedHat
        {
            Name = "printed",
            WeightClass = WeightClass.SuperFine,
            AllowanceIncluded = random.Next(2) == 0,
            Sizes = [new PrintedSize("X", null, lines)]
        };
    }

    // Mostly balls that hold what some way of sharing out asks of them, all with about as much over; else balls of about a lot or two.
    private static List<Leftover> Bag(Sheet sheet, Random random, int balls)
    {
        double Between(double least, double most) => least + ((most - least) * random.NextDouble());
        var loads = new double[balls];
        var on = loads.Select(_ => new List<Lot>()).ToArray();
        var (planted, over) = (random.Next(5) > 0, new[] { 0.97, 1.0, 1.04, 1.08, 1.12, 1.18, 1.25, 1.4 }[random.Next(8)]);
        foreach (var lot in sheet.Lots)
        {
            var open = Enumerable.Range(0, balls).Where(b => !planted
                || !(sheet.Own && on[b].Exists(o => Sheet.Excludes(o, lot)))).DefaultIfEmpty(random.Next(balls)).ToList();
            var ball = open[random.Next(open.Count)];
            on[ball].Add(lot);
            loads[ball] += lot.Need / 1000.0;
        }

        return [.. loads.Select((l, i) => Balls.Drawn($"l{i}", Math.Clamp(planted && l > 0 ? l * over * Between(0.99, 1.06) : Between(1, 90), 0.5,
            2_000), random))];
    }

    // A plan of before: some part or other from some leftover or other.
    private static Question Remember(Question question, HatNeeds hat, Random random) => question with
    {
        Like = [.. hat.Parts.Where(_ => random.Next(3) > 0).Select(p => new Pairing(p.Name, question.Leftovers[random.Next(question.Leftovers.Count)].Id))],
    };

    private static Question Pin(Question question, HatNeeds hat, Random random)
    {
        Pairing Any() => new(hat.Parts[random.Next(hat.Parts.Count)].Name, question.Leftovers[random.Next(question.Leftovers.Count)].Id);
        var printed = question.Hat is PrintedHat;
        var locks = Enumerable.Range(0, random.Next(0, printed ? 2 : 3)).Select(_ => Any()).DistinctBy(p => p.Part).ToList();
        var never = Enumerable.Range(0, printed && locks.Count > 0 ? 0 : random.Next(0, 3)).Select(_ => Any()).ToList();
        if (!printed && locks.Count > 0 && random.Next(3) == 0)
        {
            locks[0] = locks[0] with { HeldDouble = true };
            locks = random.Next(2) == 0 && Any() is { } other && other.Leftover != locks[0].Leftover
                ? [locks[0], locks[0] with { Leftover = other.Leftover }] : locks;
        }

        return question with { Locks = locks, Never = never };
    }
}
