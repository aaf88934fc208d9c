using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests.Oracle;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Matching;

/// <summary>What is named as the limit of a figure is its limit: more of that leftover, or less of that part, lifts the figure.</summary>
public sealed class ChosenTests
{
    // So near to 1 that more cannot be told apart.
    private const double AllButSure = 1 - 1e-12;
    private static readonly int Drawn = Long.Form ? 1_000 : 200;

    [Fact]
    public void More_of_the_leftover_named_or_less_of_the_part_named_lifts_the_figure()
    {
        var (named, wrong, kinds) = (0, new List<string>(), new Dictionary<Tier, int>());
        for (var seed = 0; named < Drawn && seed < 40 * Drawn; seed++)
        {
            var question = (seed % 4 == 0 ? Instances.Of((Family)(seed / 4 % 8), 30_000 + seed) : SmallInstances.Of(30_000 + seed)) with { Like = [] };
            var before = Standing.Of(question);
            foreach (var chosen in before.Proven ? before.Answer.Chosen.Where(c => c.LimitingLeftover is not null || c.LimitingPart is not null) : [])
            {
                // The plan shown stays as it was, so that the figure told of it can be looked at again.
                var shown = question with { Like = [.. before.Answer.Parts.SelectMany(p => p.All.Take(1).Select(a => new Pairing(p.Part.Name, a.Leftover)))] };
                foreach (var (change, changed) in Changes(shown, chosen))
                {
                    named++;
                    kinds[chosen.Tier] = kinds.GetValueOrDefault(chosen.Tier) + 1;
                    var after = Standing.Of(changed);
                    if (after.Proven && !Lifted(chosen, before.Answer, after.Answer))
                    {
                        wrong.Add($"{seed}: {chosen}: {change}\n{before}\n{after}\n{Written.AsCode(question)}");
                    }
                }
            }
        }

        ProofFigures.Tell("limits named: more of the leftover or less of the part lifts the figure",
            $"{wrong.Count} of {named} do not ({string.Join(", ", kinds.Select(k => $"{k.Key} {k.Value}"))})", "0");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {named}\n{string.Join('\n', wrong.Take(3))}");
        Assert.True(named >= Drawn, $"only {named} limits named");
    }

    // A metre more on the leftover, of the same grams; or a metre less of the part, where its length can be typed.
    private static IEnumerable<(string Change, Question Changed)> Changes(Question question, Chosen chosen)
    {
        if (chosen.LimitingLeftover is { } id)
        {
            yield return ($"a metre more of {id}", question with { Leftovers = [.. question.Leftovers.Select(l => l.Id == id ? Longer(l, 1) : l)] });
        }

        if (chosen.LimitingPart is { } part && question.Hat is PrintedHat hat && hat.Sizes[0].Lines.Any(l => (l.Part ?? l.Yarn) == part && l.Length > 1.2m))
        {
            var size = hat.Sizes[0];
            yield return ($"a metre less of {part}", question with
            {
                Hat = hat with
                {
                    Sizes = [size with { Lines = [.. size.Lines.Select(l =>
                (l.Part ?? l.Yarn) == part ? l with { Length = l.Length - 1 } : l)] }]
                }
            });
        }
    }

    private static Leftover Longer(Leftover leftover, decimal metres) => leftover with
    {
        Class = leftover.ClassOrGuess,
        Ratio = new LabelRatio(leftover.Ratio.Mass, leftover.Ratio.MassUnit,
            leftover.Ratio.Length * (leftover.Held.Value + metres) / leftover.Held.Value, leftover.Ratio.LengthUnit, leftover.Ratio.Source),
    };

    // A better word, a higher rung, fewer metres short, a narrower choice for the brim are lifts. Of a plan that stays as it was, the leftover named lasts
    // more surely, and lacks less of the reserve where that is what is told.
    private static bool Lifted(Chosen chosen, Answer before, Answer after)
    {
        if (Comparison.WordOf(after) > Comparison.WordOf(before) || after.Sureness > before.Sureness || BrimOf(after) < BrimOf(before))
        {
            return true;
        }

        if (chosen.Tier is Tier.LeastShort || before.Verdict == Verdict.No)
        {
            return after.Short < before.Short;
        }

        var ball = chosen.LimitingLeftover ?? before.Parts.First(p => p.Part.Name == chosen.LimitingPart).From!.Leftover;
        var (was, now) = (before.Leftovers.First(l => l.Leftover.Id == ball), after.Leftovers.First(l => l.Leftover.Id == ball));
        return chosen.Tier == Tier.Brim
            ? BrimOf(after) <= chosen.Count
            : (now.OwnSureness > was.OwnSureness || (was.OwnSureness > AllButSure && now.OwnSureness >= was.OwnSureness))
                && (chosen.Length is null || now.ShortOfReserve < was.ShortOfReserve);
    }

    private static int BrimOf(Answer answer) => answer.Chosen.FirstOrDefault(c => c.Tier == Tier.Brim)?.Count ?? 0;
}
