namespace StashMatch.Questions;

/// <summary>What is wrong with something described, field by field.</summary>
public sealed class FieldErrors
{
    // Whoever sends a great many faults is told of the first of them.
    private const int MostFields = 200;

    private readonly SortedDictionary<string, List<string>> _byField = new(StringComparer.Ordinal);

    public bool Any => _byField.Count > 0;

    /// <summary>How often something was found wrong.</summary>
    public int Count { get; private set; }

    /// <summary>Says what is wrong with a field. That it is missing is said of none of which something else is wrong.</summary>
    public void Add(string field, string message)
    {
        ArgumentNullException.ThrowIfNull(message);
        Count++;
        if (_byField.Count >= MostFields && !_byField.ContainsKey(field))
        {
            return;
        }

        if (!_byField.TryGetValue(field, out var messages))
        {
            _byField[field] = messages = [];
        }

        if (messages.Count < 5 && (messages.Count == 0 || !message.StartsWith("is missing", StringComparison.Ordinal)))
        {
            messages.Add(message);
        }
    }

    /// <summary>A number that must be there, be finite and lie in a range.</summary>
    public decimal? Number(string field, double? value, decimal least, decimal most, bool leastItself = true)
    {
        if (value is not { } v)
        {
            Add(field, "is missing");
        }
        else if (double.IsFinite(v) && v >= (double)least && v <= (double)most && ((decimal)v > least || leastItself))
        {
            return (decimal)v;
        }
        else
        {
            Add(field, $"must be a number {(leastItself ? "from" : "over")} {least} {(leastItself ? "to" : "and at most")} {most}");
        }

        return null;
    }

    /// <summary>A text of at most so many characters, all of them text.</summary>
    public void CheckText(string field, string? text, int most)
    {
        if (text?.Length > most)
        {
            Add(field, $"must be at most {most} characters");
        }

        if (text?.Contains('\0', StringComparison.Ordinal) == true)
        {
            Add(field, "has an unreadable character in it");
        }
    }

    /// <summary>One of a few names.</summary>
    public T? OneOf<T>(string field, string? value, IReadOnlyDictionary<string, T> names)
        where T : struct
    {
        if (value is not null && names.TryGetValue(value, out var found))
        {
            return found;
        }

        Add(field, $"must be one of {string.Join(", ", names.Keys)}");
        return null;
    }

    /// <summary>Each field and its messages, in order.</summary>
    public IReadOnlyDictionary<string, string[]> ByField => _byField.ToDictionary(e => e.Key, e => e.Value.ToArray(), StringComparer.Ordinal);

    /// <summary>The first message of a field or of what lies in it; null where nothing is wrong with it.</summary>
    public string? Of(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return _byField.Where(e => e.Key == field || (e.Key.StartsWith(field, StringComparison.Ordinal) && e.Key[field.Length] is '.' or '['))
            .Select(e => e.Value[0]).FirstOrDefault();
    }

    /// <summary>A caller that should have asked first.</summary>
    /// <exception cref="ArgumentException">Something is wrong.</exception>
    public void ThrowIfAny(string argument)
    {
        if (Any)
        {
            throw new ArgumentException(string.Join("; ", ByField.Select(e => $"{e.Key} {e.Value[0]}")), argument);
        }
    }
}
