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

    public static IReadOnlyList<Warning> For(HatNeeds hat, IReadOnlyList<PartAnswer> parts, IReadOnlyList<LeftoverAnswer> leftovers, Arrangement arrangement)
    {
        var (used, warnings) = (UsedIn(parts, leftovers), new List<Warning>());
        var byId = used.ToDictionary(u => u.Leftover.Id, u => u.Leftover, StringComparer.Ordinal);
        foreach (var part in parts)
        {
            if (part.Part.Kind == PartKind.Brim)
            {
                warnings.AddRange(part.All.Select(a => BrimWarning(part.Part, byId[a.Leftover])).OfType<Warning>());
            }
        }

        Each(WarningCode.WeightClassMix, u => u.Leftover.ClassOrGuess != hat.WeightClass);
        warnings.AddRange(SideBySide(hat, parts, byId));
        warnings.AddRange(Seam(hat, parts, byId, arrangement));
        warnings.AddRange(CareMix(used));
        warnings.AddRange(ColourRun(used));
        Each(WarningCode.CoarseScale, IsCoarse);
        Each(WarningCode.GuessedRatio, u => u.Leftover.Ratio.Source == RatioSource.Guessed);
        Each(WarningCode.GaugeOrLabel, u => hat.Plan is { } plan && Tightness.IsOdd(u.Leftover.Ratio, plan.Gauge));
        Each(WarningCode.LabelOrClass, u => u.Leftover.Class is { } said && WeightClasses.IsFarFrom(said, u.Leftover.Ratio));
        return warnings;

        void Each(WarningCode code, Func<Used, bool> applies)
        {
            foreach (var u in used)
            {
                if (applies(u))
                {
                    warnings.Add(new Warning(code, u.First, u.Leftover.Id));
                }
            }
        }
    }

    // What goes in, in knitting order of the first part each leftover serves.
    private static List<Used> UsedIn(IReadOnlyList<PartAnswer> parts, IReadOnlyList<LeftoverAnswer> leftovers)
    {
        var used = new List<Used>();
        foreach (var part in parts)
        {
            foreach (var from in part.All)
            {
                if (!used.Exists(u => u.Leftover.Id == from.Leftover))
                {
                    var answer = leftovers.First(l => l.Leftover.Id == from.Leftover);
                    used.Add(new Used(answer.Leftover, part.Part.Name, answer.Left.Value));
                }
            }
        }

        return used;
    }

    private sealed record Used(Leftover Leftover, string First, decimal Left);

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
    private static IEnumerable<Warning> Seam(HatNeeds hat, IReadOnlyList<PartAnswer> parts, Dictionary<string, Leftover> byId, Arrangement arrangement)
    {
        var stripes = parts.Where(p => p.Part.Kind == PartKind.Stripe).OrderBy(p => p.Part.Number).ToList();
        if (!hat.StripesMeetAtSeam || stripes.Count < 2 || arrangement == Arrangement.OneGround
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

    private static IEnumerable<Warning> CareMix(List<Used> used)
    {
        var washable = used.Find(u => u.Leftover.Fibre.HasSuperwashWool(u.Leftover.Superwash))?.Leftover;
        var untreated = used.Find(u => u.Leftover.Fibre.HasUntreatedWool(u.Leftover.Superwash))?.Leftover;
        if (washable is not null && untreated is not null)
        {
            yield return new Warning(WarningCode.CareMix, null, washable.Id, null, untreated.Id);
        }
    }

    private static IEnumerable<Warning> ColourRun(List<Used> all)
    {
        var used = all.ConvertAll(u => u.Leftover);
        var strong = used.FindAll(l => l.Colour is { } c && c.Lab.L <= PaleLightness && (c.Lab.L < DarkLightness || c.OkLab.Chroma >= StrongChroma))
            .OrderBy(l => l.Colour!.Value.Lab.L).ThenBy(l => l.Id, StringComparer.Ordinal).FirstOrDefault();
        var pale = used.FindAll(l => l.Colour is { } c && c.Lab.L > PaleLightness)
            .OrderByDescending(l => l.Colour!.Value.Lab.L).ThenBy(l => l.Id, StringComparer.Ordinal).FirstOrDefault();
        if (strong is not null && pale is not null)
        {
            yield return new Warning(WarningCode.ColourRun, null, strong.Id, null, pale.Id);
        }
    }

    // One step over 10 % of the reading, or worth more than what is left on that ball: only then can it turn the answer.
    private static bool IsCoarse(Used used)
    {
        var step = used.Leftover.Weighing.ScaleStep.Value;
        return step > used.Leftover.Weighing.Net.Value / 10 || used.Leftover.Ratio.MetresIn(step) > used.Left;
    }
}
