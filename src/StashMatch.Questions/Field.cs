using System.Globalization;

namespace StashMatch.Questions;

/// <summary>
/// One thing that can be said: its name everywhere (pages, addresses, the open interface, tables, kept files), what it holds, and its bounds.
/// </summary>
/// <param name="Name">In camel case, with its unit where it has one: <c>allowancePercent</c>.</param>
/// <param name="Kind">What it holds; of several, what each of them holds.</param>
public sealed record Field(string Name, FieldKind Kind)
{
    /// <summary>The least number.</summary>
    public decimal Least { get; init; }

    /// <summary>The greatest number.</summary>
    public decimal Most { get; init; } = 1_000_000_000;

    /// <summary>Whether a number must be over the least, not the least itself.</summary>
    public bool OverLeast { get; init; }

    /// <summary>The most characters of a text.</summary>
    public int Longest { get; init; } = 80;

    /// <summary>The words a text may be; none where any text will do.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>The fields it holds, or each of several.</summary>
    public IReadOnlyList<Field> Inside { get; init; } = [];

    /// <summary>The most there may be of it; null for one alone.</summary>
    public int? MostOfThem { get; init; }

    /// <summary>Whether a text may stand in place of its fields: the id of something kept here, or a label as printed.</summary>
    public bool OrText { get; init; }

    /// <summary>Whether one of several may stand alone, without a list around it.</summary>
    public bool OrOne { get; init; }

    /// <summary>Whether an address leaves it out.</summary>
    public bool IsAside { get; init; }

    /// <summary>What a person calls it, where a sentence is about it.</summary>
    public string Called { get => field ?? Name; init; }

    /// <summary>Names it had before. They are still read.</summary>
    public IReadOnlyList<string> Before { get; init; } = [];

    /// <summary>The fields with which it goes: said for one hat or count, it means nothing to the next.</summary>
    public IReadOnlyList<string> GoesWith { get; init; } = [];

    /// <summary>What it is, in a sentence, for the interface's own document.</summary>
    public string Says { get; init; } = "";

    /// <summary>Whether its number is of grams, and may have the word behind it where it is typed.</summary>
    public bool IsGrams => Kind == FieldKind.Number && Name.EndsWith("rams", StringComparison.Ordinal);

    /// <summary>Whether there may be several of it.</summary>
    public bool IsList => MostOfThem is not null;

    /// <summary>Words of at most so many characters.</summary>
    public static Field Text(string name, int longest = 80) => new(name, FieldKind.Text) { Longest = longest };

    /// <summary>One of the members of an enumeration, in lower case with hyphens.</summary>
    public static Field Word<T>(string name)
        where T : struct, Enum => new(name, FieldKind.Text) { Words = [.. Names.All<T>().Keys] };

    /// <summary>One of a few words.</summary>
    public static Field Word(string name, params IReadOnlyList<string> words) => new(name, FieldKind.Text) { Words = words };

    /// <summary>A whole number in a range.</summary>
    public static Field Whole(string name, int least, int most) => new(name, FieldKind.Whole) { Least = least, Most = most };

    /// <summary>A number in a range.</summary>
    public static Field Number(string name, decimal least, decimal most) => new(name, FieldKind.Number) { Least = least, Most = most };

    /// <summary>A number over the least, up to the most.</summary>
    public static Field NumberOver(string name, decimal least, decimal most) => new(name, FieldKind.Number) { Least = least, Most = most, OverLeast = true };

    /// <summary>Yes or no.</summary>
    public static Field YesNo(string name) => new(name, FieldKind.YesNo);

    /// <summary>Fields of its own.</summary>
    public static Field Of(string name, params IReadOnlyList<Field> inside) => new(name, FieldKind.Fields) { Inside = inside };

    /// <summary>The same, up to so many of it.</summary>
    public Field Several(int most) => this with { MostOfThem = most };

    /// <summary>Whether it goes by a name, now or before.</summary>
    public bool Is(string name) => Name == name || Before.Contains(name, StringComparer.Ordinal);

    /// <summary>What must be so of one value of it, as the end of a sentence that begins with its name.</summary>
    public string Must { get => field ?? Bounds; init; }

    private string Bounds => Kind switch
    {
        FieldKind.Whole => $"must be a whole number from {Text(Least)} to {Text(Most)}",
        FieldKind.Number when OverLeast => $"must be a number over {Text(Least)} and at most {Text(Most)}",
        FieldKind.Number => $"must be a number from {Text(Least)} to {Text(Most)}",
        FieldKind.YesNo => "must be yes or no",
        FieldKind.Text when Words.Count > 0 => $"must be one of {string.Join(", ", Words)}",
        FieldKind.Text => $"must be at most {Longest} characters",
        _ => OrText ? "must be a text, or fields of its own" : "must be fields of its own",
    };

    /// <summary>What must be so of their number.</summary>
    public string MustBeSoMany => $"must be at most {MostOfThem}";

    private static string Text(decimal value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
