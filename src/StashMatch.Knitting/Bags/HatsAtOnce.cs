using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;

namespace StashMatch.Knitting.Bags;

/// <summary>So many hats of one kind laid out in one go, as if they were one hat whose stripes do not meet from hat to hat. For hats as it falls alone: what else binds a leftover binds it within its hat.</summary>
internal sealed class HatsAtOnce(HatKind kind, CancellationToken cancel)
{
    // Up to so many groups of parts every possibility may be looked at; more are laid longest first.
    private const int FewGroups = 30;

    /// <summary>A leftover for each group of each hat, or null where no way was found.</summary>
    public IReadOnlyList<int[]>? Lay(Question question, int hats)
    {
        var all = kind.Hat with { Parts = [.. Enumerable.Range(0, hats).SelectMany(PartsOf)] };
        for (var width = kind.HasBrim ? 0 : BrimSet.Widest; width <= BrimSet.Widest; width++)
        {
            cancel.ThrowIfCancellationRequested();
            if (Covered(Puzzle.Of(question, all, width)) is { } binOf)
            {
                var groups = binOf.Length / hats;
                return [.. Enumerable.Range(0, hats).Select(h => binOf[(h * groups)..((h + 1) * groups)])];
            }
        }

        return null;
    }

    private int[]? Covered(Puzzle puzzle)
    {
        var (capacity, binOf) = (Tiers.CapacityOfYes(puzzle), new int[puzzle.Items.Length]);
        return BestFit.Cover(puzzle, capacity, binOf) ? binOf
            : puzzle.Items.Length <= FewGroups && new Covering(puzzle, cancel).Find(capacity, out var found) == Found.Yes ? found
            : null;
    }

    // Numbers far apart, so that the last stripe of one hat and the first of the next are not next door; letters of their own.
    private IEnumerable<HatPart> PartsOf(int hat) => kind.Hat.Parts.Select(p => p with
    {
        Name = $"{p.Name}\u0001{hat}",
        Number = p.Number + (hat * 100),
        Yarn = p.Yarn is null ? null : $"{p.Yarn}\u0001{hat}",
    });
}
