using System.Collections.Concurrent;
using Google.OrTools.Sat;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The smallest kit against a solver that shares nothing with the search but the hats.</summary>
public sealed class SmallestKitOracleTests
{
    private const int Instances = 210;
    private const string Parameters = "num_workers:1,random_seed:7,max_deterministic_time:8";

    [Fact]
    public void What_is_said_to_be_the_smallest_kit_is_the_smallest()
    {
        var cancel = TestContext.Current.CancellationToken;
        var wrong = new ConcurrentBag<string>();
        var (proven, open, there) = (0, 0, 0);
        Parallel.For(0, Instances, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = 2 }, seed =>
        {
            var (question, sizes) = Drawn(seed);
            var ours = SmallestKits.Find(question, sizes, cancel)!;
            var (grams, settled) = Solve(question, sizes);
            Interlocked.Add(ref open, settled ? 0 : 1);
            Interlocked.Add(ref proven, ours.Proven ? 1 : 0);
            Interlocked.Add(ref there, ours.IsThere ? 1 : 0);
            var own = ours.IsThere ? ours.Total.Milligrams : (long?)null;
            if (settled && (ours.Proven ? own != grams : own is not null && own < grams))
            {
                wrong.Add($"{seed}: {own} against {grams}");
            }
        });
        TestContext.Current.TestOutputHelper!.WriteLine($"{proven} proven, {there} there, {open} left open by the solver, of {Instances}");
        Assert.True(wrong.IsEmpty, string.Join("; ", wrong));
        Assert.InRange(open, 0, 6);
        Assert.True(proven >= Instances - 4, $"{proven} of {Instances} proven");
        Assert.InRange(there, Instances / 2, Instances);
    }

    // Skeins of each size in a row, bought or not; each cell shares its parts out over those bought.
    private static (long? Grams, bool Settled) Solve(KitQuestion question, IReadOnlyList<SkeinSize> sizes)
    {
        var model = new CpModel();
        var cells = question.Sizes.Select(s => question.Hat.Needs(s, question.Hat.CountsFor(s)[0])).ToList();
        var slots = new List<(SkeinSize Size, BoolVar Bought)>();
        foreach (var size in sizes)
        {
            BoolVar? before = null;
            for (var k = 0; k < cells[0].Parts.Count; k++)
            {
                var bought = model.NewBoolVar("");
                if (before is not null)
                {
                    model.AddImplication(bought, before);
                }

                slots.Add((size, bought));
                before = bought;
            }
        }

        foreach (var cell in cells)
        {
            var on = cell.Parts.Select(_ => slots.Select(_ => model.NewBoolVar("")).ToArray()).ToArray();
            foreach (var part in on)
            {
                model.AddExactlyOne(part);
            }

            // The brim: only from the best keepers one of which is long enough.
            for (var i = 0; i < on.Length; i++)
            {
                var enough = slots.Where(s =>
                    cell.Parts[i].Need(cell.Usage).Millimetres * (100 + (long)question.AllowancePercent) <= s.Size.Held.Millimetres * 100).ToList();
                for (var s = 0; s < slots.Count && cell.Parts[i].Kind == PartKind.Brim && enough.Count > 0; s++)
                {
                    if (Rank(slots[s].Size) > enough.Min(l => Rank(l.Size)))
                    {
                        model.Add(on[i][s] == 0);
                    }
                }
            }

            for (var s = 0; s < slots.Count; s++)
            {
                var needs = cell.Parts.Select(p => p.Need(cell.Usage).Millimetres * (100 + (long)question.AllowancePercent)).ToArray();
                model.Add(LinearExpr.WeightedSum(on.Select(p => p[s]), needs) <= (slots[s].Size.Held.Millimetres * 100) * slots[s].Bought);
                for (var i = 0; i < on.Length; i++)
                {
                    for (var j = 0; j < i; j++)
                    {
                        if (!MayShare(cell.Parts[j], cell.Parts[i], question.Arrangements[0] == Arrangement.OwnColours))
                        {
                            model.AddAtMostOne([on[i][s], on[j][s]]);
                        }
                    }
                }
            }
        }

        model.Minimize(LinearExpr.WeightedSum(slots.Select(s => s.Bought), slots.Select(s => s.Size.Grams.Milligrams / 1000)));
        var solver = new CpSolver { StringParameters = Parameters };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => ((long)Math.Round(solver.ObjectiveValue) * 1000, true),
            CpSolverStatus.Infeasible => (null, true),
            _ => (null, false),
        };
    }

    private static int Rank(SkeinSize size) => BrimRule.Rate(size.Fibre, false, YarnMake.Plied) switch
    {
        { FibreUnknown: true } => 2,
        { Index: >= 80 } => 0,
        { Index: >= 60 } => 1,
        _ => 3,
    };

    private static bool MayShare(HatPart a, HatPart b, bool own)
    {
        var (stripes, strands) = (a.Kind == PartKind.Stripe && b.Kind == PartKind.Stripe, a.Kind == PartKind.Strand && b.Kind == PartKind.Strand);
        var stripeAndHead = (a.Kind, b.Kind) is (PartKind.Stripe, PartKind.Brim or PartKind.Crown) or (PartKind.Brim or PartKind.Crown, PartKind.Stripe);
        return !(stripes && (own || Math.Abs(a.Number - b.Number) == 1)) && !(own && stripeAndHead) && !(strands && a.Number == b.Number);
    }

    // Invented hats of two sizes and up to three sizes of skein.
    private static (KitQuestion Question, SkeinSize[] Sizes) Drawn(int seed)
    {
        var random = new Random(seed);
        var (stripes, braided, brim, crown) = (random.Next(1, 5), random.Next(2) == 0, random.Next(3) > 0, random.Next(4) == 0);
        var needs = Enumerable.Range(0, 12).Select(_ => random.Next(3, 15)).ToArray();
        PrintedSize Of(string name, int more)
        {
            var lines = new List<PrintedLine>();
            void Add(string part, decimal share) => lines.Add(new PrintedLine(part, $"Y{lines.Count}", (needs[lines.Count] + more) * share));
            if (brim)
            {
                Add("brim", 1.5m);
            }

            for (var i = 1; i <= stripes; i++)
            {
                Add($"stripe {i}", 1);
            }

            for (var i = 1; i < Math.Min(stripes, 3) && braided; i++)
            {
                Add($"braid {i} strand a", 0.25m);
                Add($"braid {i} strand b", 0.25m);
            }

            if (crown)
            {
                Add("crown", 1);
            }

            return new PrintedSize(name, null, lines);
        }

        var hat = new PrintedHat
        {
            Name = "drawn",
            WeightClass = WeightClass.Light,
            AllowanceIncluded = false,
            Sizes = [Of("X", 0), Of("Y", random.Next(0, 5))]
        };
        var sizes = Enumerable.Range(0, random.Next(1, 4)).Select(_ =>
        {
            var (metres, grams) = (random.Next(10, 40), random.Next(5, 16));
            var fibre = FibreBlend.TryParse(random.Next(5) switch { 0 => "100% wool", 1 => "100% acrylic", 2 => "100% alpaca", _ => "" }, out var blend,
                out var wrong) ? blend : throw new InvalidOperationException(wrong);
            return new SkeinSize(Grams.From(grams), new LabelRatio(grams, MassUnit.Grams, metres, LengthUnit.Metres, RatioSource.Printed)) { Fibre = fibre };
        }).ToArray();
        return (new KitQuestion(hat, ["X", "Y"], null, [random.Next(2) == 0 ? Arrangement.OwnColours : Arrangement.AsItFalls]), sizes);
    }
}
