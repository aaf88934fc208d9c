using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>One answer held against what the models prove, tier by tier.</summary>
internal sealed class Comparison
{
    private const double GoodChance = 0.80;
    private readonly List<string> _complaints = [];
    private readonly Answer _answer;
    private readonly Sheet _sheet;
    private readonly int[] _ballOf;

    private Comparison(Question question, Answer answer)
    {
        (_answer, _sheet) = (answer, Sheet.Of(question, answer.Hat));
        _ballOf = BallOf(_sheet, answer);
    }

    /// <summary>The leftover each lot wholly comes from, -1 where none gives it all, read off an answer.</summary>
    public static int[] BallOf(Sheet sheet, Answer answer)
    {
        var at = sheet.Question.Leftovers.Select((l, i) => (l.Id, i)).ToDictionary(l => l.Id, l => l.i, StringComparer.Ordinal);
        return [.. sheet.Lots.Select((lot, i) =>
        {
            var from = lot.Members.SelectMany(m => answer.Parts[m].All).Where(a => sheet.Fits(i, at[a.Leftover], 3)).GroupBy(a => a.Leftover, StringComparer.Ordinal)
                .FirstOrDefault(g => g.Sum(a => a.Metres.Millimetres) == lot.Need);
            return from is null ? -1 : at[from.Key];
        })];
    }

    /// <summary>What is wrong with the answer; empty where nothing is.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>Whether the solver's own limit left something unsaid.</summary>
    public bool Open { get; private set; }

    public bool Proven => _answer.ProvenBest;

    public bool Complete => _answer.Verdict != Verdict.No;

    public static Comparison Of(Question question, CancellationToken cancel)
    {
        if (!Matcher.TryAnswer(question, out var answer, out var why, cancel))
        {
            throw new ArgumentException(why.Reason, nameof(question));
        }

        var comparison = new Comparison(question, answer);
        comparison.Compare();
        return comparison;
    }

    private void Compare()
    {
        Legal();
        if (_complaints.Count > 0)
        {
            return;
        }

        var width = -1;
        for (var w = 0; w < _sheet.Widths && width < 0; w++)
        {
            var any = CompactModel.Any(_sheet, 0, _sheet.Widths == 1 ? 3 : w);
            Open |= any.Proof == Proof.Open;
            width = any.Proof == Proof.Best ? _sheet.Widths == 1 ? 3 : w : -1;
        }

        if (Open)
        {
            return;
        }

        Say(Complete && width < 0, "covered, but the model knows no way to cover it");
        Say(!Complete && width >= 0 && Proven, $"said to be short for sure, but it can be covered (brim width {width})");
        if (width < 0)
        {
            Incomplete();
        }
        else if (Complete)
        {
            Say(Proven && _sheet.Broken(_ballOf, 0, width) is not null, $"the brim is from a wider choice than need be (width {width} does)");
            Safe(_sheet.Broken(_ballOf, 0, width) is null ? width : 3);
        }
    }

    private void Say(bool wrong, string complaint)
    {
        if (wrong)
        {
            _complaints.Add(complaint);
        }
    }

    private void Legal()
    {
        Say(_sheet.Broken(_ballOf, 0, 3) is not null, $"breaks a rule: {_sheet.Broken(_ballOf, 0, 3)}");
        foreach (var lots in _sheet.Lots.GroupBy(l => l.Members))
        {
            var need = lots.Key.Sum(m => _answer.Parts[m].Need.Millimetres);
            var from = lots.Key.SelectMany(m => _answer.Parts[m].All).Select(a => a.Leftover).Distinct(StringComparer.Ordinal).Count();
            Say(need != lots.Sum(l => l.Need), $"parts {string.Join(' ', lots.Key)} take {lots.Sum(l => l.Need)} mm, not {need}");
            Say(from > lots.Count(), $"parts {string.Join(' ', lots.Key)} are from several leftovers");
        }

        Say(_answer.Short.Millimetres != ShortOf(_sheet, _ballOf), $"short by {_answer.Short}, not {ShortOf(_sheet, _ballOf)} mm");
        var covered = Array.TrueForAll(_ballOf, b => b >= 0);
        Say(covered != Complete, "the verdict and what is covered do not go together");
        Say(!covered && (_answer.ChanceOfEnough != 0 || _answer.MarginPercent != 0 || _answer.SafeToPercent is not null), "short, but with a chance, a margin or a rung");
        if (covered)
        {
            var chance = ChanceOf(_ballOf);
            var held = _sheet.Broken(_ballOf, _sheet.Question.AllowancePercent, 3) is null;
            Say(Math.Abs(chance - _answer.ChanceOfEnough) > 1e-9, $"the chance is {chance}, not {_answer.ChanceOfEnough}");
            Say((_answer.Verdict == Verdict.Yes) != (held && chance >= GoodChance), $"{_answer.Verdict}: with the allowance {held}, chance {chance}");
            Say(_sheet.Broken(_ballOf, _answer.SafeToPercent!.Value, 3) is not null, $"not safe to {_answer.SafeToPercent} %");
        }
    }

    // Each uncovered lot, longest first, is short by its need less the longest free remainder that every rule lets it have.
    private static long ShortOf(Sheet sheet, int[] covered)
    {
        var ballOf = (int[])covered.Clone();
        var free = sheet.Held.Zip(sheet.LoadsOf(ballOf), (h, l) => h - l).ToArray();
        var shortBy = 0L;
        foreach (var lot in Enumerable.Range(0, ballOf.Length).Where(i => covered[i] < 0).OrderByDescending(i => sheet.Lots[i].Need).ThenBy(i => i))
        {
            var longest = Enumerable.Range(0, free.Length).Where(b => free[b] > 0 && sheet.MayJoin(lot, b, ballOf, 3)).DefaultIfEmpty(-1).MaxBy(b => b < 0 ? 0 : free[b]);
            var goesIn = longest < 0 ? 0 : Math.Min(free[longest], sheet.Lots[lot].Need);
            shortBy += sheet.Lots[lot].Need - goesIn;
            if (longest >= 0)
            {
                (ballOf[lot], free[longest]) = (longest, free[longest] - goesIn);
            }
        }

        return shortBy;
    }

    private void Incomplete()
    {
        var most = CompactModel.MostCovered(_sheet, 3);
        if (most.Proof == Proof.Open)
        {
            Open = true;
            return;
        }

        var (ours, best) = (_sheet.Bands(_ballOf), _sheet.Bands(most.BallOf));
        var order = ours.Zip(best, (o, b) => o.CompareTo(b)).FirstOrDefault(c => c != 0);
        Say(order > 0, $"covers more than can be: {string.Join(' ', ours)} for {string.Join(' ', best)}");
        Say(order < 0 && Proven, $"said to cover the most, but does not: {string.Join(' ', ours)} for {string.Join(' ', best)}");
        if (order == 0)
        {
            Tidy(new CompactModel(_sheet, 0, 3, coverAll: false).Tidiest(best), 0);
        }
    }

    private void Safe(int width)
    {
        var rung = _answer.SafeToPercent!.Value;
        var allowance = _sheet.Question.AllowancePercent;
        var enough = rung >= allowance && _answer.ChanceOfEnough >= GoodChance;
        foreach (var other in _sheet.Ladder.Where(r => enough ? r >= allowance && r < rung : r > rung))
        {
            // A lower rung would have ended the climb had its best plan been likely enough; a higher one, had there been a plan at all.
            if (enough)
            {
                Say(Proven && AlwaysEnough(other, width), $"climbed to {rung} %, though the best plan at {other} % is likely enough");
                continue;
            }

            var higher = CompactModel.Any(_sheet, other, width);
            Open |= higher.Proof == Proof.Open;
            Say(Proven && higher.Proof == Proof.Best, $"said to be safest at {rung} %, but {other} % can be had");
            break;
        }

        if (!enough)
        {
            foreach (var other in _sheet.Ladder.Where(r => r >= allowance && r < rung))
            {
                Say(Proven && AlwaysEnough(other, width), $"only just, though the best plan at {other} % is likely enough");
            }
        }

        Tidy(CompactModel.Tidiest(_sheet, rung, width), rung);
    }

    private bool AlwaysEnough(decimal rung, int width)
    {
        var tidiest = CompactModel.Tidiest(_sheet, rung, width);
        return tidiest.Proof == Proof.Best && ChanceOf(tidiest.BallOf) >= GoodChance
            && new CompactModel(_sheet, rung, width, coverAll: true).AsTidyAs(tidiest.Value, 40) is { Count: > 0 and < 40 } all && all.All(b => ChanceOf(b) >= GoodChance);
    }

    private void Tidy(Settled tidiest, decimal rung)
    {
        var ours = _sheet.Worth(rung, _ballOf);
        Open |= tidiest.Proof == Proof.Open;
        if (tidiest.Proof != Proof.Best)
        {
            return;
        }

        if (tidiest.Value != _sheet.Worth(rung, tidiest.BallOf) || _sheet.Broken(tidiest.BallOf, rung, 3) is not null)
        {
            throw new InvalidOperationException("The model does not say what the rules say.");
        }

        Say(ours > tidiest.Value, $"tidier than can be: {ours} for {tidiest.Value} at {rung} %");
        Say(Proven && ours < tidiest.Value, $"said to be tidiest, but is not: {ours} for {tidiest.Value} at {rung} %");
    }

    private double ChanceOf(int[] ballOf)
    {
        return Chance.OfEnough(_sheet.Hat.Usage, [.. Enumerable.Range(0, ballOf.Length).GroupBy(i => ballOf[i]).OrderBy(g => g.Key).Select(g => new Load(
            _sheet.Question.Leftovers[g.Key], Metres.FromMillimetres(g.Sum(i => _sheet.Lots[i].Need))))]);
    }
}
