using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The rule by looking at every possibility.</summary>
internal static class Everything
{
    /// <summary>How many ways there are to try; for small questions.</summary>
    public static double WaysOf(Sheet sheet) => Math.Pow(sheet.Held.Length + 1, sheet.Lots.Length);

    /// <summary>All the rule says.</summary>
    /// <param name="sheet">The question.</param>
    public static Ruling Of(Sheet sheet)
    {
        var rungs = new Rungs(sheet);
        var best = new (Word Word, decimal Rung)[4];
        foreach (var ballOf in Ways(sheet, sheet.Held, bare: false))
        {
            var (word, rung, _) = rungs.Judge(sheet.LoadsOf(ballOf));
            var width = sheet.WidthOf(ballOf);
            for (var w = width; w < 4; w++)
            {
                best[w] = Max(best[w], (word, rung));
            }
        }

        if (best[3].Word == Word.No)
        {
            return new Ruling { Word = Word.No, Reach = 0, Sureness = 0, Short = sheet.Whole - Ways(sheet, null, bare: true).Max(sheet.GoesIn) };
        }

        var narrowest = Array.FindIndex(best, b => b.Word == best[3].Word);
        (int Same, decimal Rung, bool Keeps, long Tidy, bool Seam)? top = null;
        var mostUp = long.MinValue;
        foreach (var ballOf in Ways(sheet, sheet.Held, bare: false))
        {
            var loads = sheet.LoadsOf(ballOf);
            var (word, rung, keeps) = rungs.Judge(loads);
            if (word != best[3].Word || sheet.WidthOf(ballOf) > narrowest)
            {
                continue;
            }

            var bears = keeps ? rungs.Kept(word, rung) : rungs.Bears(word, rung);
            var plan = (-Changed(sheet, ballOf), rung, keeps, bears.Zip(loads, Sheet.Worth).Sum(), sheet.SeamDiffers(ballOf));
            top = top is { } t && t.CompareTo(plan) >= 0 ? t : plan;
            mostUp = Math.Max(mostUp, rungs.Bears(word, rungs.Of(word)[0]).Zip(loads, Sheet.Worth).Sum());
        }

        return new Ruling
        {
            Word = best[3].Word,
            Reach = best[3].Rung,
            Width = narrowest,
            Sureness = top!.Value.Rung,
            Keeps = top.Value.Keeps,
            Tidy = top.Value.Tidy,
            SeamDiffers = top.Value.Seam,
            Changed = -top.Value.Same,
            MostUp = best[3].Word == Word.Yes ? mostUp : null,
            Short = 0,
        };
    }

    /// <summary>The reason, counts of leftovers aside.</summary>
    public static Why WhyOf(Question question, HatNeeds hat) => Reasons.Of(question, hat, WordOf, CanKeep)!.Value;

    /// <summary>How many parts of the plan named in the question come from another leftover now.</summary>
    public static int Changed(Sheet sheet, IReadOnlyList<int> ballOf)
    {
        string? Before(int member) => sheet.Question.Like.FirstOrDefault(p => p.Part == sheet.Hat.Parts[member].Name
            && sheet.Question.Leftovers.Any(l => l.Id == p.Leftover))?.Leftover;
        return Enumerable.Range(0, sheet.Lots.Length).Sum(i => sheet.Lots[i].Members.Count(m => Before(m) is { } before
            && before != sheet.Question.Leftovers[ballOf[i]].Id));
    }

    /// <summary>Every assignment that keeps the rules; the same array each time.</summary>
    /// <param name="sheet">The question.</param>
    /// <param name="bears">What each leftover may bear; null where it may be asked for more than it holds.</param>
    /// <param name="bare">Whether a lot may be left with nothing.</param>
    public static IEnumerable<int[]> Ways(Sheet sheet, IReadOnlyList<long>? bears, bool bare)
    {
        var ballOf = new int[sheet.Lots.Length];
        Array.Fill(ballOf, -1);
        var left = bears?.ToArray();
        return From(0);

        IEnumerable<int[]> From(int lot)
        {
            if (lot == ballOf.Length)
            {
                yield return ballOf;
                yield break;
            }

            for (var ball = bare ? -1 : 0; ball < sheet.Held.Length; ball++)
            {
                if (ball >= 0 && ((left is not null && left[ball] < sheet.Lots[lot].Need) || !sheet.MayJoin(lot, ball, ballOf, 3)))
                {
                    continue;
                }

                ballOf[lot] = ball;
                Take(ball, sheet.Lots[lot].Need);
                foreach (var way in From(lot + 1))
                {
                    yield return way;
                }

                Take(ball, -sheet.Lots[lot].Need);
                ballOf[lot] = -1;
            }
        }

        void Take(int ball, long need)
        {
            if (ball >= 0 && left is not null)
            {
                left[ball] -= need;
            }
        }
    }

    private static Word? WordOf(Question question, HatNeeds hat)
    {
        var sheet = Sheet.Of(question, hat);
        var rungs = new Rungs(sheet);
        return Ways(sheet, sheet.Held, bare: false).Select(b => rungs.Judge(sheet.LoadsOf(b)).Word).DefaultIfEmpty(Word.No).Max();
    }

    private static bool? CanKeep(Question question, HatNeeds hat) =>
        Sheet.Of(question, hat) is var sheet && Ways(sheet, new Rungs(sheet).Kept(Word.ByTheLabel, 0.5m), bare: false).Any();

    private static (Word, decimal) Max((Word, decimal) a, (Word, decimal) b) => a.CompareTo(b) >= 0 ? a : b;
}
