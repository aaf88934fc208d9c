using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store;

/// <summary>Makes a hat of a description, or says field by field what stands in the way.</summary>
public static class HatDescriptionReader
{
    private const int MostSizes = 40;

    private static readonly Dictionary<string, Construction> Constructions = new(StringComparer.Ordinal)
    {
        ["side-to-side"] = Construction.SideToSide,
        ["brim-up-round"] = Construction.BrimUpRound,
        ["brim-up-flat"] = Construction.BrimUpFlat,
    };

    private static readonly Dictionary<string, BrimFit> Fits = new(StringComparer.Ordinal) { ["snug"] = BrimFit.Snug, ["easy"] = BrimFit.Easy };

    private static readonly Dictionary<string, EdgeKind> Edges = new(StringComparer.Ordinal)
    {
        ["ordinary"] = EdgeKind.Ordinary,
        ["tubular"] = EdgeKind.Tubular,
        ["stretchy"] = EdgeKind.Stretchy,
    };

    private static readonly Dictionary<string, BraidPlaces> Places = new(StringComparer.Ordinal)
    {
        ["none"] = BraidPlaces.None,
        ["between-stripes"] = BraidPlaces.BetweenStripes,
        ["beside-brim-too"] = BraidPlaces.BesideBrimToo,
    };

    private static readonly Dictionary<string, StrandSource> StrandKinds = new(StringComparer.Ordinal)
    {
        ["neighbours"] = StrandSource.Neighbours,
        ["scraps"] = StrandSource.Scraps,
    };

    private static readonly Dictionary<string, CrownYarn> CrownYarns = new(StringComparer.Ordinal)
    {
        ["stripes"] = CrownYarn.Stripes,
        ["own"] = CrownYarn.Own,
    };

    /// <summary>Reads a description; null where <paramref name="errors"/> got something, each under <paramref name="at"/> ("hat.").</summary>
    public static Hat? Read(HatDescription description, FieldErrors errors, string at)
    {
        ArgumentNullException.ThrowIfNull(description);
        ArgumentNullException.ThrowIfNull(errors);
        var name = description.Name is { Length: > 0 } given ? given : "unnamed hat";
        if (name.Length > 80)
        {
            errors.Add($"{at}name", "must be at most 80 characters");
        }

        if (description.WeightClass is not (>= 0 and <= 7))
        {
            errors.Add($"{at}weightClass", "must be a whole number from 0 to 7");
        }

        var weightClass = (WeightClass)(description.WeightClass ?? 0);
        Hat? hat = description.Printed is { } printed
            ? PrintedReader.Read(printed, name, weightClass, errors, $"{at}printed.")
            : ReadDesign(description, name, weightClass, errors, at);
        return errors.Any ? null : hat;
    }

    private static HatDesign? ReadDesign(HatDescription d, string name, WeightClass weightClass, FieldErrors errors, string at)
    {
        var construction = errors.OneOf($"{at}construction", d.Construction, Constructions);
        var sideToSide = construction == Construction.SideToSide;
        var stitches = errors.Number($"{at}gauge.stitchesPer10cm", d.Gauge?.StitchesPer10cm, Gauge.Least, Gauge.Most);
        var rows = errors.Number($"{at}gauge.rowsPer10cm", d.Gauge?.RowsPer10cm, Gauge.Least, Gauge.Most);
        var brim = ReadBrim(d.Brim, errors, $"{at}brim.");
        var braids = ReadBraids(d, d.Brim is not null, sideToSide, errors, at);
        if (sideToSide && d.Crown is not null)
        {
            errors.Add($"{at}crown", "is only for brim-up hats; a side-to-side hat is gathered");
        }

        if (d.Crown?.DecreaseLines is not (null or (>= 4 and <= 16)))
        {
            errors.Add($"{at}crown.decreaseLines", "must be a whole number from 4 to 16");
        }

        var crownYarn = d.Crown?.Yarn is null ? CrownYarn.Stripes : errors.OneOf($"{at}crown.yarn", d.Crown.Yarn, CrownYarns);
        var (least, most) = (d.StripeCounts?.Least ?? 1, d.StripeCounts?.Most ?? 24);
        if (least is < 1 or > 24)
        {
            errors.Add($"{at}stripeCounts.least", "must be a whole number from 1 to 24");
        }

        if (most > 24 || most < least)
        {
            errors.Add($"{at}stripeCounts.most", "must be a whole number from the least to 24");
        }

        var stripes = ReadStripes(d.Stripes, errors, at);
        if (stripes is not null && (stripes.Values.Count < least || stripes.Values.Count > most))
        {
            errors.Add($"{at}stripes", $"tells {stripes.Values.Count} stripes, outside stripeCounts");
        }

        var sizes = ReadSizes(d.Sizes, errors, $"{at}sizes");
        var pomPom = d.PomPom is null ? null : errors.Number($"{at}pomPom.metres", d.PomPom.Metres, 0, 1_000, leastItself: false);
        var usage = ReadUsage(d.Usage, errors, $"{at}usage.");
        if (errors.Any)
        {
            return null;
        }

        return new HatDesign
        {
            Name = name,
            Construction = construction!.Value,
            Gauge = Gauge.Of(stitches!.Value, rows!.Value),
            WeightClass = weightClass,
            Brim = brim,
            Braids = braids,
            Crown = new Crown(d.Crown?.DecreaseLines ?? 8, crownYarn!.Value),
            StripeCounts = d.StripeCounts is null ? null : new StripeCounts(least, most),
            Stripes = stripes,
            PomPom = pomPom is { } m ? Knitting.Quantities.Metres.Needed((double)m) : null,
            Sizes = sizes,
            Usage = usage,
        };
    }

    private static Brim? ReadBrim(BrimDescription? brim, FieldErrors errors, string at)
    {
        if (brim is null)
        {
            return null;
        }

        var depth = errors.Number($"{at}depthCm", brim.DepthCm, 0, 30, leastItself: false);
        var fit = brim.Fit is null ? BrimFit.Snug : errors.OneOf($"{at}fit", brim.Fit, Fits);
        var bindOff = brim.BindOff is null ? EdgeKind.Ordinary : errors.OneOf($"{at}bindOff", brim.BindOff, Edges);
        if (brim.Rib is not (null or 2 or 4))
        {
            errors.Add($"{at}rib", "must be 2 or 4");
        }

        return depth is null || fit is null || bindOff is null
            ? null
            : new Brim(Centimetres.From(depth.Value), brim.Folded ?? false, fit.Value, brim.Rib ?? 2, bindOff.Value);
    }

    private static Braids ReadBraids(HatDescription d, bool hasBrim, bool sideToSide, FieldErrors errors, string at)
    {
        var where = d.Braids?.Where is null ? BraidPlaces.None : errors.OneOf($"{at}braids.where", d.Braids.Where, Places);
        var strands = d.Braids?.Strands is null ? StrandSource.Neighbours : errors.OneOf($"{at}braids.strands", d.Braids.Strands, StrandKinds);
        if (where == BraidPlaces.BesideBrimToo && (sideToSide || !hasBrim))
        {
            errors.Add($"{at}braids.where", "beside-brim-too is only for brim-up hats with a brim");
        }

        if (d.Braids?.StrandCount is not (null or 1 or 2))
        {
            errors.Add($"{at}braids.strandCount", "must be 1 or 2");
        }

        return new Braids(where ?? BraidPlaces.None, strands ?? StrandSource.Neighbours, d.Braids?.StrandCount ?? 2);
    }

    private static StripeDepths? ReadStripes(StripesDescription? stripes, FieldErrors errors, string at)
    {
        if (stripes is null)
        {
            return null;
        }

        if ((stripes.DepthsCm is null) == (stripes.Proportions is null))
        {
            errors.Add($"{at}stripes", "must have depthsCm or proportions, not both");
            return null;
        }

        var field = stripes.DepthsCm is null ? $"{at}stripes.proportions" : $"{at}stripes.depthsCm";
        var values = stripes.DepthsCm ?? stripes.Proportions!;
        if (values.Count is 0 or > 24)
        {
            errors.Add(field, "must tell 1 to 24 stripes");
            return null;
        }

        var read = values.Select((v, i) => errors.Number($"{field}[{i}]", v, 0, 100, leastItself: false)).ToList();
        return read.Contains(null) ? null : new StripeDepths([.. read.OfType<decimal>()], stripes.DepthsCm is not null);
    }

    private static IReadOnlyList<HatSize> ReadSizes(IReadOnlyList<SizeDescription?>? sizes, FieldErrors errors, string at)
    {
        if (sizes is null)
        {
            return HatSizes.Default;
        }

        var list = new List<HatSize>();
        if (sizes.Count is 0 or > MostSizes)
        {
            errors.Add(at, $"must be 1 to {MostSizes} sizes");
            return list;
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < sizes.Count; i++)
        {
            var (one, field) = (sizes[i], $"{at}[{i}].");
            SizeName(one?.Size, names, errors, $"{field}size");
            var byHead = one?.HeadCm is not null || one?.CircumferenceCm is null;
            var head = byHead ? errors.Number($"{field}headCm", one?.HeadCm, 30, 75) : null;
            var around = one?.CircumferenceCm is null ? head * HatSize.CircumferenceOfHead
                : errors.Number($"{field}circumferenceCm", one.CircumferenceCm, 0, 200, leastItself: false);
            var height = one?.HeightCm is null && byHead ? head * HatSize.HeightOfHead
                : errors.Number($"{field}heightCm", one?.HeightCm, 0, 200, leastItself: false);
            if (one?.Stitches is not (null or (>= 2 and <= 2_000)))
            {
                errors.Add($"{field}stitches", "must be a whole number from 2 to 2000");
            }

            if (around is { } a && height is { } h && one?.Size is { } name)
            {
                list.Add(new HatSize(name, Centimetres.From(a), Centimetres.From(h), head is { } cm ? Centimetres.From(cm) : null, one.Stitches));
            }
        }

        return list;
    }

    /// <summary>Checks a size's name: there, short, and once.</summary>
    internal static void SizeName(string? size, HashSet<string> names, FieldErrors errors, string field)
    {
        if (string.IsNullOrWhiteSpace(size) || size.Length > 20)
        {
            errors.Add(field, "is missing, or longer than 20 characters");
        }
        else if (!names.Add(size))
        {
            errors.Add(field, $"{size} is there twice");
        }
    }

    private static Usage ReadUsage(UsageDescription? usage, FieldErrors errors, string at)
    {
        if (usage is null)
        {
            return Usage.Uncalibrated;
        }

        var factor = errors.Number($"{at}factor", usage.Factor ?? Usage.Uncalibrated.Factor, 0.5m, 2);
        var spread = errors.Number($"{at}spreadPercent", usage.SpreadPercent ?? 10, 0, 50);
        return new Usage((double)(factor ?? 1), (double)(spread ?? 10) / 100, Calibrated: spread < 10);
    }
}
