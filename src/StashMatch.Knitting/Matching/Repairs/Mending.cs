using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Matching.Repairs;

/// <summary>What mends a disappointing answer, cheapest first, each matched again with a verdict of its own.</summary>
internal sealed class Mending
{
    private const decimal LeastBrimCm = 2.5m;
    private const decimal BrimStepCm = 0.5m;

    private static readonly Arrangement[] All =
        [Arrangement.OwnColours, Arrangement.OneThread, Arrangement.InTurn, Arrangement.OneGround, Arrangement.AsItFalls];

    // The question at the count the answer has, and as it was asked: a repair of the whole hat leaves an open count open.
    private readonly Question _asked;
    private readonly Question _open;
    private readonly Answer _answer;
    private readonly Outcome _outcome;
    private readonly CancellationToken _cancel;
    private readonly List<Repair> _found = [];

    private Mending(Question question, Answer answer, Outcome outcome, CancellationToken cancel) =>
        (_asked, _open, _answer, _outcome, _cancel) = (question with { Stripes = outcome.Hat.Stripes }, question, answer, outcome, cancel);

    public static IReadOnlyList<Repair> For(Question question, Answer answer, Outcome outcome, CancellationToken cancel)
    {
        if (answer.Verdict == Verdict.Yes)
        {
            return [];
        }

        var repairs = new Mending(question, answer, outcome, cancel);
        repairs.Look();
        return repairs._found;
    }

    private void Look()
    {
        var colour = _answer.Why == Why.Colour;
        if (colour)
        {
            Blend();
        }

        LeaveOut();
        new PartRepairs(_asked, _answer, _outcome, Try, Offer).Look();
        FewerStripes();
        AnotherArrangement();
        if (!colour)
        {
            Blend();
        }

        JoinRepair.Offer(_asked, _outcome, Try, Offer);
        BrimAndEdge();
        var sizes = _asked.Hat.SizeNames.TakeWhile(s => s != _asked.Size).Reverse();
        OfferBest(RepairCode.SmallerSize, sizes, s => _open with { Size = s }, (r, s) => r with { Size = s });
        if (_answer.Why == Why.NotCalibrated)
        {
            var known = Sure(_outcome.Hat.Usage with { Spread = Usage.CalibratedSpread });
            _found.Add(new Repair(RepairCode.WeighSwatch, Verdict.Yes, known) { Changed = _asked });
        }

        Purchase.Offer(_asked, _outcome, Try, Offer);
    }

    private Outcome? Try(Question other) => Matcher.Best(other, out _, _cancel, onlyIfCovered: true) is { } tried && IsBetter(tried, _outcome) ? tried : null;

    private void Offer(RepairCode code, Outcome? tried, Func<Repair, Repair>? facts = null)
    {
        if (tried is not null)
        {
            var repair = new Repair(code, tried.Verdict, tried.Chance) { Changed = tried.Question, Stripes = tried.Hat.Stripes == _outcome.Hat.Stripes ? null : tried.Hat.Stripes };
            _found.Add(facts is null ? repair : facts(repair));
        }
    }

    // The first of the options that leads to a yes, else the one that leads furthest.
    private void OfferBest<T>(RepairCode code, IEnumerable<T> options, Func<T, Question> change, Func<Repair, T, Repair> facts)
    {
        (Outcome Outcome, T Option)? best = null;
        foreach (var option in options)
        {
            if (Try(change(option)) is { } tried && (best is not { } b || tried.Verdict > b.Outcome.Verdict))
            {
                best = (tried, option);
                if (tried.Verdict == Verdict.Yes)
                {
                    break;
                }
            }
        }

        if (best is { } found)
        {
            Offer(code, found.Outcome, r => facts(r, found.Option));
        }
    }

    private static bool IsBetter(Outcome tried, Outcome than) => (tried.Word, tried.Reach).CompareTo((than.Word, than.Reach)) > 0;

    private void Blend() => Offer(RepairCode.Blend, _asked.Blend ? null : Try(_open with { Blend = true }));

    // A ball that the scale or its label hardly vouches for may finish so neatly that the plan takes it, and be the likeliest to run out.
    private void LeaveOut()
    {
        if (_outcome.Word == Search.Word.No)
        {
            return;
        }

        var used = _answer.Leftovers.Where(l => l.Used.Millimetres > 0).Select(l => l.Leftover).Where(l => !_asked.Locks.Any(k => k.Leftover == l.Id)).OrderBy(l => l.Held).ThenBy(l => l.Id, StringComparer.Ordinal);
        OfferBest(
            RepairCode.LeaveOut,
            used,
            l => _asked with { Leftovers = [.. _asked.Leftovers.Where(o => o.Id != l.Id)] },
            (r, l) => r with { Leftover = l.Id });
    }

    private void FewerStripes() => OfferBest(
        RepairCode.FewerStripes,
        _asked.Hat.CountsFor(_asked.Size).Where(n => n < _outcome.Hat.Stripes).OrderDescending(),
        n => _asked with { Stripes = n },
        (r, n) => r with { Stripes = n });

    private void AnotherArrangement()
    {
        foreach (var arrangement in All.Where(a => a != _asked.Arrangement && a != Arrangement.InTurn))
        {
            Offer(RepairCode.AnotherArrangement, Try(_open with { Arrangement = arrangement }), r => r with { Arrangement = arrangement });
        }

        var turns = Enumerable.Range(2, Math.Max(0, _outcome.Hat.Stripes - 2)).Where(k => _asked.Arrangement != Arrangement.InTurn || k != _asked.InTurn);
        OfferBest(
            RepairCode.AnotherArrangement,
            turns.OrderBy(k => Math.Abs(k - _asked.InTurn)),
            k => _open with { Arrangement = Arrangement.InTurn, InTurn = k },
            (r, k) => r with { Arrangement = Arrangement.InTurn, InTurn = k });
    }

    // The chance of the plan at hand once the knitter's use is known.
    private double Sure(Usage usage)
    {
        var loads = _answer.Leftovers.Where(l => l.Used.Millimetres > 0).Select(l => new Odds.Load(l.Leftover, l.Used));
        return Odds.Chance.OfEnough(usage, [.. loads]);
    }

    private void BrimAndEdge()
    {
        if (_asked.Hat is not HatDesign { Brim: { } brim } design)
        {
            return;
        }

        if (brim.Folded)
        {
            Offer(RepairCode.UnfoldBrim, Try(_open with { Hat = design with { Brim = brim with { Folded = false } } }));
        }

        var depths = new List<Centimetres>();
        for (var depth = brim.Depth.Value - BrimStepCm; depth >= LeastBrimCm; depth -= BrimStepCm)
        {
            depths.Add(Centimetres.From(depth));
        }

        OfferBest(
            RepairCode.ShallowerBrim,
            depths,
            d => _open with { Hat = design with { Brim = brim with { Depth = d } } },
            (r, d) => r with { BrimDepth = d });

        // An edge that takes less, the nearest in stretch first.
        OfferBest(
            RepairCode.ThriftierBindOff,
            new[] { EdgeKind.Tubular, EdgeKind.Ordinary }.Where(k => k != brim.BindOff && BrimMetres(k) < BrimMetres(brim.BindOff)),
            k => _open with { Hat = design with { Brim = brim with { BindOff = k } } },
            (r, k) => r with { BindOff = k });
        double BrimMetres(EdgeKind kind) => (design with { Brim = brim with { BindOff = kind } }).TryNeeds(_asked.Size, _outcome.Hat.Stripes, out var needs, out _)
            ? needs.Parts.Where(p => p.Kind == PartKind.Brim).Sum(p => p.BareMetres)
            : double.MaxValue;
    }
}
