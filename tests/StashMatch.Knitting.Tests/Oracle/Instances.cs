using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Kinds of questions the proof is made on.</summary>
internal enum Family
{
    FewDepths,
    AllDifferentDepths,
    Tight,
    CloneKit,
    MixedFibres,
    LocksAndNevers,
    ShortBag,
    PrintedLetters,
}

/// <summary>Seeded questions of each family, every third one with few near colours. All invented.</summary>
internal static class Instances
{
    private static readonly string[] Fibres = ["100% wool", "100% superwash wool", "unknown", "100% alpaca"];

    public static Question Of(Family family, int seed)
    {
        var random = new Random((1_000 * (int)family) + seed);
        var wanted = random.Next(3, family == Family.FewDepths ? 11 : 8);
        Hat hat = family == Family.PrintedLetters ? Printed(random) : Measured(random, family, wanted);
        var size = hat.SizeNames[random.Next(hat.SizeNames.Count)];
        var stripes = hat is PrintedHat ? hat.CountsFor(size)[0] : wanted;
        var arrangement = hat is PrintedHat
            ? random.Next(2) == 0 ? Arrangement.OwnColours : Arrangement.AsItFalls
            : (Arrangement)random.Next(5);
        var question = new Question(hat, size, [])
        {
            Stripes = stripes,
            Arrangement = Knittable(hat, size, stripes, arrangement),
            InTurn = random.Next(2, Math.Max(3, stripes)),
            AllowancePercent = new[] { 0, 5, 10, 10, 12.5m, 20 }[random.Next(6)],
            Blend = random.Next(10) == 0,
            Target = random.Next(2) == 0 ? 0.90 : (double)Rungs.All[random.Next(2, Rungs.All.Count)],
        };
        while (!hat.TryNeeds(size, question.Stripes!.Value, out _, out _))
        {
            hat = (HatDesign)hat with { Stripes = null };
            question = question with { Hat = hat, Stripes = question.Stripes - 1, Arrangement = Arrangement.AsItFalls };
        }

        question = question with { Leftovers = Paint(Bag(question, family, random), random, near: seed % 3 == 0) };
        return family == Family.LocksAndNevers || (family == Family.PrintedLetters && seed % 2 == 0) ? Pin(question, random) : question;
    }

    /// <summary>So many leftovers of 2 to 30 g, as a person's bag has them, and a hat of so many equal stripes.</summary>
    public static Question Large(int leftovers, int stripes, Arrangement arrangement, int seed, bool near = false)
    {
        var random = new Random((leftovers * 1_000) + seed);
        var bag = Enumerable.Range(0, leftovers).Select(i => Samples.OfMetres($"l{i:0000}",
            (decimal)Math.Round(8 * Math.Exp(random.NextDouble() * Math.Log(15)), 1))).ToList();
        return new Question(Samples.SideToSide, "CF"[seed % 2].ToString(), Paint(bag, random, near)) { Stripes = stripes, Arrangement = arrangement };
    }

    /// <summary>A few leftovers of few lengths, so that many ways tie in all but their colours.</summary>
    public static Question Tied(int leftovers, int stripes, int seed)
    {
        var random = new Random(911 + seed);
        var question = Large(leftovers, stripes, seed % 3 == 0 ? Arrangement.AsItFalls : Arrangement.OwnColours, seed);
        var hat = Samples.SideToSide with { Brim = new Brim(Centimetres.From(3)) };
        return question with
        {
            Hat = hat,
            Leftovers = [.. question.Leftovers.Select(l =>
            Samples.OfMetres(l.Id, 36 + (6 * random.Next(6))) with { Colour = l.Colour, Fibre = question.Leftovers[0].Fibre })]
        };
    }

    /// <summary>A bought kit: like balls in six colours, a hat of eight stripes.</summary>
    public static Question Kit(int balls, int seed)
    {
        var random = new Random(31 + seed);
        var metres = 18 + random.Next(20);
        return Large(balls, 8, seed % 2 == 0 ? Arrangement.OwnColours : Arrangement.AsItFalls, seed) is var question
            ? question with
            {
                Leftovers = [.. question.Leftovers.Select((l, i) =>
                Samples.OfMetres(l.Id, metres) with { Colour = question.Leftovers[i % 6].Colour, Fibre = question.Leftovers[0].Fibre })]
            }
            : question;
    }

    /// <summary>Leftovers that hold what one way of sharing out asks of them and next to nothing more, and short ones beside them.</summary>
    public static Question JustEnough(int leftovers, int seed)
    {
        var random = new Random(57 + seed);
        var question = Large(leftovers, 10, seed % 2 == 0 ? Arrangement.OwnColours : Arrangement.AsItFalls, seed);
        question.Hat.TryNeeds(question.Size, 10, out var hat, out _);
        var metres = Planted(question, Sheet.Of(question, hat!).Lots, random);
        metres.AddRange(Enumerable.Range(0, Math.Max(0, leftovers - metres.Count)).Select(_ => 1 + (12 * random.NextDouble())));
        return question with { Leftovers = Paint([.. metres.Select((m, i) => Samples.OfMetres($"l{i:00}", (decimal)Math.Round(m, 3)))], random, near: false) };
    }

    /// <summary>Stripes all of depths of their own.</summary>
    public static Question Unlike(int leftovers, int stripes, int seed)
    {
        var question = Large(leftovers, stripes, seed % 2 == 0 ? Arrangement.OwnColours : Arrangement.AsItFalls, seed);
        return question with
        {
            Hat = Samples.SideToSide with
            {
                StripeCounts = null,
                Stripes = new StripeDepths([.. Enumerable.Range(0, stripes).Select(i => 3 + (i * 0.29m))], InCentimetres: false),
                Braids = new Braids(stripes > 12 ? BraidPlaces.None : BraidPlaces.BetweenStripes, StrandSource.Neighbours)
            }
        };
    }

    private static Arrangement Knittable(Hat hat, string size, int stripes, Arrangement arrangement) =>
        (arrangement == Arrangement.InTurn && stripes < 3)
        || (arrangement == Arrangement.OneThread && hat.TryNeeds(size, stripes, out var needs, out _)
            && !needs.Parts.Any(p => p.Kind is PartKind.Brim or PartKind.Strand))
            ? Arrangement.OwnColours
            : arrangement;

    private static HatDesign Measured(Random random, Family family, int stripes)
    {
        var construction = (Construction)random.Next(3);
        return Samples.SideToSide with
        {
            Construction = construction,
            Brim = random.Next(6) == 0 ? null : new Brim(Centimetres.From(3 + random.Next(3)), random.Next(2) == 0, BindOff: (EdgeKind)random.Next(3)),
            Braids = new Braids(
                (BraidPlaces)random.Next(construction == Construction.SideToSide ? 2 : 3), (StrandSource)random.Next(2), random.Next(6) == 0 ? 1 : 2),
            Crown = new Crown(8, (CrownYarn)random.Next(2)),
            StripeCounts = null,
            Stripes = family == Family.AllDifferentDepths ? new StripeDepths([.. Enumerable.Range(0, stripes).Select(i =>
                2 + (i * 0.37m) + random.Next(2))], InCentimetres: false) : null,
            PomPom = random.Next(8) == 0 ? Metres.Held(12) : null,
            Usage = random.Next(3) == 0 ? new Usage(1.02, 0.05, Calibrated: true) : Usage.Uncalibrated,
        };
    }

    private static PrintedHat Printed(Random random)
    {
        var stripes = random.Next(1, 7);
        var letters = random.Next(2, 6);
        var lines = new List<PrintedLine>();
        string Letter() => $"Y{random.Next(letters)}";
        decimal Long() => random.Next(40, 300) / 10m;
        if (random.Next(4) > 0)
        {
            lines.Add(new PrintedLine("brim", Letter(), Long()));
        }

        for (var i = 1; i <= stripes; i++)
        {
            lines.Add(new PrintedLine($"stripe {i}", Letter(), random.Next(3) == 0 ? 10 : Long()));
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

        if (random.Next(3) == 0)
        {
            lines.Add(new PrintedLine(null, "Z", Long()));
        }

        return new PrintedHat
        {
            Name = "printed",
            WeightClass = WeightClass.SuperFine,
            AllowanceIncluded = random.Next(2) == 0,
            Sizes = [new PrintedSize("X", null, lines)],
        };
    }

    private static List<Leftover> Bag(Question question, Family family, Random random)
    {
        if (!question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out var why))
        {
            throw new InvalidOperationException(why.Reason);
        }

        var lots = Sheet.Of(question, hat).Lots;
        var whole = lots.Sum(l => l.Need) / 1000.0;
        double Between(double least, double most) => least + ((most - least) * random.NextDouble());
        var metres = family switch
        {
            Family.Tight => Planted(question, lots, random),
            Family.CloneKit => [.. Enumerable.Repeat(whole * Between(0.9, 2.4) / (lots.Count(l => l.Stripe) + 1),
                lots.Count(l => l.Stripe) + random.Next(1, 6))],
            Family.ShortBag => Split(whole * Between(0.4, 0.95), random.Next(2, 10), random),
            _ => Split(whole * Between(1.7, 4.5), random.Next(lots.Count(l => l.Stripe), lots.Count(l => l.Stripe) + 12), random),
        };
        return [.. metres.Select((m, i) => Samples.OfMetres($"l{i:00}", (decimal)Math.Round(Math.Clamp(m, 0.2, 3_000), 3)))];
    }

    // Balls of unlike lengths that come to so much.
    private static List<double> Split(double whole, int balls, Random random)
    {
        var shares = Enumerable.Range(0, balls).Select(_ => Math.Exp(1.2 * random.NextDouble())).ToList();
        return shares.ConvertAll(s => whole * s / shares.Sum());
    }

    // Balls that hold what some way of sharing out asks of them, and next to nothing more; a few strangers beside them.
    private static List<double> Planted(Question question, Lot[] lots, Random random)
    {
        var own = question.Arrangement is Arrangement.OwnColours or Arrangement.OneThread;
        var on = new List<List<Lot>>();
        foreach (var lot in lots.OrderByDescending(l => l.Stripe))
        {
            var open = on.Where(b => b.Count < 5 && !(own && b.Exists(o => Sheet.Excludes(o, lot)))).ToList();
            if (open.Count == 0 || (lot.Need > 3_000 && random.Next(3) > 0))
            {
                on.Add([lot]);
            }
            else
            {
                open[random.Next(open.Count)].Add(lot);
            }
        }

        var over = new[] { 1, 1.08, 1.16, 1.24 }[random.Next(4)];
        var balls = on.ConvertAll(b => b.Sum(l => l.Need) * (over + (0.1 * random.NextDouble())) / 1000);
        balls.AddRange(Enumerable.Range(0, random.Next(3)).Select(_ => 1 + (12 * random.NextDouble())));
        return balls;
    }

    private static List<Leftover> Paint(List<Leftover> bag, Random random, bool near)
    {
        var bases = Enumerable.Range(0, random.Next(2, 5)).Select(_ => (R: random.Next(40, 216), G: random.Next(40, 216), B: random.Next(40, 216))).ToList();
        byte Near(int c) => (byte)(c + random.Next(-8, 9));
        return bag.ConvertAll(l =>
        {
            var (r, g, b) = bases[random.Next(bases.Count)];
            var colour = near ? YarnColour.FromRgb(Near(r), Near(g), Near(b)) : YarnColour.FromRgb((byte)random.Next(256), (byte)random.Next(256),
                (byte)random.Next(256));
            _ = FibreBlend.TryParse(Fibres[random.Next(Fibres.Length)], out var fibre, out _);
            return l with
            {
                Colour = random.Next(near ? 12 : 6) == 0 ? null : colour,
                Fibre = fibre!,
                Class = random.Next(12) == 0 ? WeightClass.Light : WeightClass.SuperFine,
            };
        });
    }

    private static Question Pin(Question question, Random random)
    {
        question.Hat.TryNeeds(question.Size, question.Stripes!.Value, out var hat, out _);
        Pairing Any() => new(hat!.Parts[random.Next(hat.Parts.Count)].Name, question.Leftovers[random.Next(question.Leftovers.Count)].Id);
        var printed = question.Hat is PrintedHat;
        var locks = Enumerable.Range(0, random.Next(0, printed ? 2 : 3)).Select(_ => Any()).DistinctBy(p => p.Part).ToList();
        var never = Enumerable.Range(0, printed && locks.Count > 0 ? 0 : random.Next(1, printed ? 2 : 4)).Select(_ => Any()).ToList();

        // Now and then two strands run side by side: of the leftover kept, or of two.
        if (!printed && locks.Count > 0 && random.Next(3) == 0)
        {
            locks[0] = locks[0] with { HeldDouble = true };
            if (random.Next(2) == 0 && Any() is { } other && other.Leftover != locks[0].Leftover)
            {
                locks = [locks[0], locks[0] with { Leftover = other.Leftover }];
            }
        }

        return question with { Locks = locks, Never = never };
    }
}
