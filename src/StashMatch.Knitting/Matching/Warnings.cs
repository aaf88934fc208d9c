using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Matching;

/// <summary>What a person should know before casting on, as typed facts.</summary>
internal static class Warnings
{
    // A strong colour: chroma of 0.10 or more in OKLab, or L* under 35; a pale one: L* over 80 [ours].
    private const double StrongChroma = 0.10;
    private const double DarkLightness = 35;
    private const double PaleLightness = 80;

    public static IReadOnlyList<Warning> For(HatNeeds hat, IReadOnlyList<PartAnswer> parts, Question question)
    {
        var byId = question.Leftovers.ToDictionary(l => l.Id, StringComparer.Ordinal);
        var served = parts.SelectMany(p => p.All.Select(a => (p.Part, Leftover: byId[a.Leftover]))).ToList();
        var used = served.GroupBy(s => s.Leftover.Id, StringComparer.Ordinal)
            .Select(g => (g.First().Leftover, First: g.First().Part, Used: parts.SelectMany(p => p.All).Where(a => a.Leftover == g.Key).Sum(a => a.Metres.Value)))
            .ToList();
        return
        [
            .. served.Where(s => s.Part.Kind == PartKind.Brim).Select(s => BrimWarning(s.Part, s.Leftover)).OfType<Warning>(),
            .. used.Where(u => u.Leftover.ClassOrGuess != hat.WeightClass).Select(u => new Warning(WarningCode.WeightClassMix, u.First.Name, u.Leftover.Id)),
            .. SideBySide(hat, parts, byId),
            .. Seam(hat, parts, byId, question),
            .. CareMix(used.ConvertAll(u => u.Leftover)),
            .. ColourRun(used.ConvertAll(u => u.Leftover)),
            .. used.Where(u => IsCoarse(u.Leftover, u.Used)).Select(u => new Warning(WarningCode.CoarseScale, u.First.Name, u.Leftover.Id)),
            .. used.Where(u => u.Leftover.Ratio.Source == RatioSource.Guessed).Select(u => new Warning(WarningCode.GuessedRatio, u.First.Name, u.Leftover.Id)),
            .. used.Where(u => hat.Plan is { } plan && Tightness.IsOdd(u.Leftover.Ratio, plan.Gauge)).Select(u => new Warning(WarningCode.GaugeOrLabel, u.First.Name, u.Leftover.Id)),
            .. used.Where(u => u.Leftover.Class is { } said && WeightClasses.IsFarFrom(said, u.Leftover.Ratio)).Select(u => new Warning(WarningCode.LabelOrClass, u.First.Name, u.Leftover.Id)),
        ];
    }

    private static Warning? BrimWarning(HatPart part, Leftover leftover) => leftover.Brim switch
    {
        { FibreUnknown: true } => new Warning(WarningCode.BrimUnknownFibre, part.Name, leftover.Id),
        { Keeping: BrimKeeping.Relaxes } r => new Warning(WarningCode.BrimRelax, part.Name, leftover.Id, CloseCall: r.CloseCall),
        { Keeping: BrimKeeping.Prone } r => new Warning(WarningCode.BrimStretch, part.Name, leftover.Id, CloseCall: r.CloseCall),
        _ => null,
    };

    private static IEnumerable<Warning> SideBySide(HatNeeds hat, IReadOnlyList<PartAnswer> parts, Dictionary<string, Leftover> byId)
    {
        var unknown = new HashSet<string>(StringComparer.Ordinal);
        var pairs = Grouping.SideBySide(hat.Parts).ToList();
        var stripes = Enumerable.Range(0, parts.Count).Where(i => parts[i].Part.Kind == PartKind.Stripe).ToList();
        if (hat.StripesMeetAtSeam && stripes.Count > 2)
        {
            pairs.Add((stripes[^1], stripes[0]));
        }

        foreach (var (i, j) in pairs)
        {
            if (parts[i].From is not { } from || parts[j].From is not { } other)
            {
                continue;
            }

            var (p, q, a, b) = (parts[i].Part, parts[j].Part, byId[from.Leftover], byId[other.Leftover]);
            if (a.Colour is not { } x || b.Colour is not { } y)
            {
                foreach (var (part, l) in new[] { (p, a), (q, b) }.Where(s => s.Item2.Colour is null && unknown.Add(s.Item2.Id)))
                {
                    yield return new Warning(WarningCode.ColourUnknown, part.Name, l.Id);
                }

                continue;
            }

            // A hat in one ground has one colour in all its stripes on purpose.
            if (a.Id == b.Id && p.Kind == PartKind.Stripe)
            {
                continue;
            }

            var (value, difference) = (Math.Abs(x.Lab.L - y.Lab.L), ColourDifference.Ciede2000(x.Lab, y.Lab));
            if (p.Number > q.Number && difference < ColourRule.ReadsAsOne)
            {
                continue;
            }

            if (p.Kind == PartKind.Strand && value < ColourRule.SameValue)
            {
                yield return new Warning(WarningCode.BraidSameValue, p.Name, a.Id, q.Name, b.Id);
            }
            else if (difference < ColourRule.Close || (p.Kind == PartKind.Strand && value < ColourRule.SoftValue))
            {
                yield return new Warning(WarningCode.LowContrast, p.Name, a.Id, q.Name, b.Id);
            }
        }
    }

    // Where one leftover serves all stripes on purpose the seam is no surprise.
    private static IEnumerable<Warning> Seam(HatNeeds hat, IReadOnlyList<PartAnswer> parts, Dictionary<string, Leftover> byId, Question question)
    {
        var stripes = parts.Where(p => p.Part.Kind == PartKind.Stripe).OrderBy(p => p.Part.Number).ToList();
        if (!hat.StripesMeetAtSeam || stripes.Count < 2 || question.Arrangement == Arrangement.OneGround
            || stripes[0].From is not { } first || stripes[^1].From is not { } last)
        {
            yield break;
        }

        var (a, b) = (byId[first.Leftover], byId[last.Leftover]);
        if (a.Id == b.Id || (a.Colour is { } x && b.Colour is { } y && ColourDifference.Ciede2000(x.Lab, y.Lab) < ColourRule.ReadsAsOne))
        {
            yield return new Warning(WarningCode.SeamSameColour, stripes[^1].Part.Name, b.Id, stripes[0].Part.Name, a.Id);
        }
    }

    private static IEnumerable<Warning> CareMix(List<Leftover> used)
    {
        var washable = used.Find(l => l.Fibre.HasSuperwashWool(l.Superwash));
        var untreated = used.Find(l => l.Fibre.HasUntreatedWool(l.Superwash));
        if (washable is not null && untreated is not null)
        {
            yield return new Warning(WarningCode.CareMix, null, washable.Id, null, untreated.Id);
        }
    }

    private static IEnumerable<Warning> ColourRun(List<Leftover> used)
    {
        var strong = used.Where(l => l.Colour is { } c && c.Lab.L <= PaleLightness && (c.OkLab.Chroma >= StrongChroma || c.Lab.L < DarkLightness))
            .OrderBy(l => l.Colour!.Value.Lab.L).ThenBy(l => l.Id, StringComparer.Ordinal).FirstOrDefault();
        var pale = used.Where(l => l.Colour is { } c && c.Lab.L > PaleLightness)
            .OrderByDescending(l => l.Colour!.Value.Lab.L).ThenBy(l => l.Id, StringComparer.Ordinal).FirstOrDefault();
        if (strong is not null && pale is not null)
        {
            yield return new Warning(WarningCode.ColourRun, null, strong.Id, null, pale.Id);
        }
    }

    // One step over 10 % of the reading, or worth more than what is left on that ball: only then can it turn the answer.
    private static bool IsCoarse(Leftover leftover, decimal usedMetres)
    {
        var step = leftover.Weighing.ScaleStep.Value;
        var left = leftover.Held.Value - usedMetres;
        return step > leftover.Weighing.Net.Value / 10 || leftover.Ratio.MetresIn(step) > left;
    }
}
