using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using F = StashMatch.Questions.HatFields;

namespace StashMatch.Questions;

/// <summary>Makes a hat of what is said of it, or says field by field what stands in the way.</summary>
public static class HatText
{
    /// <summary>Reads a hat; null with messages.</summary>
    public static Hat? Read(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var before = reading.Errors.Count;
        var name = reading.Text(F.Name) is { Length: > 0 } given ? given : "unnamed hat";
        var weightClass = (WeightClass)(reading.NumberWanted(F.WeightClass) ?? 0);
        Hat? hat = reading.In(F.Printed) is { } printed ? PrintedText.Read(printed, name, weightClass) : ReadDesign(reading, name, weightClass);
        return reading.Errors.Count > before ? null : hat;
    }

    /// <summary>What is said of a hat whose stripes got depths of their own, and of the one size they fill.</summary>
    public static Said WithDepths(Said hat, HatDesign own)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(own);
        var size = own.Sizes[0];
        return hat
            .With(F.Stripes, Said.Of((F.DepthsCm, Said.Several(own.Stripes!.Values.Select(v => Said.Number(v))))))
            .With(F.Sizes, Said.Several([Said.Of(new[]
            {
                (F.Size, Said.Exact(size.Size)),
                (F.HeadCm, size.Head is { } head ? Said.Exact(Said.Number(head.Value)) : Said.Nothing),
                (F.HeightCm, Said.Exact(Said.Number(size.Height.Value))),
                (F.CircumferenceCm, Said.Exact(Said.Number(size.Circumference.Value))),
                (F.Stitches, size.Stitches is { } stitches ? Said.Exact(Said.Number(stitches)) : Said.Nothing),
            }.Where(f => !f.Item2.IsNothing))]));
    }

    private static HatDesign? ReadDesign(Reading reading, string name, WeightClass weightClass)
    {
        var before = reading.Errors.Count;
        var construction = reading.Word<Construction>(F.Construction);
        if (!reading.Has(F.Construction))
        {
            reading.Wrong(F.Construction, F.Construction.Must);
        }

        var sideToSide = construction == Construction.SideToSide;
        var gauge = reading.InOrNone(F.Gauge);
        var (stitches, rows) = (gauge.NumberWanted(F.StitchesPer10Cm), gauge.NumberWanted(F.RowsPer10Cm));
        var brim = reading.In(F.Brim) is { } said ? ReadBrim(said) : null;
        var braids = ReadBraids(reading.InOrNone(F.Braids), reading.Has(F.Brim), sideToSide);
        if (sideToSide && reading.Has(F.Crown))
        {
            reading.Wrong(F.Crown, "is only for brim-up hats; a side-to-side hat is gathered");
        }

        var crown = reading.InOrNone(F.Crown);
        var (lines, crownYarn) = (crown.Whole(F.DecreaseLines) ?? 8, crown.Word<CrownYarn>(F.CrownYarn) ?? CrownYarn.Stripes);
        var counts = ReadCounts(reading.InOrNone(F.StripeCounts));
        var stripes = reading.In(F.Stripes) is { } depths ? ReadStripes(reading, depths) : null;
        if (stripes is not null && (stripes.Values.Count < counts.Least || stripes.Values.Count > counts.Most))
        {
            reading.Wrong(F.Stripes, $"tells {stripes.Values.Count} stripes, outside stripeCounts");
        }

        var sizes = ReadSizes(reading);
        var pomPom = reading.In(F.PomPom)?.NumberWanted(F.PomPomMetres);
        var usage = reading.In(F.Usage) is { } own ? ReadUsage(own) : Usage.Uncalibrated;
        return reading.Errors.Count > before ? null : new HatDesign
        {
            Name = name,
            Construction = construction!.Value,
            Gauge = Gauge.Of(stitches!.Value, rows!.Value),
            WeightClass = weightClass,
            Brim = brim,
            Braids = braids,
            Crown = new Crown(lines, crownYarn),
            StripeCounts = reading.Has(F.StripeCounts) ? new StripeCounts(counts.Least, counts.Most) : null,
            Stripes = stripes,
            PomPom = pomPom is { } m ? Metres.Needed((double)m) : null,
            Sizes = sizes,
            Usage = usage,
        };
    }

    private static (int Least, int Most) ReadCounts(Reading counts)
    {
        var (least, most) = (counts.Whole(F.Least) ?? 1, counts.Whole(F.Most) ?? 24);
        if (most < least)
        {
            counts.Wrong(F.Most, F.Most.Must);
        }

        return (least, most);
    }

    private static Brim? ReadBrim(Reading brim)
    {
        var depth = brim.NumberWanted(F.DepthCm);
        var rib = brim.Whole(F.Rib) ?? 2;
        if (rib == 3)
        {
            brim.Wrong(F.Rib, "must be 2 or 4");
        }

        var (folded, fit, edge) = (brim.YesNo(F.Folded) ?? false, brim.Word<BrimFit>(F.Fit) ?? BrimFit.Snug, brim.Word<EdgeKind>(F.BindOff) ?? EdgeKind.Ordinary);
        return depth is { } cm ? new Brim(Centimetres.From(cm), folded, fit, rib, edge) : null;
    }

    private static Braids ReadBraids(Reading braids, bool hasBrim, bool sideToSide)
    {
        var where = braids.Word<BraidPlaces>(F.Where) ?? BraidPlaces.None;
        if (where == BraidPlaces.BesideBrimToo && (sideToSide || !hasBrim))
        {
            braids.Wrong(F.Where, "beside-brim-too is only for brim-up hats with a brim");
        }

        return new Braids(where, braids.Word<StrandSource>(F.Strands) ?? StrandSource.Neighbours, braids.Whole(F.StrandCount) ?? 2);
    }

    private static StripeDepths? ReadStripes(Reading hat, Reading stripes)
    {
        if (stripes.Has(F.DepthsCm) == stripes.Has(F.Proportions))
        {
            hat.Wrong(F.Stripes, "must have depthsCm or proportions, not both");
            return null;
        }

        var field = stripes.Has(F.DepthsCm) ? F.DepthsCm : F.Proportions;
        var values = stripes.EachNumber(field);
        if (stripes.Said[field].Each is null or [])
        {
            stripes.Wrong(field, "must tell 1 to 24 stripes");
        }

        return values.Count == 0 ? null : new StripeDepths([.. values], field == F.DepthsCm);
    }

    private static IReadOnlyList<HatSize> ReadSizes(Reading hat)
    {
        if (!hat.Has(F.Sizes))
        {
            return HatSizes.Default;
        }

        var list = new List<HatSize>();
        if (hat.Said[F.Sizes].Each is [])
        {
            hat.Wrong(F.Sizes, $"must be 1 to {F.MostSizes} sizes");
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var size in hat.Each(F.Sizes))
        {
            var name = SizeName(size, names);
            var byHead = size.Has(F.HeadCm) || !size.Has(F.CircumferenceCm);
            var head = byHead ? size.NumberWanted(F.HeadCm) : null;
            var around = size.Has(F.CircumferenceCm) ? size.Number(F.CircumferenceCm) : head * HatSize.CircumferenceOfHead;
            var height = byHead && !size.Has(F.HeightCm) ? head * HatSize.HeightOfHead : size.NumberWanted(F.HeightCm);
            var stitches = size.Whole(F.Stitches);
            if (around is { } a && height is { } h && name is not null)
            {
                list.Add(new HatSize(name, Centimetres.From(a), Centimetres.From(h), head is { } cm ? Centimetres.From(cm) : null, stitches));
            }
        }

        return list;
    }

    /// <summary>A size's name: there, short, and once.</summary>
    internal static string? SizeName(Reading size, HashSet<string> names)
    {
        var name = size.Said[F.Size].Words;
        if (string.IsNullOrWhiteSpace(name) || name.Length > F.Size.Longest)
        {
            size.Wrong(F.Size, $"is missing, or longer than {F.Size.Longest} characters");
            return null;
        }

        if (!names.Add(name))
        {
            size.Wrong(F.Size, $"{name} is there twice");
        }

        return name;
    }

    private static Usage ReadUsage(Reading usage)
    {
        var unknown = 100 * (decimal)Usage.Uncalibrated.Spread;
        var (factor, spread) = (usage.Number(F.Factor), usage.Number(F.SpreadPercent) ?? unknown);
        return new Usage((double)(factor ?? (decimal)Usage.Uncalibrated.Factor), (double)spread / 100, Calibrated: spread < unknown);
    }
}
