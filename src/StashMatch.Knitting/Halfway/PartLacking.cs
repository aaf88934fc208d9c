using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Matching.Search;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Halfway;

/// <summary>A part whose need a plan's leftovers do not cover.</summary>
/// <param name="Part">The part's name.</param>
/// <param name="Planned">What no leftover gives of its need as planned, over 0.</param>
/// <param name="Forecast">The same at the rate forecast.</param>
public sealed record PartLacking(string Part, Metres Planned, Metres Forecast)
{
    /// <summary>Every part of a hat that is given less than it needs, in knitting order. Ends are paid once by each leftover's run of parts, as in the answer.</summary>
    /// <param name="hat">The hat as planned.</param>
    /// <param name="arrangement">How its leftovers were spread.</param>
    /// <param name="inTurn">How many took turns, 2 or more.</param>
    /// <param name="apart">Parts cut out of the run they would come from.</param>
    /// <param name="given">What the plan gives a part; 0 where nothing goes in.</param>
    public static IReadOnlyList<PartLacking> Of(HatNeeds hat, Arrangement arrangement, int inTurn, IReadOnlyList<string> apart, Func<string, Metres> given)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(apart);
        ArgumentNullException.ThrowIfNull(given);
        var grouping = Grouping.Of(hat, arrangement, inTurn, new Dictionary<string, string>(StringComparer.Ordinal), apart);
        var lacking = new List<PartLacking>();
        for (var m = 0; m < hat.Parts.Count; m++)
        {
            var part = hat.Parts[m];
            var (need, has) = (part.Need(hat.Usage, grouping.Groups[grouping.GroupOf[m]].EndsAt == m), given(part.Name));
            if (need > has)
            {
                lacking.Add(new PartLacking(part.Name, need - has, need - has));
            }
        }

        return lacking;
    }
}
