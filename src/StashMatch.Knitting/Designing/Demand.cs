using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Designing;

/// <summary>What one hat, size, stripe count and arrangement asks of a kit, in whole millimetres: laid out once for all kits.</summary>
internal sealed class Demand
{
    private Demand(Hat pattern, HatNeeds hat, Arrangement arrangement, int inTurn, Grouping grouping)
    {
        (Pattern, Hat, Arrangement, InTurn, Grouping) = (pattern, hat, arrangement, inTurn, grouping);
        var groups = grouping.Groups;
        Need = [.. groups.Select(g => g.Members.Sum(m => hat.Parts[m].Need(hat.Usage, m == g.EndsAt).Millimetres))];
        Role = [.. groups.Select(g => g.HasStripe ? Matching.Search.Role.Stripe : g.HasHead ? Matching.Search.Role.Head : Matching.Search.Role.Free)];
        HasBrim = [.. groups.Select(g => g.Members.Any(m => hat.Parts[m].Kind == PartKind.Brim))];
        Band = [.. groups.Select(g => Grouping.Band(g.Kind))];
        Beside = [.. groups.Select(_ => new List<int>())];
        foreach (var (a, b) in grouping.NextDoor)
        {
            Beside[a].Add(b);
            Beside[b].Add(a);
        }

        Whole = Need.Sum();
        LongestFirst = [.. Enumerable.Range(0, Need.Length).OrderByDescending(i => Need[i]).ThenBy(i => i)];
        StripesFirst = [.. LongestFirst.Where(i => Role[i] == Matching.Search.Role.Stripe)];
    }

    public Hat Pattern { get; }

    public HatNeeds Hat { get; }

    public Arrangement Arrangement { get; }

    public int InTurn { get; }

    public Grouping Grouping { get; }

    public long[] Need { get; }

    public Role[] Role { get; }

    public bool[] HasBrim { get; }

    public int[] Band { get; }

    public List<int>[] Beside { get; }

    public long Whole { get; }

    public int[] LongestFirst { get; }

    /// <summary>The stripes, longest first.</summary>
    public int[] StripesFirst { get; }

    public bool OwnColours => Arrangement is Arrangement.OwnColours or Arrangement.OneThread;

    /// <summary>The demand, or why it cannot be knitted or arranged so.</summary>
    public static Demand? Of(Hat hat, string size, int stripes, Arrangement arrangement, out CannotBeKnitted? why)
    {
        return hat.TryNeeds(size, stripes, out var needs, out why) ? Of(hat, needs, arrangement, out why) : null;
    }

    /// <summary>The same, the needs of its size and count known.</summary>
    public static Demand? Of(Hat hat, HatNeeds needs, Arrangement arrangement, out CannotBeKnitted? why)
    {
        var stripes = needs.Stripes;
        var inTurn = Math.Min(3, stripes - 1);
        why = arrangement switch
        {
            Arrangement.OwnColours or Arrangement.AsItFalls => null,
            _ when needs.Plan is null => new CannotBeKnitted("arrangement", "A printed table says which yarn goes where. Choose every stripe different, or whatever fits."),
            Arrangement.InTurn when inTurn < 2 => new CannotBeKnitted("arrangement", $"{stripes} stripes are too few to repeat colours."),
            Arrangement.OneThread when !needs.Parts.Any(p => p.Kind is PartKind.Brim or PartKind.Strand) =>
                new CannotBeKnitted("arrangement", "The hat has neither brim nor braids for one colour to run through."),
            _ => null,
        };
        return why is not null ? null : new Demand(
            hat, needs, arrangement, inTurn, Grouping.Of(needs, arrangement, inTurn, new Dictionary<string, string>(StringComparer.Ordinal), []));
    }

    /// <summary>The same as a question to the matcher.</summary>
    public Question Ask(IReadOnlyList<Leftover> skeins, decimal allowancePercent) =>
        new(Pattern, Hat.Size, skeins) { Stripes = Hat.Stripes, Arrangement = Arrangement, InTurn = InTurn, AllowancePercent = allowancePercent };

    /// <summary>Whether whatever covers this covers <paramref name="other"/> too: the same groups under the same rules, each no shorter.</summary>
    public bool Outdoes(Demand other)
    {
        if (Arrangement != other.Arrangement || InTurn != other.InTurn || Need.Length != other.Need.Length || Hat.WeightClass != other.Hat.WeightClass)
        {
            return false;
        }

        for (var i = 0; i < Need.Length; i++)
        {
            if (Need[i] < other.Need[i] || Role[i] != other.Role[i] || HasBrim[i] != other.HasBrim[i] || !Beside[i].SequenceEqual(other.Beside[i]))
            {
                return false;
            }
        }

        return true;
    }
}
