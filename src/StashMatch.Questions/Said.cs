using System.Collections.Immutable;
using System.Globalization;

namespace StashMatch.Questions;

/// <summary>What somebody said, by the names of the fields: words, or fields of their own, or several of one kind. It never changes.</summary>
public sealed class Said
{
    /// <summary>Nothing.</summary>
    public static Said Nothing { get; } = new();

    private ImmutableDictionary<string, Said>? _fields;

    /// <summary>The words, or the number as words; null where it is no single value.</summary>
    public string? Words { get; private init; }

    /// <summary>Whether a program wrote it: its numbers have a point, and no unit, blank or fraction sign.</summary>
    public bool IsExact { get; private init; }

    /// <summary>Each of several; null where it is not several.</summary>
    public IReadOnlyList<Said>? Each { get; private init; }

    /// <summary>The names of the fields that are told, also of those that are told to be nothing.</summary>
    public IEnumerable<string> Fields => _fields?.Keys ?? [];

    /// <summary>Whether nothing is said.</summary>
    public bool IsNothing => Words is null && Each is null && _fields is null;

    /// <summary>What is said of a field; nothing where it is not told.</summary>
    public Said this[string name] => _fields is not null && _fields.TryGetValue(name, out var said) ? said : Nothing;

    /// <summary>What is said of a field.</summary>
    public Said this[Field field]
    {
        get
        {
            ArgumentNullException.ThrowIfNull(field);
            return this[field.Name];
        }
    }

    /// <summary>Words as somebody typed them; nothing where there are none.</summary>
    public static Said Typed(string? words) => string.IsNullOrEmpty(words) ? Nothing : new Said { Words = words };

    /// <summary>Words, or a number as words, as a program writes them.</summary>
    public static Said Exact(string? words) => words is null ? Nothing : new Said { Words = words, IsExact = true };

    /// <summary>A number as a program writes it.</summary>
    public static string Number(decimal number) => number.ToString("0.############################", CultureInfo.InvariantCulture);

    /// <summary>Several.</summary>
    public static Said Several(IEnumerable<Said> each) => new() { Each = [.. each] };

    /// <summary>Several, each as a program writes it.</summary>
    public static Said Several(IEnumerable<string> each) => Several(each.Select(Exact));

    /// <summary>Fields of its own.</summary>
    public static Said Of(params IEnumerable<(Field Field, Said Said)> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        return Named(fields.Select(f => (f.Field.Name, f.Said)));
    }

    /// <summary>Fields of its own, by their names.</summary>
    public static Said Named(params IEnumerable<(string Name, Said Said)> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var all = ImmutableDictionary.CreateBuilder<string, Said>(StringComparer.Ordinal);
        foreach (var (name, said) in fields)
        {
            all[name] = said;
        }

        return new Said { _fields = all.ToImmutable() };
    }

    /// <summary>The same with another word on one field.</summary>
    public Said With(Field field, Said said)
    {
        ArgumentNullException.ThrowIfNull(field);
        return With(field.Name, said);
    }

    /// <summary>The same with another word on the field of a name.</summary>
    public Said With(string name, Said said)
    {
        ArgumentNullException.ThrowIfNull(said);
        var fields = _fields ?? ImmutableDictionary<string, Said>.Empty.WithComparers(StringComparer.Ordinal);
        return new Said { _fields = said.IsNothing ? fields.Remove(name) : fields.SetItem(name, said) };
    }

    /// <summary>The same with another text on one field.</summary>
    public Said With(Field field, string? words) => With(field, Typed(words));
}
