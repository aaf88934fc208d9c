using System.Diagnostics.CodeAnalysis;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Bags;

/// <summary>
/// The rounds or rows that stripes and their braids share out, read off the row plan of equal stripes: what a stripe takes wherever it lies
/// and how many rows it may have there.
/// </summary>
internal sealed class StripeRounds
{
    private readonly HatDesign _design;
    private readonly long[] _sums;
    private readonly double _loop;
    private readonly double _castOn;
    private readonly double _bindOff;
    private readonly long _strand;
    private readonly int _braidsUpTo;
    private readonly bool _ownCrown;

    private StripeRounds(HatDesign design, RowPlan plan)
    {
        _design = design;
        Stripes = plan.Stripes;
        _ownCrown = design.Crown.Yarn == CrownYarn.Own;
        _loop = LoopLength.MetresPerStitch(plan.Gauge);
        var sections = plan.Sections.Where(s => s.Kind is SectionKind.Stripe or SectionKind.Braid).ToList();
        var stitches = sections.SelectMany(s => s.Runs.SelectMany(r => Enumerable.Repeat((long)r.Stitches, r.Rows))).ToList();
        _sums = new long[stitches.Count + 1];
        for (var i = 0; i < stitches.Count; i++)
        {
            _sums[i + 1] = _sums[i] + stitches[i];
        }

        First = sections[0].Kind == SectionKind.Braid ? BraidRows.Rows : 0;
        _braidsUpTo = design.Braids.Where == BraidPlaces.None || plan.Stripes == 1 ? -1 : SideToSide ? int.MaxValue : plan.BodyRows - plan.CrownRounds;
        double Extra(int number) => plan.Parts.First(p => p.Kind == PartKind.Stripe && p.Number == number).BareMetres
            - (sections.First(s => s.Kind == SectionKind.Stripe && s.Number == number).Runs.Sum(r => (long)r.Rows * r.Stitches) * _loop);
        (_castOn, _bindOff) = (Extra(1), Stripes == 1 ? 0 : Extra(Stripes));
        _strand = design.Braids.Strands == StrandSource.Neighbours
            ? Metres.Needed(design.Usage.Factor * BraidRows.BareStrand(design.Braids, plan.BodyStitches, _loop)).Millimetres
            : 0;
    }

    public int Stripes { get; }

    /// <summary>Rows of all stripes and the braids between and before them.</summary>
    public int Rounds => _sums.Length - 1;

    /// <summary>Where the first stripe begins: after a braid above the brim.</summary>
    public int First { get; }

    public bool SideToSide => _design.Construction == Construction.SideToSide;

    public static bool TryRead(HatDesign design, string size, int stripes, [NotNullWhen(true)] out StripeRounds? rounds, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        rounds = null;
        if (!RowPlanner.TryCompile(design with { Stripes = null }, size, stripes, out var plan, out why))
        {
            return false;
        }

        rounds = new StripeRounds(design, plan);
        return true;
    }

    /// <summary>Whether a braid follows a stripe that ends here with another to come: only where its rounds lie below the first decrease.</summary>
    public bool BraidAt(int end) => _braidsUpTo >= end + BraidRows.Rows;

    /// <summary>
    /// Whether a stripe may end here with another to come. So close below the first decrease that a braid would fit only into a longer body it
    /// may not, since the compiler would lengthen it; nor flat so close above that one row settles it.
    /// </summary>
    public bool MayEnd(int end) => _braidsUpTo < 0 || BraidAt(end) || end > _braidsUpTo + (_design.Construction == Construction.BrimUpFlat ? 2 : 0);

    /// <summary>The fewest rows from <paramref name="least"/> up a stripe may have, and the step to the next count: flat work changes colour on the right side.</summary>
    public (int Least, int Step) Allowed(int number, bool afterBraid, int least)
    {
        var free = _design.Construction == Construction.BrimUpRound
            || (_design.Construction == Construction.BrimUpFlat && number == Stripes && !_ownCrown);
        return free ? (Math.Max(StripeShares.LeastRows, least), 1) : (Math.Max(StripeShares.LeastRows, least) is var l && (l % 2 == 1) != afterBraid ? l + 1 : l, 2);
    }

    /// <summary>What the leftover of a stripe gives in millimetres: rows from <paramref name="at"/> on, cast-on and bind-off, ends, and a strand of each braid beside it where those are not cut.</summary>
    public long Need(int number, int at, int rows, bool afterBraid, bool beforeBraid)
    {
        var bare = ((_sums[at + rows] - _sums[at]) * _loop) + (number == 1 ? _castOn : 0) + (number == Stripes ? _bindOff : 0);
        var strands = (afterBraid && _design.Braids.StrandCount == 2 ? 1 : 0) + (beforeBraid ? 1 : 0);
        return Metres.Needed((_design.Usage.Factor * bare) + Extras.Ends).Millimetres + (strands * _strand);
    }
}
