using System.Globalization;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.FromThisBag;

/// <summary>What the address asks, read.</summary>
public sealed record BagAsked(Hat Hat, IReadOnlyList<string> Sizes, IReadOnlyList<Arrangement> Arrangements, IReadOnlyList<Leftover> Leftovers, decimal AllowancePercent);

/// <summary>What the address asks; values as typed, so that nothing is lost where one cannot be read.</summary>
public sealed record BagForm
{
    /// <summary>What an address says where yarn kept for other hats counts too.</summary>
    public const string CountKept = "count";

    /// <summary>What an address says for all the usual arrangements at once.</summary>
    public const string AnyUsual = "usual";

    /// <summary>What is asked of the bag, by the names of <see cref="BagQuestion"/>.</summary>
    public Said Asked { get; init; } = Said.Nothing;

    /// <summary>What is asked of the depths, by the names of <see cref="DepthsQuestion"/>.</summary>
    public Said Depths { get; init; } = Said.Nothing;

    public string? Hat => One(MatchQuestion.Hat);

    /// <summary>Sizes to look at; none for all.</summary>
    public IReadOnlyList<string> Sizes => Several(Asked[HatGrid.SizesAsked]);

    /// <summary>Arrangements to look at; none for every stripe different.</summary>
    public IReadOnlyList<string> Arrangements => Several(Asked[HatGrid.ArrangementsAsked]);

    /// <summary>One bag of leftovers; empty for all.</summary>
    public string? Bag => One(MatchQuestion.Bag);

    /// <summary>Which fibres may go in; empty for any.</summary>
    public string? Fibres => One(MatchQuestion.Fibres);

    /// <summary>Chosen leftovers; none for all.</summary>
    public IReadOnlyList<string> Leftovers => Several(Asked[MatchQuestion.Leftovers]);

    /// <summary>Whether yarn kept for other hats counts too.</summary>
    public bool Kept { get; init; }

    /// <summary>How the hats are ordered: empty by size, "surest" or "uses-up-most".</summary>
    public string? By { get; init; }

    public string? Allowance => One(MatchQuestion.AllowancePercent);

    /// <summary>The size depths are wanted for.</summary>
    public string? DepthSize => Depths[DepthsQuestion.Size].Words;

    /// <summary>The leftovers to be knitted up.</summary>
    public IReadOnlyList<string> Chosen => Several(Depths[DepthsQuestion.Leftovers]);

    /// <summary>Fewest rows of a stripe.</summary>
    public string? Least => Depths[DepthsQuestion.LeastRows].Words;

    /// <summary>Most rows of a stripe; empty for any.</summary>
    public string? Most => Depths[DepthsQuestion.MostRows].Words;

    /// <summary>What is asked, with the opening's hat where the address names none.</summary>
    public BagForm OrFirst() => string.IsNullOrEmpty(Hat) ? this with { Asked = Asked.With(MatchQuestion.Hat, "side-to-side-sample") } : this;

    /// <summary>The address of a cell's plan on the answer page: the same question.</summary>
    public string PlanOf(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return Plan(cell.Size, cell.Stripes, s => Arranged(s, cell.Arrangement));
    }

    /// <summary>The address of one hat of the whole bag on the answer page, from its leftovers alone.</summary>
    public string PlanOf(BagHat hat)
    {
        ArgumentNullException.ThrowIfNull(hat);
        var own = Said.Several(hat.Parts.Select(p => p.From!.Leftover).Distinct(StringComparer.Ordinal));
        return Plan(hat.Size, hat.Stripes, s => Arranged(s, hat.Arrangement).With(MatchQuestion.Leftovers, own));
    }

    /// <summary>The address of a hat with depths of its own on the answer page, each chosen leftover kept in its stripe.</summary>
    public string PlanOf(DepthPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Plan(plan.Hat!.Sizes[0].Size, plan.Stripes.Count, s => s
            .With(ChangedHat.Rows, Said.Several(plan.Stripes.Select(x => x.Part.Rows.ToString(CultureInfo.InvariantCulture))))
            .With(Pairings.Locks, Said.Several(plan.Stripes.Select(x => Pairings.Say(x.Part.Name, x.Leftover.Id)))));
    }

    /// <summary>What an address asks.</summary>
    public static BagForm Of(IQueryCollection query)
    {
        ArgumentNullException.ThrowIfNull(query);
        var pairs = query.Pairs().ToList();
        return new BagForm
        {
            Asked = SaidInAddress.Read(pairs, BagQuestion.Fields),
            Depths = SaidInAddress.Read(pairs.Where(p => DepthNames.Contains(p.Name, StringComparer.Ordinal)), DepthsQuestion.Fields),
            Kept = query["kept"] == CountKept,
            By = query["by"],
        }.OrFirst();
    }

    /// <summary>What is asked of the bag, name by name.</summary>
    public IEnumerable<(string Name, string Value)> Pairs() => SaidInAddress.Write(Asked, BagQuestion.Fields);

    /// <summary>The question, or null with a message for each field that cannot be read.</summary>
    public BagAsked? Read(Hat? hat, IReadOnlyList<FreeLeftover> bag, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(bag);
        var every = Arrangements is [AnyUsual];
        var asked = new Reading(every ? Asked.With(HatGrid.ArrangementsAsked, Said.Nothing) : Asked, errors);
        if (hat is null)
        {
            asked.Wrong(MatchQuestion.Hat, "is not one of the hats here");
            return null;
        }

        var lot = string.IsNullOrEmpty(Bag) ? bag : [.. bag.Where(l => l.Of.Bag == Bag)];
        if (lot.Count == 0 && bag.Count > 0)
        {
            asked.Wrong(MatchQuestion.Bag, "is not one of the bags here");
        }

        var usual = hat is PrintedHat ? [Arrangement.OwnColours, Arrangement.AsItFalls] : Knitting.Bags.FromThisBag.Usual;
        return BagQuestion.Read(asked, hat, [.. lot.Select(l => l.Free)], every ? usual : [Arrangement.OwnColours], Habits.Now.AllowancePercent) is not var (grid, leftovers)
            ? null
            : new BagAsked(hat, [.. hat.SizeNames.Where(s => grid.Sizes.Contains(s, StringComparer.Ordinal))], grid.Arrangements, leftovers, grid.AllowancePercent);
    }

    /// <summary>The depths asked for; null where none are, or with a message for each field that cannot be read.</summary>
    public DepthQuestion? ReadDepths(BagAsked asked, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(asked);
        if (Chosen.Count == 0 || asked.Hat is not HatDesign design)
        {
            return null;
        }

        var depths = Depths[DepthsQuestion.Size].IsNothing ? Depths.With(DepthsQuestion.Size, design.SizeNames[0]) : Depths;
        return DepthsQuestion.Read(new Reading(depths, errors), design, asked.Leftovers, asked.AllowancePercent);
    }

    private static readonly string[] DepthNames = [.. new[] { DepthsQuestion.LeastRows, DepthsQuestion.MostRows }.SelectMany(f => f.Before.Append(f.Name)), .. DepthsQuestion.Size.Before, .. DepthsQuestion.Leftovers.Before];

    // The answer page knows the same fields but for its one size, count and arrangement.
    private string Plan(string size, int stripes, Func<Said, Said> more)
    {
        Field[] alike = [MatchQuestion.Hat, MatchQuestion.AllowancePercent, MatchQuestion.Bag, MatchQuestion.Fibres, MatchQuestion.Leftovers];
        var said = Said.Of(alike.Where(f => !Asked[f].IsNothing).Select(f => (f, Asked[f])))
            .With(MatchQuestion.Size, size)
            .With(MatchQuestion.Stripes, stripes.ToString(CultureInfo.InvariantCulture));
        return SaidInAddress.Of("/can-i-make", SaidInAddress.Write(more(said), MatchQuestion.Fields).Concat(Kept ? [("kept", CountKept)] : []));
    }

    private static Said Arranged(Said said, Arrangement arrangement) => said.With(MatchQuestion.Arrangement, Names.Of(arrangement));

    private string? One(Field field) => Asked[field].Words;

    private static IReadOnlyList<string> Several(Said said) => [.. (said.Each ?? []).Select(e => e.Words ?? "")];
}
