using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Fields that questions about a whole bag share.</summary>
public static class BagFields
{
    /// <summary>Sizes of the hat, each once; all of them where left out.</summary>
    public static IReadOnlyList<string> Sizes(FieldErrors errors, IReadOnlyList<string?>? asked, Hat? hat)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (hat is null || asked is null)
        {
            return hat?.SizeNames ?? [];
        }

        var read = new List<string>();
        Bounded(errors, "sizes", asked.Count, hat.SizeNames.Count);
        for (var i = 0; i < Math.Min(asked.Count, hat.SizeNames.Count); i++)
        {
            if (asked[i] is not { } size || !hat.SizeNames.Contains(size, StringComparer.Ordinal))
            {
                errors.Add($"sizes[{i}]", $"must be one of {string.Join(", ", hat.SizeNames)}");
            }
            else
            {
                Once(errors, $"sizes[{i}]", read, size);
            }
        }

        return read;
    }

    /// <summary>Stripe counts, each once; null for all the hat may have.</summary>
    public static IReadOnlyList<int>? StripeCounts(FieldErrors errors, IReadOnlyList<int>? asked)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (asked is null)
        {
            return null;
        }

        var read = new List<int>();
        Bounded(errors, "stripeCounts", asked.Count, 24);
        for (var i = 0; i < Math.Min(asked.Count, 24); i++)
        {
            if (asked[i] is < 1 or > 24)
            {
                errors.Add($"stripeCounts[{i}]", "must be a whole number from 1 to 24");
            }
            else
            {
                Once(errors, $"stripeCounts[{i}]", read, asked[i]);
            }
        }

        return read;
    }

    /// <summary>Leftovers sent along, or the logged ones where left out.</summary>
    public static async Task<IReadOnlyList<Leftover>> LeftoversAsync(
        FieldErrors errors, IReadOnlyList<LeftoverBody?>? asked, LeftoverStore store, CancellationToken cancel) =>
        asked is null ? await store.ForHatsAsync(cancel) : CanIMake.ReadLeftovers(asked, errors);

    /// <summary>A list that must have 1 to so many.</summary>
    public static void Bounded(FieldErrors errors, string field, int count, int most)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (count == 0 || count > most)
        {
            errors.Add(field, most == 1 ? "must be one" : $"must be 1 to {most}");
        }
    }

    /// <summary>Adds what is not there yet; the second time it is a fault.</summary>
    public static void Once<T>(FieldErrors errors, string field, ICollection<T> read, T value)
    {
        ArgumentNullException.ThrowIfNull(errors);
        ArgumentNullException.ThrowIfNull(read);
        if (read.Contains(value))
        {
            errors.Add(field, "is there twice");
        }
        else
        {
            read.Add(value);
        }
    }
}
