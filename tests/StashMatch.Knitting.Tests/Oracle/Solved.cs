using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The rule by a solver. A plan in hand is a proof that there is one; that there is none better only the solver says.</summary>
internal sealed class Solved
{
    private readonly Sheet _sheet;
    private readonly Rungs _rungs;
    private readonly List<(int Width, long[] Loads)> _known = [];

    private Solved(Sheet sheet, IEnumerable<int[]> known)
    {
        (_sheet, _rungs) = (sheet, new Rungs(sheet));
        known.ToList().ForEach(Learn);
    }

    /// <summary>All the rule says, as far as the solver comes to an end.</summary>
    /// <param name="sheet">The question.</param>
    /// <param name="known">Whole plans known to be there.</param>
    public static Ruling Of(Sheet sheet, params IEnumerable<int[]> known) => new Solved(sheet, known).Rule();

    /// <summary>The reason, counts of leftovers aside; null where the solver came to no end.</summary>
    public static Why? WhyOf(Question question, HatNeeds hat) => Reasons.Of(
        question, hat, (q, h) => new Solved(Sheet.Of(q, h), []).WordAt(3), (q, h) => Sheet.Of(q, h) is var s && new Solved(s, []) is var solved
            ? solved.Can(solved._rungs.Kept(Word.ByTheLabel, 0.5m), 3) : null);

    private Ruling Rule()
    {
        if (WordAt(3) is not { } word)
        {
            return new Ruling { Word = null };
        }

        if (word == Word.No)
        {
            var most = CompactModel.MostIn(_sheet);
            return new Ruling { Word = word, Reach = 0, Sureness = 0, Short = most.Proof == Proof.Best ? _sheet.Whole - most.Value : null };
        }

        var ruling = new Ruling { Word = word, Short = 0, Reach = HighestOf(word, 3) };
        int? narrowest = 3;
        for (var w = 0; w < 3; w++)
        {
            var can = Can(_rungs.Bears(word, _rungs.Of(word)[0]), w);
            if (can is not false)
            {
                narrowest = can is null ? null : w;
                break;
            }
        }

        if (narrowest is not { } width || HighestOf(word, width) is not { } sure)
        {
            return ruling with { Width = narrowest };
        }

        ruling = ruling with { Width = width, Sureness = sure, Keeps = word == Word.Yes ? true : Can(_rungs.Kept(word, sure), width) };
        if (ruling.Keeps is not { } keeps)
        {
            return ruling;
        }

        var bears = keeps ? _rungs.Kept(word, sure) : _rungs.Bears(word, sure);
        var tidiest = CompactModel.Tidiest(_sheet, bears, width);
        if (tidiest.Proof == Proof.Best && (tidiest.Value != _sheet.Worth(bears, tidiest.BallOf) || _sheet.Broken(tidiest.BallOf, bears, width) is not null))
        {
            throw new InvalidOperationException("The model does not say what the rules say.");
        }

        return ruling with { Tidy = tidiest.Proof == Proof.Best ? tidiest.Value : null };
    }

    private Word? WordAt(int width)
    {
        foreach (var word in new[] { Word.Yes, Word.OnlyJust, Word.ByTheLabel })
        {
            switch (Can(_rungs.Bears(word, _rungs.Of(word)[0]), width))
            {
                case null:
                    return null;
                case true:
                    return word;
            }
        }

        return Word.No;
    }

    // Rungs are climbed from the lowest, which can be had, until one cannot.
    private decimal? HighestOf(Word word, int width)
    {
        var highest = _rungs.Of(word)[0];
        foreach (var rung in _rungs.Of(word).Skip(1))
        {
            switch (Can(_rungs.Bears(word, rung), width))
            {
                case null:
                    return null;
                case false:
                    return highest;
            }

            highest = rung;
        }

        return highest;
    }

    private bool? Can(long[] bears, int width)
    {
        if (_known.Exists(k => k.Width <= width && Enumerable.Range(0, bears.Length).All(b => k.Loads[b] <= bears[b])))
        {
            return true;
        }

        var any = CompactModel.Any(_sheet, bears, width);
        if (any.Proof == Proof.Best)
        {
            if (_sheet.Broken(any.BallOf, bears, width) is { } broken)
            {
                throw new InvalidOperationException($"The model breaks a rule: {broken}");
            }

            Learn(any.BallOf);
        }

        return any.Proof switch { Proof.Best => true, Proof.None => false, _ => null };
    }

    private void Learn(int[] ballOf) => _known.Add((_sheet.WidthOf(ballOf), _sheet.LoadsOf(ballOf)));
}
