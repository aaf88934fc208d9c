using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Parts that come from one leftover, in whole millimetres.</summary>
/// <param name="Members">Indices into the hat's parts, in knitting order.</param>
/// <param name="Need">What they take together, two tails counted once.</param>
/// <param name="Band">0 brim and crown, 1 stripes, 2 strands, 3 the rest: the highest of its members.</param>
/// <param name="Stripe">Whether a stripe, or a printed letter that is not told apart, is among them.</param>
/// <param name="Head">Whether brim, crown or the thread that runs through is among them.</param>
/// <param name="Brim">Whether the brim is among them and nobody has said what it is knitted from.</param>
internal sealed record Lot(IReadOnlyList<int> Members, long Need, int Band, bool Stripe, bool Head, bool Brim);

/// <summary>
/// A question laid out from the rules as they are written down, for the proof: it shares nothing with the matcher but the hat's parts
/// and needs, the leftovers' millimetres and the tabled rules of colour and fibre.
/// </summary>
internal sealed class Sheet
{
    private const long TwoTails = 300;
    private const double ReadsAsOne = 5;
    private readonly bool[][] _fits;
    private readonly int[] _width;
    private readonly Lab?[] _labs;
    private readonly Dictionary<(int, int), bool> _alike = [];

    private Sheet(Question question, HatNeeds hat, Lot[] lots, IReadOnlyList<(int, int)> apart, bool[][] fits)
    {
        (Question, Hat, Lots, Apart, _fits) = (question, hat, lots, apart, fits);
        Held = [.. question.Leftovers.Select(l => l.Held.Millimetres)];
        _width = [.. question.Leftovers.Select(WidthOf)];
        _labs = [.. question.Leftovers.Select(l => l.Colour?.Lab)];
    }

    public Question Question { get; }

    public HatNeeds Hat { get; }

    public Lot[] Lots { get; }

    /// <summary>What each leftover holds, in the order asked.</summary>
    public long[] Held { get; }

    /// <summary>Lots that must come from different leftovers of different colours.</summary>
    public IReadOnlyList<(int A, int B)> Apart { get; }

    /// <summary>The rung a yes asks of every leftover.</summary>
    public decimal Target => (decimal)Math.Round(Question.Target, 2);

    /// <summary>Whether each stripe has a leftover of its own.</summary>
    public bool Own => Question.Arrangement is Arrangement.OwnColours or Arrangement.OneThread;

    /// <summary>How many widths of the brim's choice there are to try.</summary>
    public int Widths => Hat.Parts.Any(p => p.Kind == PartKind.Brim) ? 4 : 1;

    public static Sheet Of(Question question, HatNeeds hat)
    {
        var parts = hat.Parts;
        var named = question.Locks.Concat(question.Never).Select(p => p.Part).ToHashSet(StringComparer.Ordinal);
        var keys = parts.Select((_, i) => KeyOf(question, hat, i, named)).ToList();
        var groups = keys.Distinct(StringComparer.Ordinal).Select(k => Enumerable.Range(0, parts.Count).Where(i => keys[i] == k).ToList()).ToList();
        var lots = new List<Lot>();
        var fits = new List<bool[]>();
        foreach (var members in groups)
        {
            bool Of(string part) => members.Exists(m => parts[m].Name == part || (parts[m].Yarn == part && !named.Contains(parts[m].Name)));
            var locks = question.Locks.Where(p => Of(p.Part)).ToList();
            var never = question.Never.Where(p => Of(p.Part)).Select(p => p.Leftover).ToList();
            var kept = locks.Select(l => l.Leftover).Distinct(StringComparer.Ordinal).ToList();

            // Held double from two leftovers, each gives the full length; from one, it gives it twice.
            var doubled = locks.Exists(l => l.HeldDouble);
            var lot = new Lot(
                members,
                (doubled && kept.Count == 1 ? 2 : 1) * NeedOf(question, hat, members),
                members.Min(m => BandOf(parts[m].Kind)),
                members.Exists(m => parts[m].Kind is PartKind.Stripe or PartKind.Yarn),
                keys[members[0]] == "thread" || members.Exists(m => parts[m].Kind is PartKind.Brim or PartKind.Crown),
                locks.Count == 0 && members.Exists(m => parts[m].Kind == PartKind.Brim));
            foreach (var strand in doubled ? kept.ConvertAll(k => new[] { k }) : [[.. kept]])
            {
                lots.Add(lot);
                fits.Add([.. question.Leftovers.Select(l => !never.Contains(l.Id, StringComparer.Ordinal)
                    && (strand.Length > 0 ? Array.TrueForAll(strand, k => k == l.Id) : l.ClassOrGuess == hat.WeightClass))]);
            }
        }

        return new Sheet(question, hat, [.. lots], question.Blend ? [] : [.. ApartIn(question, parts, keys, lots)], [.. fits]);
    }

    /// <summary>Whether a lot may come from a leftover, the other lots and the metres aside.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="ball">The leftover.</param>
    /// <param name="width">0 the brim from what keeps shape, 1 what relaxes too, 2 unknown fibre too, 3 all.</param>
    public bool Fits(int lot, int ball, int width) => _fits[lot][ball] && (!Lots[lot].Brim || _width[ball] <= width);

    /// <summary>Whether two leftovers may not lie side by side.</summary>
    public bool Alike(int a, int b)
    {
        if (a == b)
        {
            return true;
        }

        if (_labs[a] is not { } x || _labs[b] is not { } y)
        {
            return false;
        }

        var key = a < b ? (a, b) : (b, a);
        if (!_alike.TryGetValue(key, out var alike))
        {
            _alike[key] = alike = ColourDifference.Ciede2000(x, y) < ReadsAsOne;
        }

        return alike;
    }

    /// <summary>How tidy one leftover ends: finished within 2 m counts for, a stub under 8 m against; thousandths of the scale on which finishing is
    /// 10.</summary>
    public static long Worth(long bears, long load) => (bears - load, load) switch
    {
        (_, 0) or ( >= 8_000, _) => 0,
        ( <= 2_000 and var spare, _) => 10_000 - spare,
        var (spare, _) => -10_000 - spare,
    };

    /// <summary>How tidy a whole assignment is.</summary>
    public long Worth(IEnumerable<long> bears, IReadOnlyList<int> ballOf) => bears.Zip(LoadsOf(ballOf), Worth).Sum();

    /// <summary>How wide the brim's choice has to be for an assignment: 0 what keeps shape alone, 3 all.</summary>
    public int WidthOf(IReadOnlyList<int> ballOf) => Enumerable.Range(0, Lots.Length).Max(i => Lots[i].Brim && ballOf[i] >= 0 ? _width[ballOf[i]] : 0);

    /// <summary>What goes in, in millimetres: of each leftover all its load, or all it holds.</summary>
    public long GoesIn(IReadOnlyList<int> ballOf) => LoadsOf(ballOf).Zip(Held, Math.Min).Sum();

    /// <summary>What all parts take, in millimetres.</summary>
    public long Whole => Lots.Sum(l => l.Need);

    /// <summary>The lots of the first stripe and the last, where they meet at a seam.</summary>
    public (int First, int Last)? Seam
    {
        get
        {
            var last = Hat.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Number).DefaultIfEmpty(0).Max();
            int LotOf(int number) => Array.FindIndex(Lots, l => l.Members.Any(m => Hat.Parts[m] is { Kind: PartKind.Stripe } p && p.Number == number));
            return Hat.StripesMeetAtSeam && last >= 2 ? (LotOf(1), LotOf(last)) : null;
        }
    }

    /// <summary>Whether the last stripe and the first come from leftovers that can be told apart; true where they never meet.</summary>
    public bool SeamDiffers(IReadOnlyList<int> ballOf) => Seam is not { } seam || !Alike(ballOf[seam.First], ballOf[seam.Last]);

    public long[] LoadsOf(IReadOnlyList<int> ballOf)
    {
        var loads = new long[Held.Length];
        for (var i = 0; i < Lots.Length; i++)
        {
            if (ballOf[i] >= 0)
            {
                loads[ballOf[i]] += Lots[i].Need;
            }
        }

        return loads;
    }

    /// <summary>The first rule an assignment breaks, or null.</summary>
    public string? Broken(IReadOnlyList<int> ballOf, IReadOnlyList<long> bears, int width)
    {
        var loads = LoadsOf(ballOf);
        for (var b = 0; b < bears.Count; b++)
        {
            if (loads[b] > bears[b])
            {
                return $"leftover {b} bears {loads[b]} mm of {bears[b]}";
            }
        }

        for (var i = 0; i < Lots.Length; i++)
        {
            if (ballOf[i] >= 0 && !MayJoin(i, ballOf[i], ballOf, width))
            {
                return $"lot {i} may not come from leftover {ballOf[i]}";
            }
        }

        return null;
    }

    /// <summary>Whether a lot may come from a leftover, all others being where they are, metres aside.</summary>
    public bool MayJoin(int lot, int ball, IReadOnlyList<int> ballOf, int width) =>
        Fits(lot, ball, width)
        && Apart.All(p => (p.A != lot || ballOf[p.B] < 0 || !Alike(ball, ballOf[p.B])) && (p.B != lot || ballOf[p.A] < 0 || !Alike(ball, ballOf[p.A])))
        && (!Own || !Enumerable.Range(0, Lots.Length).Any(o => o != lot && ballOf[o] == ball && Excludes(Lots[o], Lots[lot])));

    /// <summary>Whether, each stripe having a leftover of its own, two lots may not share one.</summary>
    public static bool Excludes(Lot a, Lot b) => (a.Stripe && (b.Stripe || b.Head)) || (b.Stripe && a.Head);

    // Two tails are counted once where parts merge; a pom-pom is as it was typed, and what is printed holds its ends.
    private static long NeedOf(Question question, HatNeeds hat, List<int> members) => hat.Parts[members[0]].Kind == PartKind.PomPom
        ? ((HatDesign)question.Hat).PomPom!.Value.Millimetres
        : members.Sum(m => hat.Parts[m].Need(hat.Usage, withEnds: false).Millimetres) + (hat.Plan is null ? 0 : TwoTails);

    private static int WidthOf(Leftover leftover) => leftover.Brim switch
    {
        { FibreUnknown: true } => 2,
        { Keeping: BrimKeeping.Keeps } => 0,
        { Keeping: BrimKeeping.Relaxes } => 1,
        _ => 3,
    };

    private static int BandOf(PartKind kind) => kind switch
    {
        PartKind.Brim or PartKind.Crown => 0,
        PartKind.Stripe or PartKind.Yarn => 1,
        PartKind.Strand => 2,
        _ => 3,
    };

    // What a part is one part with, in words.
    private static string KeyOf(Question question, HatNeeds hat, int at, HashSet<string> named)
    {
        var part = hat.Parts[at];
        if (hat.Plan is null)
        {
            return named.Contains(part.Name) ? "part " + part.Name : "letter " + part.Yarn;
        }

        switch (question.Arrangement, part.Kind)
        {
            case (Arrangement.OneGround, PartKind.Brim or PartKind.Stripe or PartKind.Crown):
                return "ground";
            case (Arrangement.OneThread, PartKind.Brim):
            case (Arrangement.OneThread, PartKind.Strand) when part.Strand == 'a':
                return "thread";
            case (Arrangement.InTurn, PartKind.Stripe):
                return $"turn {(part.Number - 1) % question.InTurn}";
        }

        var uncut = part.Kind == PartKind.Strand
            && question.Arrangement != Arrangement.OneGround
            && (question.Arrangement == Arrangement.OneThread || hat.Strands == StrandSource.Neighbours);
        if (!uncut)
        {
            return part.Name;
        }

        var way = part.Strand == 'a' ? -1 : 1;
        for (var i = at + way; i >= 0 && i < hat.Parts.Count; i += way)
        {
            if (hat.Parts[i].Kind == PartKind.Stripe || (way < 0 && hat.Parts[i].Kind == PartKind.Brim))
            {
                return KeyOf(question, hat, i, named);
            }
        }

        return part.Name;
    }

    private static IEnumerable<(int, int)> ApartIn(Question question, IReadOnlyList<HatPart> parts, List<string> keys, List<Lot> lots)
    {
        bool SideBySide(int i, int j)
        {
            var (p, q) = (parts[i], parts[j]);
            var stripes = p.Kind == PartKind.Stripe && q.Kind == PartKind.Stripe && (question.Arrangement == Arrangement.InTurn
                || Math.Abs(q.Number - p.Number) == 1);
            var strands = p.Kind == PartKind.Strand && q.Kind == PartKind.Strand && p.Number == q.Number && p.Strand != q.Strand;
            return (stripes || strands) && keys[i] != keys[j];
        }

        for (var a = 0; a < lots.Count; a++)
        {
            for (var b = a + 1; b < lots.Count; b++)
            {
                if (lots[a].Members.Any(i => lots[b].Members.Any(j => SideBySide(i, j))))
                {
                    yield return (a, b);
                }
            }
        }
    }
}
