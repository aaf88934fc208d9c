using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Bags;

/// <summary>How deep must each stripe be so that the chosen leftovers are knitted up?</summary>
/// <remarks>
/// Each leftover has one stripe and the body keeps its rows. As many of the chosen ones as the hat has room for go in; of those that could,
/// the ones that hold least in all, so that least is left over; the rows then so that most are finished and few awkward stubs stay, and of
/// those rows the evenest. On a side-to-side panel that is proven wherever the colours let it be; on a crown the stripes are first put in order of colour, in small
/// steps, and the rows are the best for that order.
/// </remarks>
public static class DepthsFromLeftovers
{
    // So many orders of colours are tried where the first do not do, and no more steps than these in all.
    private const int MostOrders = 1_000;
    private const long MostSteps = 100_000_000;

    /// <summary>Finds the depths; a plan with a reason where there are none.</summary>
    /// <exception cref="ArgumentException">No leftover, more than can be chosen, or two that share an id.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DepthPlan Find(DepthQuestion question, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Leftovers.Count is 0 or > DepthQuestion.MostLeftovers
            || question.Leftovers.DistinctBy(l => l.Id, StringComparer.Ordinal).Count() != question.Leftovers.Count)
        {
            throw new ArgumentException($"1 to {DepthQuestion.MostLeftovers} leftovers of different ids are chosen.", nameof(question));
        }

        var chosen = question.Leftovers.OrderByDescending(l => l.Held).ThenBy(l => l.Colour?.Hex, StringComparer.Ordinal).ThenBy(l => l.Id, StringComparer.Ordinal).ToList();
        var counts = question.Hat.StripeCounts ?? StripeCounts.Any;
        DepthPlan? none = null;
        for (var stripes = Math.Min(chosen.Count, counts.Most); stripes >= counts.Least; stripes--)
        {
            if (!StripeRounds.TryRead(question.Hat, question.Size, stripes, out var rounds, out var why))
            {
                none ??= new DepthPlan { Why = Why.CannotBeKnitted, Reason = why.Reason };
                continue;
            }

            var plan = rounds.SideToSide ? Flat(question, rounds, chosen, cancel) : Ordered(question, rounds, chosen, cancel);
            if (plan.Why == Why.Covered)
            {
                return plan with { NotIn = [.. chosen.Except(plan.Stripes.Select(s => s.Leftover))], ProvenBest = plan.ProvenBest && none is not { Why: Why.Colour } };
            }

            none ??= plan;
            if (plan.Why == Why.Short && rounds.SideToSide)
            {
                // Fewer stripes have fewer leftovers, and more rows where there are fewer braids.
                return none;
            }
        }

        return none ?? new DepthPlan
        {
            Why = Why.CannotBeKnitted,
            Reason = $"The hat has at least {counts.Least} stripes. Choose as many leftovers.",
        };
    }

    private static DepthPlan Flat(DepthQuestion question, StripeRounds rounds, List<Leftover> chosen, CancellationToken cancel)
    {
        var found = new FlatDepths(rounds, [.. chosen.Select(l => l.Held.Millimetres)], [.. chosen.Select(l => Bears(question, l))], question.LeastRows, question.MostRows).Find(cancel);
        if (found is not var (rows, first, last))
        {
            return TooLittle(question, rounds, chosen);
        }

        var used = Enumerable.Range(0, chosen.Count).Where(j => rows[j] > 0).ToList();
        if (ColourPath.Find([.. used.Select(j => chosen[j])], used.IndexOf(first), used.IndexOf(last)) is { } path)
        {
            return Made(question, [.. path.Select(i => chosen[used[i]])], [.. path.Select(i => rows[used[i]])]) with { ProvenBest = true };
        }

        return Searched(question, rounds, chosen, cancel) ?? new DepthPlan { Why = Why.Colour, Reason = "Neighbouring stripes would look the same in every order tried." };
    }

    // The order of colours, from either end; where these leftovers do not reach in it, any order the colours allow.
    private static DepthPlan Ordered(DepthQuestion question, StripeRounds rounds, List<Leftover> chosen, CancellationToken cancel)
    {
        var path = ColourPath.Find([.. chosen.Take(rounds.Stripes)]);
        (List<Leftover> Order, int[] Rows, Int128 Worth)? best = null;
        foreach (var order in path is null ? [] : new[] { path, [.. path.Reverse()] })
        {
            List<Leftover> so = [.. order.Select(i => chosen[i])];
            if (Filled(question, rounds, so) is var (rows, worth) && (best is null || worth > best.Value.Worth))
            {
                best = (so, rows, worth);
            }
        }

        return best is var (found, each, _) ? Made(question, found, each)
            : Searched(question, rounds, chosen, cancel) is { } searched ? searched with { ProvenBest = false }
            : path is null ? new DepthPlan { Why = Why.Colour, Reason = "Neighbouring stripes would look the same in every order tried." }
            : TooLittle(question, rounds, chosen);
    }

    // One order after another that the colours allow, up to a limit: least held in all, then the tidiest. Proven where all were looked at.
    private static DepthPlan? Searched(DepthQuestion question, StripeRounds rounds, List<Leftover> chosen, CancellationToken cancel)
    {
        (List<Leftover> Order, int[] Rows, Int128 Worth)? best = null;
        var left = (int)Math.Min(MostOrders, MostSteps / Math.Max(1, (long)rounds.Stripes * rounds.Rounds * rounds.Rounds));
        foreach (var order in ColourPath.All(chosen, rounds.Stripes))
        {
            cancel.ThrowIfCancellationRequested();
            if (--left < 0)
            {
                break;
            }

            if (Filled(question, rounds, order) is var (rows, worth) && (best is null || worth > best.Value.Worth))
            {
                best = ([.. order], rows, worth);
            }
        }

        return best is var (found, each, _) ? Made(question, found, each) with { ProvenBest = left >= 0 } : null;
    }

    private static (int[] Rows, Int128 Worth)? Filled(DepthQuestion question, StripeRounds rounds, IReadOnlyList<Leftover> order) =>
        OrderedDepths.Find(rounds, [.. order.Select(l => (l.Held.Millimetres, Bears(question, l)))], question.LeastRows, question.MostRows);

    private static long Bears(DepthQuestion question, Leftover l) => (long)Math.Floor(l.Held.Millimetres * 100m / (100m + question.AllowancePercent));

    // Every figure is read off the row plan of the finished hat.
    private static DepthPlan Made(DepthQuestion question, List<Leftover> order, int[] rows)
    {
        if (!OwnRows.TryPut(question.Hat, question.Size, rows, out var hat, out var why) || !hat.TryNeeds(question.Size, rows.Length, out var needs, out why))
        {
            throw new InvalidOperationException($"The depths found do not make the hat: {why.Reason}");
        }

        var grouping = Layout.Of(FromThisBag.QuestionOf(hat, question.Size, rows.Length, Arrangement.OwnColours, [], question.AllowancePercent), needs).Grouping;
        var stripes = new List<DepthStripe>();
        foreach (var (part, index) in needs.Parts.Select((p, i) => (p, i)).Where(p => p.p.Kind == PartKind.Stripe))
        {
            var group = grouping.Groups[grouping.GroupOf[index]];
            var need = Metres.FromMillimetres(group.Members.Sum(m => needs.Parts[m].Need(needs.Usage, m == group.EndsAt).Millimetres));
            var leftover = order[part.Number - 1];
            if (need.Millimetres > Bears(question, leftover))
            {
                throw new InvalidOperationException($"{part.Name} takes more than {leftover.Id} may give.");
            }

            stripes.Add(new DepthStripe(part, leftover, need, leftover.Held - need, Bears(question, leftover) - need.Millimetres <= Worth.Finished));
        }

        return new DepthPlan { Why = Why.Covered, Hat = hat, Stripes = stripes, Left = Metres.FromMillimetres(stripes.Sum(s => s.Left.Millimetres)) };
    }

    // What is missing: the rows no leftover reaches, at the width of the widest row.
    private static DepthPlan TooLittle(DepthQuestion question, StripeRounds rounds, List<Leftover> chosen)
    {
        var reach = 0;
        var wanted = rounds.Rounds;
        foreach (var leftover in chosen.Take(rounds.Stripes))
        {
            var rows = 0;
            while (rows < Math.Min(question.MostRows, wanted) && rounds.Need(0, 0, rows + 1, false, false) <= Bears(question, leftover))
            {
                rows++;
            }

            reach += rows;
        }

        var braids = rounds.BraidAt(0) && rounds.SideToSide ? (rounds.Stripes - 1) * BraidRows.Rows : 0;
        var missing = Math.Max(0, wanted - braids - reach);
        if (missing == 0)
        {
            return new DepthPlan
            {
                Why = Why.CannotBeKnitted,
                Reason = $"{rounds.Stripes} stripes of {question.LeastRows} to {question.MostRows} rows do not fill the hat.",
            };
        }

        var row = rounds.Need(0, 0, 2, false, false) - rounds.Need(0, 0, 1, false, false);
        return new DepthPlan
        {
            Why = question.MostRows < wanted && chosen.TrueForAll(l => rounds.Need(0, 0, Math.Min(question.MostRows, wanted), false, false) <= Bears(question, l)) ? Why.CannotBeKnitted : Why.Short,
            Reason = $"These leftovers are enough for {reach} of {wanted - braids} rows.",
            Short = Metres.FromMillimetres(missing * row).WithAllowance(question.AllowancePercent),
        };
    }
}
