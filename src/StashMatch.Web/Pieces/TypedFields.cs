using StashMatch.Knitting.Quantities;
using StashMatch.Store;

namespace StashMatch.Web.Pieces;

/// <summary>Reads typed numbers into fields, with a message where one cannot be read.</summary>
public static class TypedFields
{
    /// <summary>The names and texts of an address.</summary>
    public static IEnumerable<(string Name, string Value)> Pairs(this IQueryCollection query)
    {
        ArgumentNullException.ThrowIfNull(query);
        return query.SelectMany(q => q.Value.OfType<string>().Select(v => (q.Key, v)));
    }

    /// <summary>A number typed as people do, within a range; null with a message under the field's name otherwise.</summary>
    public static decimal? Typed(this FieldErrors errors, string field, string typed, decimal least, decimal most)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (!TypedNumber.TryRead(typed, out var value, out var message))
        {
            errors.Add(field, message);
            return null;
        }

        if (value < least || value > most)
        {
            errors.Add(field, $"must be from {least:0.###} to {most:0}");
            return null;
        }

        return value;
    }

    /// <summary>Grams, with or without the word behind them: "12", "12 g", "12 grams".</summary>
    public static decimal? TypedGrams(this FieldErrors errors, string field, string typed, decimal least, decimal most)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return errors.Typed(field, GramText.Bare(typed), least, most);
    }
}
