using StashMatch.Knitting.Hats;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>Names of like parts told short: "stripes 2 to 5", "both colours of braids 1 to 5".</summary>
public static class PartRanges
{
    public static string Of(IReadOnlyList<HatPart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var numbers = parts.Select(p => p.Number).Distinct().Order().ToList();
        return parts switch
        {
            _ when parts.All(p => p.Kind == PartKind.Stripe) => $"{(numbers.Count == 1 ? "stripe" : "stripes")} {Range(numbers)}",
            _ when parts.All(p => p.Kind == PartKind.Strand) && parts.Count == 2 * numbers.Count => $"both colours of {(numbers.Count == 1 ? "braid" : "braids")} {Range(numbers)}",
            _ => string.Join(", ", parts.Select(p => Words.Part(p.Name))),
        };
    }

    // 1, 3 to 5 and 7: runs of three or more are told by their ends.
    private static string Range(List<int> numbers)
    {
        var told = new List<string>();
        for (var i = 0; i < numbers.Count;)
        {
            var end = i;
            while (end + 1 < numbers.Count && numbers[end + 1] == numbers[end] + 1)
            {
                end++;
            }

            if (end - i >= 2)
            {
                told.Add($"{numbers[i]} to {numbers[end]}");
                i = end + 1;
            }
            else
            {
                told.Add($"{numbers[i++]}");
            }
        }

        return told.Count == 1 ? told[0] : $"{string.Join(", ", told.SkipLast(1))} and {told[^1]}";
    }
}
