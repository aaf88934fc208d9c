namespace StashMatch.Store;

/// <summary>What is wrong with something described, field by field.</summary>
public sealed class FieldErrors
{
    private readonly SortedDictionary<string, List<string>> _byField = new(StringComparer.Ordinal);

    public bool Any => _byField.Count > 0;

    public void Add(string field, string message)
    {
        if (!_byField.TryGetValue(field, out var messages))
        {
            _byField[field] = messages = [];
        }

        if (messages.Count < 5)
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

    /// <summary>A caller that should have asked first.</summary>
    /// <exception cref="ArgumentException">Something is wrong.</exception>
    internal void ThrowIfAny(string argument)
    {
        if (Any)
        {
            throw new ArgumentException(string.Join("; ", ByField.Select(e => $"{e.Key} {e.Value[0]}")), argument);
        }
    }
}
