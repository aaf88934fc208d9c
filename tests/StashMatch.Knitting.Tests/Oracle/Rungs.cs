namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>The word, told apart as the rule tells it: what lasts by the label alone is the lower half of "only just".</summary>
internal enum Word
{
    No,
    ByTheLabel,
    OnlyJust,
    Yes,
}

/// <summary>What each leftover of a sheet may bear for each word and rung, in whole millimetres.</summary>
internal sealed class Rungs
{
    /// <summary>The rungs, lowest first.</summary>
    public static readonly IReadOnlyList<decimal> All = [0.60m, 0.70m, 0.80m, 0.85m, 0.90m, 0.93m, 0.95m, 0.97m, 0.98m, 0.99m];

    private const double DoubtAsked = 0.05;
    private readonly long[] _held;
    private readonly long[] _kept;
    private readonly OwnOdds[] _odds;
    private readonly decimal _target;
    private readonly Dictionary<(OwnOdds, decimal), double> _shares = [];
    private readonly Dictionary<(Word, decimal), long[]> _bears = [];

    public Rungs(Sheet sheet)
    {
        _held = sheet.Held;
        _target = sheet.Target;
        _odds = [.. sheet.Question.Leftovers.Select(l => OwnOdds.Of(l, sheet.Hat.Usage))];

        // What stays for the work once the reserve is taken off.
        _kept = [.. _held.Select(h => decimal.ToInt64(decimal.Floor(h * 100m / (100m + sheet.Question.AllowancePercent))))];
    }

    /// <summary>The rung a leftover in doubt has to reach for a yes: 0.97, or the next above the target, 0.99 at most.</summary>
    public decimal AskedInDoubt => Math.Max(0.97m, All.Where(r => r > _target).Append(All[^1]).First());

    /// <summary>The rungs of a word, lowest first; by the label there is one, called 0.5.</summary>
    public IReadOnlyList<decimal> Of(Word word) => word switch
    {
        Word.Yes => [.. All.Where(r => r >= _target)],
        Word.OnlyJust => All,
        _ => [0.5m],
    };

    /// <summary>What each bears so that a plan within it has that word at that rung.</summary>
    public long[] Bears(Word word, decimal rung)
    {
        if (!_bears.TryGetValue((word, rung), out var bears))
        {
            _bears[(word, rung)] = bears = word switch
            {
                Word.Yes => [.. _held.Select((_, b) => Math.Min(_kept[b], Capacity(b, InDoubt(b) ? Math.Max(rung, AskedInDoubt) : rung)))],
                Word.OnlyJust => [.. _held.Select((_, b) => Capacity(b, rung))],
                _ => _held,
            };
        }

        return bears;
    }

    /// <summary>The same with the reserve kept on every leftover.</summary>
    public long[] Kept(Word word, decimal rung) => [.. Bears(word, rung).Zip(_kept, Math.Min)];

    /// <summary>The largest load on a leftover that it lasts for at a rung.</summary>
    public long Capacity(int ball, decimal rung)
    {
        var odds = _odds[ball].Rounded();
        if (!_shares.TryGetValue((odds, rung), out var share))
        {
            _shares[(odds, rung)] = share = odds.LargestShare((double)rung);
        }

        return decimal.ToInt64(decimal.Floor(_held[ball] * (decimal)share));
    }

    /// <summary>Whether so much is unknown of a leftover itself that a yes asks more of it.</summary>
    public bool InDoubt(int ball) => _odds[ball].Doubt > DoubtAsked;

    /// <summary>What a whole plan comes to by its loads: the word, the rung, and whether the reserve stays.</summary>
    public (Word Word, decimal Rung, bool Keeps) Judge(IReadOnlyList<long> loads)
    {
        bool Within(long[] bears) => Enumerable.Range(0, bears.Length).All(b => loads[b] <= bears[b]);
        var keeps = Within(_kept);
        foreach (var word in new[] { Word.Yes, Word.OnlyJust, Word.ByTheLabel })
        {
            for (var i = Of(word).Count - 1; i >= 0; i--)
            {
                if (Within(Bears(word, Of(word)[i])))
                {
                    return (word, Of(word)[i], keeps);
                }
            }
        }

        return (Word.No, 0, false);
    }
}
