namespace StashMatch.Questions;

/// <summary>One detail of a leftover: its name and bounds, how it is written, and how it is read.</summary>
/// <param name="Field">Its name and bounds.</param>
/// <param name="Write">What is said of it.</param>
/// <param name="Read">The details with it, as read; with a message to its name, the details as they were.</param>
public sealed record LeftoverField(Field Field, Func<LeftoverDetails, Said> Write, Func<LeftoverDetails, Reading, LeftoverDetails> Read)
{
    /// <summary>Another way to say what a field before it says: read, and written in the open interface alone.</summary>
    public bool IsAnotherWay { get; init; }

    /// <summary>Words of a person's own, which a spreadsheet might take for a formula.</summary>
    public bool IsOwnWords { get; init; }

    /// <summary>Its columns in a table, and as an edit keeps them: "label" with its "grams" is "labelGrams".</summary>
    public IEnumerable<string> Columns => Field.Inside.Count == 0 ? [Field.Name] : Field.Inside.Select(i => Column(i));

    /// <summary>The column of a field within it.</summary>
    public string Column(Field inside)
    {
        ArgumentNullException.ThrowIfNull(inside);
        return $"{Field.Name}{char.ToUpperInvariant(inside.Name[0])}{inside.Name[1..]}";
    }
}
