using System.Globalization;
using StashMatch.Knitting.Bags;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.TestKits;

/// <summary>What the page of kits says, and what a kit comes to.</summary>
public static class KitWords
{
    public const string Title = "Will this kit make every size?";
    public const string Lead = "Say what is in a kit. Every size and stripe count is tried with it.";
    public const string ThreeWays = "You see it at label weight, at legal minimum weight, and as a chance.";
    public const string Form = "Kits, and what to try";
    public const string UnderLabel = "% under label weight";
    public const string LegalMinimum = "legal minimum";
    public const string Sizes = "Sizes";
    public const string Arrangements = "Arrangements";
    public const string StartFrom = "start from";
    public const string ThisOne = "this one";
    public const string Skein = "skein";
    public const string GramsEach = "grams each";
    public const string HowMany = "how many";
    public const string LabelHint = "20 g / 80 m";
    public const string ColourHint = "teal";
    public const string AddSkein = "Add a skein";
    public const string SaveKit = "Save this kit";
    public const string RemoveKit = "Remove this kit";
    public const string AddKit = "Add another kit";
    public const string Working = "Working it out…";
    public const string HatsFromOne = "How many hats one kit makes";
    public const string SavedKits = "Saved kits";

    public static string KitNumber(int number) => $"kit {number}";

    public static string SkeinsOf(int number) => $"Skeins of kit {number}";

    public static string Cell(int kit, int row, string column) => $"kit {kit}, row {row}, {column}";

    public static string RowOf(int row, int kit) => $"row {row} of kit {kit}";

    public static string ToKit(int number) => $"to kit {number}";

    public static string Saved(string name) => $"{name} is saved.";

    public static string Under(string arrangement, int kit) => $"{arrangement}, kit {kit}";

    public static string GridTitle(string kit, string total) => $"{kit}, {total}";

    public static string Region(string title, string under) => $"{title}, {under}";

    public static string Caption(string title, string summary) => $"{title}. {summary} The per cent is the chance that the yarn lasts.";

    // The smallest kit.
    public const string Smallest = "The smallest kit";
    public const string SmallestMeans = "The fewest grams of whole skeins that make every size and count chosen above.";
    public const string SmallestEach = "It is worked out one hat at a time, with the reserve. Each skein counts as a colour of its own.";
    public const string SmallestBrim = "A brim takes a skein that keeps its shape, where one is long enough.";
    public const string Arrangement = "arrangement";
    public const string SkeinsToBuy = "skeins you can buy, one a line: label; fibre";
    public const string ShowSmallest = "Show the smallest kit";
    public const string AddAsKit = "Add it as a kit";

    // One size opened.
    public const string CannotBeKnitted = "cannot be knitted";
    public const string Opened = "The kit in this size";
    public const string AtLabelWeight = "at label weight";
    public const string AtLegalMinimum = "at legal minimum weight";
    public const string AsAChance = "as a chance";
    public const string WhichSkein = "Which skein goes where";
    public const string WhichSkeinCaption = "Which skein goes where, at label weight";
    public const string NoSkein = "no skein left";

    public static string OpenedTitle(string kit, KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return $"{kit}, size {cell.Size}, {Terms.Stripes(cell.Stripes)}, {Words.Of(cell.Arrangement)}";
    }

    public static string Percent(decimal percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} % under label weight");

    public static string Chance(string chance) => $"{chance} chance that the yarn lasts, each skein at any legal weight";

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
            { Verdict: Verdict.No } no => $"short by {AtMost(no)}{Shown.BothUp(no.Short)}",
            var just => $"enough, but {Shown.BothUp(just.ShortForAllowance)} under the reserve",
        };
    }

    /// <summary>What the lightest skeins change; null where nothing.</summary>
    public static string? Light(KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell is { Nominal: { } nominal, Lightest: { } light }
            && (Holds(light) != cell.Passes || (light.Verdict == Verdict.No) != (nominal.Verdict == Verdict.No))
            ? $"at minimum weight: {Words.Of(light.Verdict == Verdict.Yes ? Verdict.OnlyJust : light.Verdict)}"
            : null;
    }

    /// <summary>Which cell it is, for those who do not see where it stands.</summary>
    public static string Place(KitCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return $"size {cell.Size}, {Terms.Stripes(cell.Stripes)}:";
    }

    /// <summary>How a kit fares in all cells that can be knitted.</summary>
    public static string Summary(IReadOnlyList<KitCell> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        var asked = cells.Where(c => c.Nominal is not null).ToList();
        if (asked.Count == 0)
        {
            return "None of these can be knitted.";
        }

        var passes = asked.Count(c => c.Passes);
        var light = asked.Count(c => c.Passes && Holds(c.Lightest!));
        var first = asked.Select(c => c.Nominal!.WeakestSkein).OfType<string>().GroupBy(n => n, StringComparer.Ordinal)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault();
        var runsOut = first is null ? "" : $" First to run out: {first.Key} (in {first.Count().ToString(CultureInfo.InvariantCulture)}).";
        return $"Passes {passes} of {asked.Count}, {light} of them at legal minimum weight.{runsOut}";
    }

    /// <summary>Which skeins are of another weight class than the hat and so are left out; null where none is.</summary>
    public static string? LeftOut(Kit kit, Hat hat)
    {
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(hat);
        var others = KitCheck.LeftOut(kit, hat).Select(o => $"{o.Skein.Name} ({Terms.Short(o.Class)})").ToList();
        return others.Count == 0 ? null : $"Not used, because the hat takes {Terms.Of(hat.WeightClass)}: {string.Join(", ", others)}.";
    }

    /// <summary>How many hats one kit makes, each with its reserve, and which sizes.</summary>
    public static string Hats(WholeBagAnswer whole)
    {
        ArgumentNullException.ThrowIfNull(whole);
        var sizes = string.Join(", ", whole.Hats.GroupBy(h => h.Size, StringComparer.Ordinal).Select(g => $"{g.Count()} × size {g.Key}"));
        var many = whole.AtMost == 0 ? "none" : whole.AtLeast == whole.AtMost ? $"{whole.AtLeast}" : $"at least {whole.AtLeast}, at most {whole.AtMost}";
        return $"{many}{(sizes.Length > 0 ? $" ({sizes})" : "")}, with the reserve.";
    }

    /// <summary>One weight's side of an opened cell.</summary>
    public static string Side(KitSide side)
    {
        ArgumentNullException.ThrowIfNull(side);
        var who = side.WeakestSkein is { } skein ? $"{skein} for {Words.The(side.WeakestPart!)} runs out first"
            : side.WeakestPart is { } part ? $"no skein left for {Words.The(part)}" : NoSkein;
        return side.Verdict switch
        {
            Verdict.No => $"no, short by {AtMost(side)}{Shown.BothUp(side.Short)}; {who}",
            _ when side.ShortForAllowance.Millimetres > 0 => $"enough, but {Shown.BothUp(side.ShortForAllowance)} under the reserve; {who}",
            _ => $"enough, with the reserve; {who}, with {side.MarginPercent.ToString("0.0", CultureInfo.InvariantCulture)} % more than it needs",
        };
    }

    private static string AtMost(KitSide side) => side.Exact ? "" : "at most ";

    private static bool Holds(KitSide side) => side.ShortForAllowance.Millimetres == 0;
}
