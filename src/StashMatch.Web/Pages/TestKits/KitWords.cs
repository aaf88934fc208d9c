using System.Globalization;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.TestKits;

/// <summary>Makes words of what a kit comes to.</summary>
public static class KitWords
{
    /// <summary>The one word of a cell.</summary>
    public static string Word(KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Nominal is not { } side ? "–" : cell.Passes ? "passes" : Words.Of(side.Verdict);
    }

    /// <summary>What stands under it: the chance, or by how much it is short.</summary>
    public static string Under(KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Nominal switch
        {
            null => "",
            _ when cell.Passes => Shown.Chance(cell.Nominal.ChanceOfEnough),
            { Verdict: Verdict.No } no => $"short {AtMost(no)}{Shown.BothUp(no.Short)}",
            var just => $"short {Shown.BothUp(just.ShortForAllowance)} of the spare",
        };
    }

    /// <summary>What the lightest skeins change; null where nothing.</summary>
    public static string? Light(KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell is { Nominal: { } nominal, Lightest: { } light } && (Holds(light) != cell.Passes || (light.Verdict == Verdict.No) != (nominal.Verdict == Verdict.No))
            ? $"light: {Words.Of(light.Verdict == Verdict.Yes ? Verdict.OnlyJust : light.Verdict)}"
            : null;
    }

    /// <summary>Which cell it is, for those who do not see where it stands.</summary>
    public static string Place(KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return $"size {cell.Size}, {cell.Stripes} {(cell.Stripes == 1 ? "stripe" : "stripes")}:";
    }

    /// <summary>How a kit fares in all cells that can be knitted.</summary>
    public static string Summary(IReadOnlyList<KitCell> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        var asked = cells.Where(c => c.Nominal is not null).ToList();
        if (asked.Count == 0)
        {
            return "Nothing of this can be knitted so.";
        }

        var passes = asked.Count(c => c.Passes);
        var light = asked.Count(c => c.Passes && Holds(c.Lightest!));
        var first = asked.Select(c => c.Nominal!.WeakestSkein).OfType<string>().GroupBy(n => n, StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault();
        return $"Passes {passes} of {asked.Count}, {light} of them with every skein as light as it may be."
            + (first is null ? "" : $" First to run out: {first.Key} (in {first.Count().ToString(CultureInfo.InvariantCulture)}).");
    }

    /// <summary>Which skeins are of another weight class than the hat and so are left out; null where none is.</summary>
    public static string? LeftOut(Kit kit, Hat hat)
    {
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(hat);
        var others = KitCheck.LeftOut(kit, hat);
        return others.Count == 0 ? null
            : $"Left out, being of another weight class than the hat’s {(int)hat.WeightClass}: {string.Join(", ", others.Select(o => $"{o.Skein.Name} ({(int)o.Class})"))}.";
    }

    /// <summary>How many hats one kit makes, each with the spare, and which sizes.</summary>
    public static string Hats(WholeBagAnswer whole)
    {
        ArgumentNullException.ThrowIfNull(whole);
        var sizes = string.Join(", ", whole.Hats.GroupBy(h => h.Size, StringComparer.Ordinal).Select(g => $"{g.Count()} × size {g.Key}"));
        return whole.AtMost == 0 ? "none, with the spare."
            : $"{(whole.AtLeast == whole.AtMost ? $"{whole.AtLeast}" : $"at least {whole.AtLeast}, at most {whole.AtMost}")}{(sizes.Length > 0 ? $" ({sizes})" : "")}, with the spare.";
    }

    /// <summary>One weight's side of an opened cell.</summary>
    public static string Side(KitSide side)
    {
        ArgumentNullException.ThrowIfNull(side);
        var who = side.WeakestSkein is { } skein ? $"{skein}, in {Words.The(side.WeakestPart!)}, runs out first" : side.WeakestPart is { } part ? $"nothing is there for {Words.The(part)}" : "nothing is there";
        return side.Verdict switch
        {
            Verdict.No => $"no: short by {AtMost(side)}{Shown.BothUp(side.Short)}; {who}",
            _ when side.ShortForAllowance.Millimetres > 0 => $"covered, but short by {Shown.BothUp(side.ShortForAllowance)} of the spare; {who}",
            _ => $"covered with the spare, {side.MarginPercent.ToString("0.0", CultureInfo.InvariantCulture)} % over on the tightest; {who}",
        };
    }

    private static string AtMost(KitSide side) => side.Exact ? "" : "at most ";

    private static bool Holds(KitSide side) => side.ShortForAllowance.Millimetres == 0;
}
