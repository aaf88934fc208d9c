using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Matching;

/// <summary>Looks every answer over from the question alone, before anyone sees it. Shares no arithmetic with the search.</summary>
public static class Checker
{
    /// <summary>Checks an answer against its question.</summary>
    /// <exception cref="InvalidOperationException">A rule is broken: a fault of the matcher, never of the knitter.</exception>
    public static void Check(Answer answer, Question question)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(question);
        var byId = question.Leftovers.ToDictionary(l => l.Id, StringComparer.Ordinal);
        foreach (var part in answer.Parts)
        {
            var goesIn = part.All.Sum(a => a.Metres.Millimetres);
            Must(goesIn + part.Short.Millimetres == part.Need.Millimetres, $"{part.Part.Name}: what goes in and what is short are not the need");
            var own = question.Apart.Contains(part.Part.Name, StringComparer.Ordinal) || question.Locks.Any(l => l.Part == part.Part.Name) || question.Never.Any(n => n.Part == part.Part.Name);
            var locks = question.Locks.Where(l => l.Part == (own ? part.Part.Name : part.Part.Yarn ?? part.Part.Name)).ToList();
            foreach (var f in part.All)
            {
                Must(locks.Count == 0 || part.HeldDouble || locks.TrueForAll(l => l.Leftover == f.Leftover), $"{part.Part.Name}: not from the leftover it is kept to");
                Must(!question.Never.Any(n => n.Part == part.Part.Name && n.Leftover == f.Leftover), $"{part.Part.Name}: from one it must not be");
                Must(byId[f.Leftover].ClassOrGuess == answer.Hat.WeightClass || question.Locks.Any(l => l.Leftover == f.Leftover), $"{part.Part.Name}: another weight class");
            }
        }

        foreach (var l in answer.Leftovers)
        {
            var sum = answer.Parts.SelectMany(p => p.All).Where(a => a.Leftover == l.Leftover.Id).Sum(a => a.Metres.Millimetres);
            Must(sum == l.Used.Millimetres && l.Used + l.Left == l.Leftover.Held, $"{l.Leftover.Id}: what goes in and what is left are not what is held");
            Must(answer.Verdict != Verdict.Yes || l.Used.Millimetres * (100 + question.AllowancePercent) <= l.Leftover.Held.Millimetres * 100m, $"{l.Leftover.Id}: a yes without the allowance");
        }

        Must(answer.Short.Millimetres == answer.Parts.Sum(p => p.Short.Millimetres), "the hat is not short by the sum of its parts");
        Must((answer.Verdict == Verdict.No) == (answer.Short.Millimetres > 0), "a no and a shortfall go together");
        var served = answer.Parts.SelectMany(p => p.All.Select(a => (p.Part, Leftover: byId[a.Leftover]))).ToList();
        foreach (var (p, a) in served)
        {
            foreach (var (q, b) in served.Where(s => s.Part.Name != p.Name))
            {
                CheckPair(answer, question, p, q, a, b);
            }
        }
    }

    private static void CheckPair(Answer answer, Question question, HatPart p, HatPart q, Yarns.Leftover a, Yarns.Leftover b)
    {
        if (OnePart(question, p, q))
        {
            return;
        }

        var inTurn = answer.Arrangement == Arrangement.InTurn && p.Kind == PartKind.Stripe && q.Kind == PartKind.Stripe && (q.Number - p.Number) % question.InTurn != 0;
        var sideBySide = inTurn || (p.Kind == PartKind.Stripe && q.Kind == PartKind.Stripe && q.Number - p.Number == 1)
            || (p.Kind == PartKind.Strand && q.Kind == PartKind.Strand && p.Number == q.Number && p.Strand < q.Strand);
        var onePart = answer.Arrangement == Arrangement.OneGround && p.Kind == PartKind.Stripe;
        if (sideBySide && !onePart && !question.Blend)
        {
            var tooClose = a.Colour is { } x && b.Colour is { } y && ColourDifference.Ciede2000(x.Lab, y.Lab) < ColourRule.ReadsAsOne;
            Must(a.Id != b.Id && !tooClose, $"{p.Name} and {q.Name} read as one colour");
        }

        if (answer.Arrangement is Arrangement.OwnColours or Arrangement.OneThread && p.Kind == PartKind.Stripe && a.Id == b.Id)
        {
            Must(q.Kind is PartKind.Strand or PartKind.Seam or PartKind.PomPom, $"{p.Name} does not have a leftover of its own");
            Must(answer.Arrangement == Arrangement.OwnColours || !IsThread(q) || Apart(question, q), $"{p.Name} is knitted from the thread");
        }

        var merged = answer.Arrangement switch
        {
            Arrangement.OneGround => IsGround(p) && IsGround(q),
            Arrangement.OneThread => IsThread(p) && IsThread(q),
            Arrangement.InTurn => p.Kind == PartKind.Stripe && q.Kind == PartKind.Stripe && (q.Number - p.Number) % question.InTurn == 0,
            _ => false,
        };
        Must(!merged || answer.Short.Millimetres > 0 || a.Id == b.Id || Apart(question, p) || Apart(question, q) || From(answer, p).SetEquals(From(answer, q)), $"{p.Name} and {q.Name} are one part from two leftovers");
    }

    private static bool IsGround(HatPart p) => p.Kind is PartKind.Brim or PartKind.Stripe or PartKind.Crown;

    private static bool IsThread(HatPart p) => p.Kind == PartKind.Brim || (p.Kind == PartKind.Strand && p.Strand == 'a');

    private static bool Apart(Question question, HatPart p) => question.Apart.Contains(p.Name, StringComparer.Ordinal);

    private static HashSet<string> From(Answer answer, HatPart p) => [.. answer.Parts.Where(o => o.Part.Name == p.Name).SelectMany(o => o.All).Select(o => o.Leftover)];

    // Parts of one printed letter, neither told apart from it, come from one leftover.
    private static bool OnePart(Question question, HatPart p, HatPart q)
    {
        string Said(HatPart part) => string.Join(
            '\n',
            question.Locks.Where(l => l.Part == part.Name).Select(l => "keep " + l.Leftover)
                .Concat(question.Never.Where(n => n.Part == part.Name).Select(n => "never " + n.Leftover))
                .Order(StringComparer.Ordinal));
        return p.Yarn is not null && p.Yarn == q.Yarn && !question.Apart.Contains(p.Name, StringComparer.Ordinal) && !question.Apart.Contains(q.Name, StringComparer.Ordinal) && Said(p) == Said(q);
    }

    private static void Must(bool holds, string broken)
    {
        if (!holds)
        {
            throw new InvalidOperationException($"The plan breaks a rule: {broken}.");
        }
    }
}
