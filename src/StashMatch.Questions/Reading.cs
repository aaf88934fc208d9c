using System.Globalization;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Questions;

/// <summary>Reads what was said, field by field. What cannot be read, or is out of its bounds, is told to the errors under the field's name.</summary>
/// <param name="said">What was said.</param>
/// <param name="errors">Takes the messages.</param>
/// <param name="at">What stands before each name: <c>leftovers[0].</c></param>
public sealed class Reading(Said said, FieldErrors errors, string at = "")
{
    /// <summary>What was said.</summary>
    public Said Said => said;

    /// <summary>Takes the messages.</summary>
    public FieldErrors Errors => errors;

    /// <summary>Whether a field is told, if only to be nothing.</summary>
    public bool Names(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return said.Fields.Contains(field.Name, StringComparer.Ordinal);
    }

    /// <summary>Whether anything is said of a field.</summary>
    public bool Has(Field field) => !said[field].IsNothing;

    /// <summary>A message to a field.</summary>
    public void Wrong(Field field, string message)
    {
        ArgumentNullException.ThrowIfNull(field);
        errors.Add(at + field.Name, message);
    }

    /// <summary>Words; null where none are said, or with a message where there are too many.</summary>
    public string? Text(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        if (said[field].Words is not { } words)
        {
            return null;
        }

        if (field.Words.Count > 0 ? !field.Words.Contains(words, StringComparer.Ordinal) : words.Length > field.Longest)
        {
            Wrong(field, field.Must);
            return null;
        }

        if (words.Contains('\0', StringComparison.Ordinal))
        {
            Wrong(field, "has an unreadable character in it");
            return null;
        }

        return words;
    }

    /// <summary>Words that must be there.</summary>
    public string? Wanted(Field field)
    {
        if (!string.IsNullOrWhiteSpace(said[field].Words))
        {
            return Text(field);
        }

        Wrong(field, "is missing");
        return null;
    }

    /// <summary>A number in its range; null where none is said, or with a message.</summary>
    public decimal? Number(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return ReadNumber(said[field], field, at + field.Name);
    }

    /// <summary>A number in its range that must be there.</summary>
    public decimal? NumberWanted(Field field)
    {
        if (Has(field))
        {
            return Number(field);
        }

        Wrong(field, "is missing");
        return null;
    }

    /// <summary>A whole number in its range; null where none is said, or with a message.</summary>
    public int? Whole(Field field) => (int?)Number(field);

    /// <summary>Yes or no; null where nothing is said, or with a message.</summary>
    public bool? YesNo(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        switch (said[field].Words?.Trim().ToUpperInvariant())
        {
            case null or "":
                return null;
            case "YES" or "TRUE" or "1" or "X":
                return true;
            case "NO" or "FALSE" or "0":
                return false;
            default:
                Wrong(field, field.Must);
                return null;
        }
    }

    /// <summary>A member of an enumeration; null where none is said, or with a message.</summary>
    public T? Word<T>(Field field)
        where T : struct, Enum
    {
        ArgumentNullException.ThrowIfNull(field);
        return said[field].Words is { } words && (words.Length > 0 || said[field].IsExact) ? ReadWord<T>(said[field], field, at + field.Name) : null;
    }

    /// <summary>The fields a field holds; null where nothing is said of it.</summary>
    public Reading? In(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Has(field) ? new Reading(said[field], errors, $"{at}{field.Name}.") : null;
    }

    /// <summary>The fields a field holds, none of them said where nothing is said of it.</summary>
    public Reading InOrNone(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return new Reading(said[field], errors, $"{at}{field.Name}.");
    }

    /// <summary>Each of several, with its fields; what is nothing is told as missing. None where nothing is said.</summary>
    public IReadOnlyList<Reading> Each(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var each = Several(field);
        for (var i = 0; i < each.Count; i++)
        {
            if (each[i].IsNothing)
            {
                errors.Add(Place(field, i), "is missing");
            }
        }

        return [.. each.Select((one, i) => new Reading(one, errors, Place(field, i) + "."))];
    }

    /// <summary>Each of several members of an enumeration.</summary>
    public IReadOnlyList<T> EachWord<T>(Field field)
        where T : struct, Enum => [.. Several(field).Select((one, i) => ReadWord<T>(one, field, Place(field, i))).OfType<T>()];

    /// <summary>Each of several numbers in their range.</summary>
    public IReadOnlyList<decimal> EachNumber(Field field) => [.. Several(field).Select((one, i) => ReadNumber(one, field, Place(field, i), wanted: true)).OfType<decimal>()];

    /// <summary>Each of several whole numbers in their range.</summary>
    public IReadOnlyList<int> EachWhole(Field field) => [.. EachNumber(field).Select(n => (int)n)];

    /// <summary>Each of several texts.</summary>
    public IReadOnlyList<string> EachText(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var texts = new List<string>();
        foreach (var (one, i) in Several(field).Select((one, i) => (one, i)))
        {
            if (one.Words is { } words && words.Length <= field.Longest)
            {
                texts.Add(words);
            }
            else
            {
                errors.Add(Place(field, i), one.Words is null ? "is missing" : field.Must);
            }
        }

        return texts;
    }

    /// <summary>What a place in a list is called: <c>sizes[2]</c>.</summary>
    public string Place(Field field, int index)
    {
        ArgumentNullException.ThrowIfNull(field);
        return string.Create(CultureInfo.InvariantCulture, $"{at}{field.Name}[{index}]");
    }

    /// <summary>Says of a list that must not have one thing twice where it has.</summary>
    public void Once<T>(Field field, IReadOnlyList<T> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        for (var i = 0; i < read.Count; i++)
        {
            if (read.Take(i).Contains(read[i]))
            {
                errors.Add(Place(field, i), "is there twice");
            }
        }
    }

    private IReadOnlyList<Said> Several(Field field)
    {
        var each = said[field].Each ?? [];
        if (each.Count <= field.MostOfThem)
        {
            return each;
        }

        Wrong(field, field.MustBeSoMany);
        return [];
    }

    private decimal? ReadNumber(Said one, Field field, string place, bool wanted = false)
    {
        if (one.Words is not { } words || (string.IsNullOrWhiteSpace(words) && !wanted))
        {
            if (wanted)
            {
                errors.Add(place, "is missing");
            }

            return null;
        }

        string? unread = null;
        var read = one.IsExact
            ? decimal.TryParse(words, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            : TypedNumber.TryRead(field.IsGrams ? GramText.Bare(words) : words, out value, out unread);
        if (read && value <= field.Most && (field.OverLeast ? value > field.Least : value >= field.Least) && (field.Kind == FieldKind.Number || value == decimal.Truncate(value)))
        {
            return value;
        }

        errors.Add(place, field.Kind == FieldKind.Number && unread is not null ? unread : field.Must);
        return null;
    }

    private T? ReadWord<T>(Said one, Field field, string place)
        where T : struct, Enum
    {
        var words = one.IsExact ? one.Words : one.Words?.Trim().ToLowerInvariant();
        if (words is not null && Questions.Names.All<T>().TryGetValue(words, out var found))
        {
            return found;
        }

        errors.Add(place, field.Must);
        return null;
    }
}
