using System.Globalization;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.OpenInterface;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.FromThisBag;

/// <summary>What the address asks, read.</summary>
public sealed record BagAsked(Hat Hat, IReadOnlyList<string> Sizes, IReadOnlyList<Arrangement> Arrangements, IReadOnlyList<Leftover> Leftovers, decimal AllowancePercent);

/// <summary>What the address asks; values as typed, so that nothing is lost where one cannot be read.</summary>
public sealed record BagForm
{
    /// <summary>What an address says for all the usual arrangements at once.</summary>
    public const string AnyUsual = "usual";

    public string? Hat { get; init; }

    /// <summary>Sizes to look at; none for all.</summary>
    public IReadOnlyList<string> Sizes { get; init; } = [];

    /// <summary>Arrangements to look at; none for every stripe different.</summary>
    public IReadOnlyList<string> Arrangements { get; init; } = [];

    /// <summary>One lot of leftovers; empty for all.</summary>
    public string? Bag { get; init; }

    /// <summary>Which fibres may go in; empty for any.</summary>
    public string? Fibres { get; init; }

    /// <summary>Chosen leftovers; none for all.</summary>
    public IReadOnlyList<string> Leftovers { get; init; } = [];

    /// <summary>How the hats are ordered: empty by size, "surest" or "uses-up-most".</summary>
    public string? By { get; init; }

    public string? Allowance { get; init; }

    /// <summary>The size depths are wanted for.</summary>
    public string? DepthSize { get; init; }

    /// <summary>The leftovers to be knitted up.</summary>
    public IReadOnlyList<string> Chosen { get; init; } = [];

    /// <summary>Fewest rows of a stripe.</summary>
    public string? Least { get; init; }

    /// <summary>Most rows of a stripe; empty for any.</summary>
    public string? Most { get; init; }

    /// <summary>What is asked, with the opening's hat where the address names none.</summary>
    public BagForm OrFirst() => string.IsNullOrEmpty(Hat) ? this with { Hat = "side-to-side-sample" } : this;

    /// <summary>The address of a cell's plan on the answer page: the same question.</summary>
    public string PlanOf(BagCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return Plan(cell.Size, cell.Stripes, ("arrangement", Names.Of(cell.Arrangement)));
    }

    /// <summary>The address of one hat of the whole bag on the answer page, from its leftovers alone.</summary>
    public string PlanOf(BagHat hat)
    {
        ArgumentNullException.ThrowIfNull(hat);
        return (this with { Leftovers = [.. hat.Parts.Select(p => p.From!.Leftover).Distinct(StringComparer.Ordinal)] }).Plan(hat.Size, hat.Stripes, ("arrangement", Names.Of(hat.Arrangement)));
    }

    /// <summary>The address of a hat with depths of its own on the answer page, each chosen leftover kept in its stripe.</summary>
    public string PlanOf(DepthPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Plan(plan.Hat!.Sizes[0].Size, plan.Stripes.Count,
        [
            ("depths", string.Join(',', plan.Stripes.Select(s => s.Part.Rows.ToString(CultureInfo.InvariantCulture)))),
            .. plan.Stripes.Select(s => ("keep", $"{s.Part.Name}~{s.Leftover.Id}")),
        ]);
    }

    /// <summary>The question, or null with a message for each field that cannot be read.</summary>
    public BagAsked? Read(Hat? hat, IReadOnlyList<FreeLeftover> bag, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(bag);
        ArgumentNullException.ThrowIfNull(errors);
        if (hat is null)
        {
            errors.Add("hat", "is not one of the hats here");
            return null;
        }

        if (Sizes.FirstOrDefault(s => !hat.SizeNames.Contains(s, StringComparer.Ordinal)) is not null)
        {
            errors.Add("size", $"must be one of {string.Join(", ", hat.SizeNames)}");
        }

        var usual = hat is PrintedHat ? [Arrangement.OwnColours, Arrangement.AsItFalls] : Knitting.Bags.FromThisBag.Usual;
        var arrangements = Arrangements is [AnyUsual] ? [.. usual] : Arrangements.Distinct(StringComparer.Ordinal).Take(Names.All<Arrangement>().Count + 1).Select(a => errors.OneOf("arrangement", a, Names.All<Arrangement>())).OfType<Arrangement>().ToList();
        var allowance = errors.Allowance(Allowance);

        var lot = string.IsNullOrEmpty(Bag) ? bag : [.. bag.Where(l => l.Of.Bag == Bag)];
        if (lot.Count == 0 && bag.Count > 0)
        {
            errors.Add("bag", "is not one of the bags here");
        }

        if (Leftovers.Any(id => lot.All(l => l.Of.Id != id)))
        {
            errors.Add("leftover", "is not among the leftovers of this bag that may go into a hat");
        }

        var fibres = string.IsNullOrEmpty(Fibres) ? FibreChoice.Any : errors.OneOf("fibres", Fibres, Names.All<FibreChoice>());
        if (errors.Any)
        {
            return null;
        }

        return new BagAsked(
            hat,
            Sizes.Count == 0 ? hat.SizeNames : [.. hat.SizeNames.Where(s => Sizes.Contains(s, StringComparer.Ordinal))],
            arrangements.Count == 0 ? [Arrangement.OwnColours] : arrangements,
            [.. lot.Select(l => l.Free).Where(l => (Leftovers.Count == 0 || Leftovers.Contains(l.Id, StringComparer.Ordinal)) && fibres!.Value.Allows(l))],
            allowance);
    }

    /// <summary>The depths asked for; null where none are, or with a message for each field that cannot be read.</summary>
    public DepthQuestion? ReadDepths(BagAsked asked, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(errors);
        if (Chosen.Count == 0 || asked.Hat is not HatDesign design)
        {
            return null;
        }

        var size = DepthSize ?? design.SizeNames[0];
        if (!design.SizeNames.Contains(size, StringComparer.Ordinal))
        {
            errors.Add("depthSize", $"must be one of {string.Join(", ", design.SizeNames)}");
        }

        var chosen = asked.Leftovers.Where(l => Chosen.Contains(l.Id, StringComparer.Ordinal)).ToList();
        if (chosen.Count != Chosen.Distinct(StringComparer.Ordinal).Count() || chosen.Count > DepthQuestion.MostLeftovers)
        {
            errors.Add("chosen", $"must be 1 to {DepthQuestion.MostLeftovers} leftovers of this bag");
        }

        var least = Rows("least", Least, 2, 2, errors);
        var most = Rows("most", Most, DepthsTable.MostRows, least, errors);
        return errors.Any ? null : new DepthQuestion(design, size, chosen) { LeastRows = least, MostRows = most, AllowancePercent = asked.AllowancePercent };
    }

    private static int Rows(string field, string? typed, int otherwise, int from, FieldErrors errors)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return otherwise;
        }

        if (int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var rows) && rows >= from && rows <= DepthsTable.MostRows)
        {
            return rows;
        }

        errors.Add(field, $"must be a whole number from {from} to {DepthsTable.MostRows}");
        return otherwise;
    }

    private string Plan(string size, int stripes, params IEnumerable<(string, string)> more)
    {
        IEnumerable<(string Name, string? Value)> pairs =
        [
            ("hat", Hat), ("size", size), ("stripes", stripes.ToString(CultureInfo.InvariantCulture)), ("allowance", Allowance), ("bag", Bag), ("fibres", Fibres),
            .. more, .. Leftovers.Select(l => ("leftover", (string?)l)),
        ];
        return "/can-i-make?" + string.Join('&', pairs.Where(p => !string.IsNullOrEmpty(p.Value)).Select(p => $"{p.Name}={Uri.EscapeDataString(p.Value!)}"));
    }
}
