using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>Lays a hat out in areas, from its row plan or, for a printed hat, from what is likely.</summary>
internal sealed class WoolLayout
{
    private readonly List<WoolArea> areas = [];
    private readonly List<WoolYarn> yarns = [];
    private readonly Dictionary<string, int> known = new(StringComparer.Ordinal);
    private readonly IReadOnlyDictionary<string, PartWool> wool;
    private readonly IReadOnlyList<HatPart> parts;
    private bool sideways;
    private bool flat;
    private double around;
    private double above;
    private int stitches;
    private int crownRows;
    private int gores;
    private WoolBrim? brim;

    public WoolLayout(RowPlan plan, IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartWool> wool, int ribRepeat)
        : this(parts, wool)
    {
        sideways = plan.Construction == Construction.SideToSide;
        flat = sideways || plan.Construction == Construction.BrimUpFlat;
        (around, above) = ((double)plan.Circumference.Value, (double)plan.BodyHeight.Value);
        (stitches, crownRows) = (plan.BodyStitches, plan.CrownRounds);
        gores = crownRows > 0 ? Math.Clamp(plan.Sections[^1].Runs[^1].Stitches, 4, 16) : 0;
        foreach (var section in plan.Sections)
        {
            switch (section.Kind)
            {
                case SectionKind.Brim:
                    var wales = ribRepeat >= 4 ? 2 : 1;
                    var rounded = section.Runs.Any(r => r.Pattern == StitchPattern.TubularEdge);
                    AddBrim((double)plan.BrimDepth.Value, plan.BrimFolded, Math.Max(8, plan.BrimStitches / (2 * wales)), wales, (double)plan.Gauge.RowsPerCm,
                        rounded);
                    break;
                case SectionKind.Braid:
                    AddBraid(section.Number, section.Rows);
                    break;
                default:
                    Add(section.Kind == SectionKind.Crown ? PartNames.Crown : PartNames.Stripe(section.Number), WoolFabric.Knit, section.Rows);
                    break;
            }
        }

        AddRest();
    }

    private WoolLayout(IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartWool> wool) => (this.parts, this.wool) = (parts, wool);

    /// <summary>A hat known by its printed lengths: brim up, in the round, of the usual measures, its bands as deep as their lengths are long.</summary>
    public static WoolLayout Printed(IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartWool> wool)
    {
        const double whole = 21.5;
        const double rowsPerCm = 3.2;
        var it = new WoolLayout(parts, wool) { around = 50, stitches = 112 };
        double Length(HatPart p) => Math.Max(p.BareMetres, 0);
        var worn = parts.Where(p => p.Kind is not (PartKind.Seam or PartKind.PomPom)).ToList();
        var sum = Math.Max(1e-9, worn.Sum(Length));
        var depth = worn.Any(p => p.Kind == PartKind.Brim) ? Math.Clamp(whole * worn.Where(p => p.Kind == PartKind.Brim).Sum(Length) / sum, 2.5, 7) : 0;
        it.above = whole - depth;
        var body = worn.Where(p => p.Kind != PartKind.Brim && p.Strand != 'b').ToList();
        var braids = body.Count(p => p.Kind == PartKind.Strand);
        var rows = Math.Max((int)Math.Round(it.above * rowsPerCm), (3 * braids) + (2 * (body.Count - braids)));
        it.above = rows / rowsPerCm;
        var (left, lengths) = (rows - (3 * braids), Math.Max(1e-9, body.Where(p => p.Kind != PartKind.Strand).Sum(Length)));
        var (told, counted) = (0.0, 0);
        foreach (var part in worn)
        {
            if (part.Kind == PartKind.Brim)
            {
                it.AddBrim(depth, false, it.stitches / 2, 1, rowsPerCm, false);
            }
            else if (part.Kind == PartKind.Strand)
            {
                if (part.Strand != 'b')
                {
                    it.AddBraid(part.Number, 3);
                }
            }
            else
            {
                told += Length(part);
                var upTo = Math.Max(counted + 2, (int)Math.Round(left * told / lengths));
                it.Add(part.Name, WoolFabric.Knit, upTo - counted);
                counted = upTo;
            }
        }

        if (it.areas.All(a => a.Rows == 0))
        {
            it.Add("hat", WoolFabric.Knit, rows);
        }

        it.gores = 8;
        it.crownRows = (int)(it.areas.Sum(a => a.Rows) * 0.42);
        it.AddRest();
        return it;
    }

    public WoolHat Hat()
    {
        var rows = areas.SelectMany((a, i) => Enumerable.Repeat(i, a.Rows)).ToArray();
        var first = new int[areas.Count];
        for (var (i, at) = (0, 0); i < areas.Count; at += areas[i++].Rows)
        {
            first[i] = at;
        }

        return new()
        {
            Sideways = sideways,
            Flat = flat,
            Around = around,
            Above = above,
            Stitches = stitches,
            Rows = rows.Length,
            CrownRows = crownRows,
            Gores = gores,
            Brim = brim,
            Areas = [.. areas],
            Yarns = [.. yarns],
            RowAreas = rows,
            FirstRows = first,
            SeamArea = areas.FindIndex(a => a.Fabric == WoolFabric.Seam),
            PomPomArea = areas.FindIndex(a => a.Fabric == WoolFabric.PomPom),
        };
    }

    private void AddBrim(double depth, bool folded, int ribs, int wales, double rounds, bool rounded)
    {
        brim = new(areas.Count, depth, folded, ribs, wales, rounds, rounded, First: areas.Count == 0);
        Add(PartNames.Brim, WoolFabric.Rib, 0);
    }

    private void AddBraid(int number, int rows)
    {
        var (a, b) = (PartNames.Strand(number, 'a'), PartNames.Strand(number, 'b'));
        var two = parts.Any(p => p.Name == b);
        var (first, second) = (wool.GetValueOrDefault(a), wool.GetValueOrDefault(two ? b : a));
        var codes = new[] { first?.Code, second?.Code }.OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        areas.Add(new(
            PartNames.Braid(number), two ? [a, b] : [a], WoolFabric.Braid, rows, Yarn(first), Yarn(second),
            Math.Min(KnittedOf(first), KnittedOf(second)), codes.Count == 0 ? null : string.Join(' ', codes),
                Both(PartNames.Braid(number), first?.Words, second?.Words)));
    }

    private static string Both(string name, string? first, string? second) =>
        string.Join("; ", new[] { first, second }.OfType<string>().Distinct(StringComparer.Ordinal)) is { Length: > 0 } words ? words : name;

    // Seam and pom-pom lie in no row.
    private void AddRest()
    {
        foreach (var part in parts.Where(p => p.Kind is PartKind.Seam or PartKind.PomPom))
        {
            Add(part.Name, part.Kind == PartKind.Seam ? WoolFabric.Seam : WoolFabric.PomPom, 0);
        }
    }

    private void Add(string part, WoolFabric fabric, int rows)
    {
        var found = wool.GetValueOrDefault(part);
        var yarn = Yarn(found);
        areas.Add(new(part, [part], fabric, rows, yarn, yarn, KnittedOf(found), found?.Code, found?.Words ?? part));
    }

    private static double KnittedOf(PartWool? part) => Math.Clamp(part?.Knitted ?? 1, 0, 1);

    private int Yarn(PartWool? part)
    {
        var yarn = new WoolYarn(part?.Yarn ?? YarnLook.Undyed, part is { Ahead: true }, yarns.Sum(y => y.Colours.Count));
        var key = string.Join(' ', yarn.Colours.Select(c => c.Hex)) + yarn.Halo;
        if (!known.TryGetValue(key, out var at))
        {
            known[key] = at = yarns.Count;
            yarns.Add(yarn);
        }

        return at;
    }
}
