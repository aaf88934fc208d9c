using System.Runtime.CompilerServices;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Odds;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>Looks every answer over from the question alone, before anyone sees it. Shares no arithmetic with the search.</summary>
public static class Checker
{
    // Closed forms agree to so much.
    private const double Noise = 1e-6;

    /// <summary>Checks an answer against its question.</summary>
    /// <exception cref="InvalidOperationException">A rule is broken: a fault of the matcher, never of the knitter.</exception>
    public static void Check(Answer answer, Question question)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(question);
        Must(answer.Short.Millimetres == answer.Parts.Sum(p => p.Short.Millimetres), "the hat is not short by the sum of its parts");
        Must((answer.Verdict == Verdict.No) == (answer.Short.Millimetres > 0), "a no and a shortfall go together");
        Must((answer.Verdict == Verdict.Yes) == (answer.Why == Why.Covered), "a yes and its reason go together");
        Must((answer.Why == Why.TooFewLeftovers) == answer.TooFew is not null, "a count and its reason go together");
        Must(answer.TooFew is not { } few || (few.There < few.Wanted && few.Wanted > 1), "a count that falls short of nothing");
        Must(answer.Sureness <= answer.Reach, "surer than any plan");
        Must((answer.Verdict == Verdict.No) == (answer.Reach == 0), "a reach and a no");
        Must(answer.Verdict != Verdict.Yes || answer.Sureness >= question.Target, "a yes less sure than was asked");
        CheckPlan(new SharedPlan(PlanKind.Surest, answer.ChanceOfEnough, answer.MarginPercent, answer.Sureness, answer.Parts, answer.Leftovers), answer, question);
    }

    /// <summary>Checks one plan of an answer.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="answer">The answer it belongs to.</param>
    /// <param name="question">The question.</param>
    /// <exception cref="InvalidOperationException">A rule is broken: a fault of the matcher, never of the knitter.</exception>
    public static void CheckPlan(SharedPlan plan, Answer answer, Question question)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(question);
        var used = new Dictionary<string, long>(StringComparer.Ordinal);
        var byId = question.Leftovers.ToDictionary(l => l.Id, StringComparer.Ordinal);
        var served = new List<(HatPart Part, Leftover Leftover)>();
        foreach (var part in plan.Parts)
        {
            CheckPart(part, question);
            foreach (var from in part.All)
            {
                used[from.Leftover] = used.GetValueOrDefault(from.Leftover) + from.Metres.Millimetres;
                var leftover = byId[from.Leftover];
                served.Add((part.Part, leftover));
                Must(
                    leftover.ClassOrGuess == answer.Hat.WeightClass || IsLocked(question, leftover.Id),
                    $"{part.Part.Name}: another weight class");
            }
        }

        var (product, least) = (1.0, 1.0);
        foreach (var l in plan.Leftovers)
        {
            CheckLeftover(l, used.GetValueOrDefault(l.Leftover.Id), plan, answer, question);
            (product, least) = (product * l.OwnSureness, Math.Min(least, l.OwnSureness));
        }

        Must(
            answer.Verdict == Verdict.No ? plan.ChanceOfEnough == 0 : plan.ChanceOfEnough >= product - 1e-4 && plan.ChanceOfEnough <= least + 1e-4,
            "the joint chance is not between the product of the own ones and the least of them");
        for (var i = 0; i < served.Count; i++)
        {
            for (var j = 0; j < served.Count; j++)
            {
                if (served[i].Part.Name != served[j].Part.Name)
                {
                    CheckPair(plan, answer, question, served[i], served[j]);
                }
            }
        }
    }

    private static void CheckPart(PartAnswer part, Question question)
    {
        var (name, goesIn) = (part.Part.Name, part.All.Sum(a => a.Metres.Millimetres));
        Must(goesIn + part.Short.Millimetres == part.Need.Millimetres, $"{name}: what goes in and what is short are not the need");
        if (question.Locks.Count + question.Never.Count == 0)
        {
            return;
        }

        var own = Names(question.Apart, name) || question.Locks.Any(l => l.Part == name) || question.Never.Any(n => n.Part == name);
        var locks = question.Locks.Where(l => l.Part == (own ? name : part.Part.Yarn ?? name)).ToList();
        foreach (var from in part.All)
        {
            Must(part.HeldDouble || locks.TrueForAll(l => l.Leftover == from.Leftover), $"{name}: not from the leftover it is kept to");
            Must(!question.Never.Any(n => n.Part == name && n.Leftover == from.Leftover), $"{name}: from one it must not be");
        }

        Must(!part.HeldDouble || part.Short.Millimetres > 0 || locks.TrueForAll(l => part.All.Any(a => a.Leftover == l.Leftover)), $"{name}: not held double as it is kept");
    }

    private static void CheckLeftover(LeftoverAnswer l, long used, SharedPlan plan, Answer answer, Question question)
    {
        var (id, held) = (l.Leftover.Id, l.Leftover.Held);
        if (used == 0)
        {
            Must(l.Used == default && l.Left == held && l.ShortOfReserve == default && l.OwnSureness == 1, $"{id}: not used, and yet something of it is");
            return;
        }

        Must(used == l.Used.Millimetres && l.Used + l.Left == held, $"{id}: what goes in and what is left are not what is held");
        Must(l.ShortOfReserve.Millimetres == Math.Max(0, l.Used.WithAllowance(question.AllowancePercent).Millimetres - held.Millimetres), $"{id}: another reserve is short");
        if (answer.Verdict == Verdict.No)
        {
            return;
        }

        var sure = Sureness.Of(l.Leftover, l.Used, answer.Hat.Usage);
        Must(Math.Abs(sure - l.OwnSureness) < Noise, $"{id}: another own sureness");
        Must(plan.Sureness <= Rung.ByTheLabel.Chance || sure >= plan.Sureness - Noise, $"{id}: less sure than the plan is said to be");
        if (answer.Verdict == Verdict.Yes)
        {
            Must(l.ShortOfReserve == default, $"{id}: a yes without the reserve");
            Must(sure >= Rung.AskedFor(Rung.Of(question.Target), LengthDoubt.Of(l.Leftover).IsLarge).Chance - Noise, $"{id}: a yes less sure than was asked of it");
        }
    }

    private static void CheckPair(SharedPlan plan, Answer answer, Question question, (HatPart Part, Leftover Leftover) one, (HatPart Part, Leftover Leftover) other)
    {
        var ((p, a), (q, b)) = (one, other);
        var stripes = p.Kind == PartKind.Stripe && q.Kind == PartKind.Stripe;
        var turn = answer.Arrangement == Arrangement.InTurn && stripes ? (q.Number - p.Number) % question.InTurn : -1;
        var sideBySide = (turn > 0 || (stripes && q.Number - p.Number == 1) || (p.Kind == PartKind.Strand && q.Kind == PartKind.Strand && p.Number == q.Number && p.Strand < q.Strand))
            && !(answer.Arrangement == Arrangement.OneGround && stripes);
        var ownStripe = answer.Arrangement is Arrangement.OwnColours or Arrangement.OneThread && p.Kind == PartKind.Stripe && a.Id == b.Id;
        var merged = answer.Arrangement switch
        {
            Arrangement.OneGround => IsGround(p) && IsGround(q),
            Arrangement.OneThread => IsThread(p) && IsThread(q),
            _ => turn == 0,
        };
        if ((!sideBySide && !ownStripe && !merged) || OnePart(question, p, q))
        {
            return;
        }

        if (sideBySide && !question.Blend)
        {
            var tooClose = a.Colour is { } x && b.Colour is { } y && ColourDifference.Ciede2000(x.Lab, y.Lab) < ColourRule.ReadsAsOne;
            Must(a.Id != b.Id && !tooClose, $"{p.Name} and {q.Name} read as one colour");
        }

        if (ownStripe)
        {
            Must(q.Kind is PartKind.Strand or PartKind.Seam or PartKind.PomPom, $"{p.Name} does not have a leftover of its own");
            Must(answer.Arrangement == Arrangement.OwnColours || !IsThread(q) || Names(question.Apart, q.Name), $"{p.Name} is knitted from the thread");
        }

        Must(
            !merged || answer.Short.Millimetres > 0 || a.Id == b.Id || Names(question.Apart, p.Name) || Names(question.Apart, q.Name) || From(plan, p).SetEquals(From(plan, q)),
            $"{p.Name} and {q.Name} are one part from two leftovers");
    }

    private static bool IsLocked(Question question, string id) => question.Locks.Any(l => l.Leftover == id);

    private static bool IsGround(HatPart p) => p.Kind is PartKind.Brim or PartKind.Stripe or PartKind.Crown;

    private static bool IsThread(HatPart p) => p.Kind == PartKind.Brim || (p.Kind == PartKind.Strand && p.Strand == 'a');

    private static bool Names(IReadOnlyList<string> names, string name) => names.Contains(name, StringComparer.Ordinal);

    private static HashSet<string> From(SharedPlan plan, HatPart p) => [.. plan.Parts.Where(o => o.Part.Name == p.Name).SelectMany(o => o.All).Select(o => o.Leftover)];

    // Parts of one printed letter, neither told apart from it, come from one leftover.
    private static bool OnePart(Question question, HatPart p, HatPart q)
    {
        string Said(HatPart part) => string.Join(
            '\n',
            question.Locks.Where(l => l.Part == part.Name).Select(l => "keep " + l.Leftover)
                .Concat(question.Never.Where(n => n.Part == part.Name).Select(n => "never " + n.Leftover))
                .Order(StringComparer.Ordinal));
        return p.Yarn is not null && p.Yarn == q.Yarn && !Names(question.Apart, p.Name) && !Names(question.Apart, q.Name) && Said(p) == Said(q);
    }

    // What is broken is put into words only where it is.
    private static void Must(bool holds, [InterpolatedStringHandlerArgument(nameof(holds))] ref Broken broken)
    {
        if (!holds)
        {
            throw new InvalidOperationException($"The plan breaks a rule: {broken.ToText()}.");
        }
    }

    private static void Must(bool holds, string broken)
    {
        if (!holds)
        {
            throw new InvalidOperationException($"The plan breaks a rule: {broken}.");
        }
    }

    [InterpolatedStringHandler]
    private ref struct Broken
    {
        private readonly System.Text.StringBuilder? _text;

        public Broken(int literalLength, int formattedCount, bool holds, out bool isWanted)
        {
            isWanted = !holds;
            _text = holds ? null : new System.Text.StringBuilder(literalLength + (16 * formattedCount));
        }

        public void AppendLiteral(string said) => _text!.Append(said);

        public void AppendFormatted(string said) => _text!.Append(said);

        public string ToText() => _text!.ToString();
    }
}
