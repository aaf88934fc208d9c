using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Matching;

/// <summary>Parts that come from one leftover because the arrangement, the braid or the printed letter says so.</summary>
/// <param name="Members">Indices into the hat's parts, in knitting order.</param>
/// <param name="EndsAt">The member that pays the two tails: the one in the highest cover band.</param>
/// <param name="Kind">The kind of that member.</param>
/// <param name="HasStripe">Whether a stripe, or a printed letter not told apart, is among them.</param>
/// <param name="HasHead">Whether brim or crown is among them.</param>
internal sealed record PartGroup(IReadOnlyList<int> Members, int EndsAt, PartKind Kind, bool HasStripe, bool HasHead);

/// <summary>Which parts merge under an arrangement, and which groups lie side by side.</summary>
internal sealed record Grouping(IReadOnlyList<PartGroup> Groups, IReadOnlyList<int> GroupOf, IReadOnlyList<(int A, int B)> NextDoor)
{
    /// <summary>Groups a hat's parts. A part named in <paramref name="pins"/> leaves its printed letter; those pinned alike leave it together. Parts named in <paramref name="apart"/> stand alone.</summary>
    public static Grouping Of(HatNeeds hat, Arrangement arrangement, int inTurn, IReadOnlyDictionary<string, string> pins, IReadOnlyList<string> apart)
    {
        var parts = hat.Parts;
        var parent = Enumerable.Range(0, parts.Count).ToArray();
        int Root(int i) => parent[i] == i ? i : parent[i] = Root(parent[i]);
        void Join(int a, int b) => parent[Math.Max(Root(a), Root(b))] = Math.Min(Root(a), Root(b));
        void JoinAll(IEnumerable<int> indices)
        {
            var first = -1;
            foreach (var i in indices)
            {
                Join(first < 0 ? i : first, i);
                first = first < 0 ? i : first;
            }
        }

        bool StaysIn(HatPart p) => apart.Count == 0 || !apart.Contains(p.Name, StringComparer.Ordinal);
        IEnumerable<int> Where(Func<HatPart, bool> which) => Enumerable.Range(0, parts.Count).Where(i => which(parts[i]) && StaysIn(parts[i]));
        if (hat.Plan is null)
        {
            string Pin(HatPart p) => $"{p.Yarn}\n{pins.GetValueOrDefault(p.Name)}";
            foreach (var pin in parts.Select(Pin).Distinct(StringComparer.Ordinal))
            {
                JoinAll(Where(p => Pin(p) == pin));
            }
        }
        else
        {
            switch (arrangement)
            {
                case Arrangement.OneGround:
                    JoinAll(Where(p => p.Kind is PartKind.Brim or PartKind.Stripe or PartKind.Crown));
                    break;
                case Arrangement.OneThread:
                    JoinAll(Where(p => p.Kind is PartKind.Brim || p.Strand == 'a'));
                    break;
                case Arrangement.InTurn:
                    for (var turn = 0; turn < inTurn; turn++)
                    {
                        JoinAll(Where(p => p.Kind == PartKind.Stripe && (p.Number - 1) % inTurn == turn));
                    }

                    break;
            }

            foreach (var i in Where(p => p.Kind == PartKind.Strand))
            {
                var uncut = arrangement switch
                {
                    Arrangement.OneGround => false,
                    Arrangement.OneThread => parts[i].Strand == 'b',
                    _ => hat.Strands == StrandSource.Neighbours,
                };
                if (uncut && NeighbourOf(parts, i) is { } neighbour)
                {
                    Join(i, neighbour);
                }
            }
        }

        return Collect(parts, Root, hat.Plan is null ? Arrangement.AsItFalls : arrangement);
    }

    private static Grouping Collect(IReadOnlyList<HatPart> parts, Func<int, int> root, Arrangement arrangement)
    {
        // The thread is kept from the stripes whether it knits a brim or not.
        bool IsHead(HatPart p) => p.Kind is PartKind.Brim or PartKind.Crown || (arrangement == Arrangement.OneThread && p.Strand == 'a');
        var groupOf = new int[parts.Count];
        var groups = new List<PartGroup>();
        foreach (var members in Enumerable.Range(0, parts.Count).GroupBy(root))
        {
            var list = members.ToList();
            list.ForEach(i => groupOf[i] = groups.Count);
            var endsAt = list.MinBy(i => (Band(parts[i].Kind), i));
            groups.Add(new PartGroup(
                list,
                endsAt,
                parts[endsAt].Kind,
                list.Exists(i => parts[i].Kind is PartKind.Stripe or PartKind.Yarn),
                list.Exists(i => IsHead(parts[i]))));
        }

        // Leftovers that take the stripes in turn are told apart in every pair, next door or not.
        var inTurn = arrangement != Arrangement.InTurn ? [] : Enumerable.Range(0, parts.Count).Where(i => parts[i].Kind == PartKind.Stripe).ToList();
        var pairs = SideBySide(parts)
            .Concat(inTurn.SelectMany(i => inTurn.Where(j => j > i).Select(j => (A: i, B: j))))
            .Select(p => (A: groupOf[p.A], B: groupOf[p.B]))
            .Where(p => p.A != p.B)
            .Select(p => p.A < p.B ? p : (p.B, p.A))
            .Distinct()
            .ToList();
        return new Grouping(groups, groupOf, pairs);
    }

    /// <summary>Parts under the colour rule: next-door stripes and the two strands of a braid, as indices.</summary>
    public static IEnumerable<(int A, int B)> SideBySide(IReadOnlyList<HatPart> parts)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            for (var j = 0; j < parts.Count; j++)
            {
                var (p, q) = (parts[i], parts[j]);
                if ((p.Kind == PartKind.Stripe && q.Kind == PartKind.Stripe && q.Number == p.Number + 1)
                    || (p.Kind == PartKind.Strand && q.Kind == PartKind.Strand && p.Number == q.Number && p.Strand == 'a' && q.Strand == 'b'))
                {
                    yield return (i, j);
                }
            }
        }
    }

    /// <summary>The cover band of a kind: brim and crown, stripes, strands, seam.</summary>
    public static int Band(PartKind kind) => kind switch
    {
        PartKind.Brim or PartKind.Crown => 0,
        PartKind.Stripe or PartKind.Yarn => 1,
        PartKind.Strand => 2,
        _ => 3,
    };

    // Strand a is the yarn of the part just ended, strand b that of the next stripe.
    private static int? NeighbourOf(IReadOnlyList<HatPart> parts, int strand)
    {
        if (parts[strand].Strand == 'a')
        {
            for (var i = strand - 1; i >= 0; i--)
            {
                if (parts[i].Kind is PartKind.Stripe or PartKind.Brim)
                {
                    return i;
                }
            }

            return null;
        }

        for (var i = strand + 1; i < parts.Count; i++)
        {
            if (parts[i].Kind == PartKind.Stripe)
            {
                return i;
            }
        }

        return null;
    }
}
