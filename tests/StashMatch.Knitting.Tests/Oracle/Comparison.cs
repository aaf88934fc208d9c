using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>One answer held against the rule, tier by tier, and its figures against own arithmetic.</summary>
internal sealed class Comparison
{
    private const double Noise = 2e-4;
    private readonly List<string> _complaints = [];
    private readonly Question _question;
    private readonly Answer _answer;
    private readonly Sheet _sheet;
    private readonly Rungs _rungs;
    private readonly int[] _ballOf;
    private readonly bool _plan;

    private Comparison(Question question, Answer answer)
    {
        (_question, _answer, _sheet) = (question, answer, Sheet.Of(question, answer.Hat));
        (_rungs, _ballOf) = (new Rungs(_sheet), BallOf(_sheet, answer.Parts));
        (WordProven, _plan) = Inside.ProvenOf(question);
    }

    /// <summary>What is wrong with the answer; empty where nothing is.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>What the rule says.</summary>
    public Ruling Ruling { get; private set; } = new() { Word = null };

    /// <summary>Whether the solver's own limit left something unsaid.</summary>
    public bool Open { get; private set; }

    public Answer Answer => _answer;

    /// <summary>Whether the word and how far it reaches are said to be proven.</summary>
    public bool WordProven { get; }

    /// <summary>Whether the metres short are said to be proven.</summary>
    public bool ShortProven => _plan;

    public static Comparison Of(Question question, Func<Sheet, IReadOnlyList<int>?, Ruling> rule, Func<Question, HatNeeds, Why?> why, CancellationToken cancel)
    {
        if (!Matcher.TryAnswer(question, out var answer, out var cannot, cancel))
        {
            throw new ArgumentException(cannot.Reason, nameof(question));
        }

        var comparison = new Comparison(question, answer);
        comparison.Legal();
        if (comparison._complaints.Count == 0)
        {
            var covered = comparison._ballOf.All(b => b >= 0) && answer.Verdict != Verdict.No;
            comparison.Compare(rule(comparison._sheet, covered ? comparison._ballOf : null));
            comparison.Reason(why(question, answer.Hat));
        }

        return comparison;
    }

    /// <summary>The leftover each lot comes from, wholly or in part, -1 where none gives anything.</summary>
    public static int[] BallOf(Sheet sheet, IReadOnlyList<PartAnswer> parts)
    {
        var at = sheet.Question.Leftovers.Select((l, i) => (l.Id, i)).ToDictionary(l => l.Id, l => l.i, StringComparer.Ordinal);
        return [.. sheet.Lots.Select((lot, i) =>
        {
            var from = lot.Members.SelectMany(m => parts[m].All).Where(a => a.Metres.Millimetres > 0 && sheet.Fits(i, at[a.Leftover], 3)).Select(a =>
                a.Leftover).FirstOrDefault();
            return from is null ? -1 : at[from];
        })];
    }

    /// <summary>The word an answer tells, by the label told apart.</summary>
    public static Word WordOf(Answer answer) => answer.Verdict switch
    {
        Verdict.Yes => Word.Yes,
        Verdict.OnlyJust => answer.Reach <= 0.5 ? Word.ByTheLabel : Word.OnlyJust,
        _ => Word.No,
    };

    private static decimal Rounded(double rung) => (decimal)Math.Round(rung, 4);

    private void Say(bool wrong, string complaint)
    {
        if (wrong)
        {
            _complaints.Add(complaint);
        }
    }

    private void Legal()
    {
        var no = _answer.Verdict == Verdict.No;
        if (Enumerable.Range(0, _ballOf.Length).FirstOrDefault(i => _ballOf[i] >= 0 && !_sheet.MayJoin(i, _ballOf[i], _ballOf, 3), -1) is >= 0 and var bad)
        {
            _complaints.Add($"lot {bad} may not come from leftover {_ballOf[bad]}");
            return;
        }

        var (loads, given) = (_sheet.LoadsOf(_ballOf), 0L);
        foreach (var lots in _sheet.Lots.GroupBy(l => l.Members))
        {
            var parts = lots.Key.Select(m => _answer.Parts[m]).ToList();
            Say(parts.Sum(p => p.Need.Millimetres) != lots.Sum(l => l.Need),
                $"{parts[0].Part.Name} takes {lots.Sum(l => l.Need)} mm, not {parts.Sum(p => p.Need.Millimetres)}");
            Say(parts.Exists(p => p.All.Sum(a => a.Metres.Millimetres) + p.Short.Millimetres != p.Need.Millimetres),
                $"{parts[0].Part.Name}: what goes in and what is short are not the need");
            Say(parts.SelectMany(p => p.All).Select(a => a.Leftover).Distinct(StringComparer.Ordinal).Count() > lots.Count(),
                $"{parts[0].Part.Name} is from several leftovers");
            given += parts.Sum(p => p.All.Sum(a => a.Metres.Millimetres));
        }

        Say(_answer.Short.Millimetres != _sheet.Whole - given, $"short by {_answer.Short}, not {_sheet.Whole - given} mm");
        Say(no != _answer.Short.Millimetres > 0, $"{_answer.Verdict}, short by {_answer.Short}");
        if (no)
        {
            Say(given != _sheet.GoesIn(_ballOf), $"{given} mm go in where {_sheet.GoesIn(_ballOf)} could");
            Say(_answer.ChanceOfEnough != 0 || _answer.MarginPercent != 0 || _answer.Sureness != 0 || _answer.Reach != 0,
                "short, but with a chance, a margin or a rung");
            Served();
            return;
        }

        Plan("the plan", loads, _answer.ChanceOfEnough, _answer.Sureness, _answer.Leftovers);
        foreach (var plan in _answer.Plans)
        {
            var ballOf = BallOf(_sheet, plan.Parts);
            Say(_sheet.Broken(ballOf, _sheet.Held, 3) is not null || ballOf.Contains(-1), $"{plan.Kind}: {_sheet.Broken(ballOf, _sheet.Held, 3)}");
            Plan($"{plan.Kind}", _sheet.LoadsOf(ballOf), plan.ChanceOfEnough, plan.Sureness, plan.Leftovers);
        }
    }

    // Of a leftover asked for more than it holds the higher band is served first, then the longer part.
    private void Served()
    {
        foreach (var ball in Enumerable.Range(0, _sheet.Held.Length))
        {
            var rest = _sheet.Held[ball];
            foreach (var i in Enumerable.Range(0, _ballOf.Length).Where(i => _ballOf[i] == ball).OrderBy(i => _sheet.Lots[i].Band).ThenByDescending(i =>
                _sheet.Lots[i].Need))
            {
                var id = _question.Leftovers[ball].Id;
                var got = _sheet.Lots[i].Members.Sum(m => _answer.Parts[m].All.Where(a => a.Leftover == id).Sum(a => a.Metres.Millimetres));
                var due = Math.Min(rest, _sheet.Lots[i].Need);
                Say(_sheet.Lots.Count(l => l.Members == _sheet.Lots[i].Members) == 1 && got != due, $"lot {i} gets {got} mm of {id}, not {due}");
                rest -= due;
            }
        }
    }

    private void Plan(string name, long[] loads, double chance, double sureness, IReadOnlyList<LeftoverAnswer> leftovers)
    {
        var (word, rung, _) = _rungs.Judge(loads);
        Say((word == Word.Yes) != (_answer.Verdict == Verdict.Yes), $"{name} is {word}, the answer {_answer.Verdict}");
        Say(rung != Rounded(sureness), $"{name} has rung {rung}, not {sureness}");
        var used = Enumerable.Range(0, loads.Length).Where(b => loads[b] > 0).ToList();
        var all = used.ConvertAll(b => (Odds: OwnOdds.Of(_question.Leftovers[b], _sheet.Hat.Usage), Share: ShareOf(b, loads[b])));
        var own = all.ConvertAll(o => o.Odds.Lasts(o.Share));
        var together = OwnOdds.AllLast(all);
        Say(Math.Abs(together - chance) > Noise, $"{name} lasts with {together:0.00000}, not {chance:0.00000}");
        Say(chance > own.Min() + Noise || chance < own.Aggregate(1.0, (a, o) => a * o) - Noise,
            $"{name}: {chance} is not between the product and the least of {string.Join(' ', own)}");
        for (var i = 0; i < used.Count; i++)
        {
            var told = leftovers.First(l => l.Leftover.Id == _question.Leftovers[used[i]].Id);
            var reserve = Math.Max(0, (long)Math.Ceiling(loads[used[i]] * (100 + _question.AllowancePercent) / 100) - _sheet.Held[used[i]]);
            Say(Math.Abs(told.OwnSureness - own[i]) > Noise, $"{name}: {told.Leftover.Id} lasts with {own[i]:0.00000}, not {told.OwnSureness:0.00000}");
            Say(told.ShortOfReserve.Millimetres != reserve, $"{name}: {told.Leftover.Id} lacks {reserve} mm of the reserve, not {told.ShortOfReserve}");
        }
    }

    // The load against the metres as weighed, unrounded.
    private double ShareOf(int ball, long load)
    {
        var leftover = _question.Leftovers[ball];
        return load / 1000.0 / (double)leftover.Ratio.MetresIn(leftover.Weighing.Net.Value);
    }

    private void Compare(Ruling ruling)
    {
        Ruling = ruling;
        var (word, proven) = (WordOf(_answer), _answer.ProvenBest);
        Open = ruling.Word is null || (ruling.Word == Word.No ? ruling.Short is null : ruling.Reach is null || ruling.Width is null
            || ruling.Sureness is null || ruling.Tidy is null);
        if (ruling.Word is not { } best)
        {
            return;
        }

        Say(word > best, $"{word}, better than can be: {best}");
        Say(word < best && WordProven, $"said to be the best word: {word}, but {best} can be had");
        if (word != best)
        {
            return;
        }

        if (best == Word.No)
        {
            Say(ruling.Short > _answer.Short.Millimetres, $"short by {_answer.Short}, less than can be: {ruling.Short} mm");
            Say(ruling.Short < _answer.Short.Millimetres && _plan, $"said to be least short: {_answer.Short}, but {ruling.Short} mm can be had");
            return;
        }

        Say(Rounded(_answer.Reach) > ruling.Reach, $"reach {_answer.Reach}, better than can be: {ruling.Reach}");
        Say(Rounded(_answer.Reach) < ruling.Reach && WordProven, $"said to reach {_answer.Reach}, but {ruling.Reach} can be had");
        var width = _sheet.WidthOf(_ballOf);
        Say(width > ruling.Width && _plan, $"the brim is from set {width} where {ruling.Width} does");
        if (width > ruling.Width || ruling.Width is null || ruling.Sureness is null)
        {
            return;
        }

        if (ruling.Changed is { } changed && _question.Like.Count > 0)
        {
            var ours = Everything.Changed(_sheet, _ballOf);
            Say(ours != changed && proven, $"{ours} parts changed where {changed} would do");
            if (ours != changed)
            {
                return;
            }
        }

        Say(Rounded(_answer.Sureness) > ruling.Sureness, $"sure to {_answer.Sureness}, better than can be: {ruling.Sureness}");
        Say(Rounded(_answer.Sureness) < ruling.Sureness && _plan, $"said to be surest at {_answer.Sureness}, but {ruling.Sureness} can be had");
        if (Rounded(_answer.Sureness) == ruling.Sureness && ruling.Keeps is { } keeps && ruling.Tidy is { } tidiest)
        {
            var loads = _sheet.LoadsOf(_ballOf);
            Say(_rungs.Judge(loads).Keeps != keeps && proven, keeps ? "does not keep the reserve where it could" : "keeps the reserve where none can");
            var bears = keeps ? _rungs.Kept(word, ruling.Sureness.Value) : _rungs.Bears(word, ruling.Sureness.Value);
            var ours = bears.Zip(loads, Sheet.Worth).Sum();
            Say(_rungs.Judge(loads).Keeps == keeps && ours > tidiest, $"tidier than can be: {ours} for {tidiest}");
            Say(ours < tidiest && proven, $"said to be tidiest: {ours}, but {tidiest} can be had");
            UsesMostUp(ruling);
            Say(ours == tidiest && proven && ruling.SeamDiffers == true && !_sheet.SeamDiffers(_ballOf),
                "the seam's two stripes are alike where they need not be");
        }
    }

    // The plan that uses most up, or the surest where it is the same, is the tidiest by what the target asks.
    private void UsesMostUp(Ruling ruling)
    {
        if (ruling.MostUp is { } most && _question.Like.Count == 0)
        {
            var plan = _answer.Plans.FirstOrDefault(p => p.Kind == PlanKind.UsesMostUp)?.Parts ?? _answer.Parts;
            var ours = _sheet.Worth(_rungs.Bears(Word.Yes, _sheet.Target), BallOf(_sheet, plan));
            Say(ours != most && (ours > most || _answer.ProvenBest), $"the plan that uses most up comes to {ours}, where {most} can be had");
        }
    }

    private void Reason(Why? why)
    {
        Open |= why is null;
        if (why is null || !_plan)
        {
            return;
        }

        var pinned = _question.Locks.Count + _question.Never.Count > 0;
        var count = _answer.Verdict == Verdict.No ? Counts.Of(_sheet) : null;
        Say(_answer.TooFew is { } told && !Counts.Holds(_sheet, told), $"{_answer.TooFew} is not so");
        Say((_answer.Why == Why.TooFewLeftovers) != (_answer.TooFew is not null), $"{_answer.Why} with {_answer.TooFew}");
        Say(!pinned && count is not null && _answer.TooFew != count, $"{_answer.TooFew?.ToString() ?? $"{_answer.Why}"}, where it is {count}");
        Say(count is null && _answer.TooFew is null && _answer.Why != why, $"why {_answer.Why}, where it is {why}");
    }
}
