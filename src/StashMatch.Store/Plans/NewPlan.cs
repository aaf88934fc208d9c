namespace StashMatch.Store;

/// <summary>So much of a leftover for a part of a hat.</summary>
/// <param name="Leftover">The leftover's id.</param>
/// <param name="Part">The part's name, such as "stripe 1", 1 to 80 characters.</param>
/// <param name="Millimetres">Whole millimetres, over 0.</param>
public sealed record PlannedPart(string Leftover, string Part, long Millimetres);

/// <summary>A plan to be saved.</summary>
/// <param name="Name">1 to 80 characters.</param>
/// <param name="Hat">The hat's id.</param>
/// <param name="Size">The size.</param>
/// <param name="Stripes">How many stripes, 0 or more.</param>
/// <param name="Arrangement">As the open interface names it, such as "own-colours".</param>
/// <param name="Parts">What goes where.</param>
public sealed record NewPlan(string Name, string Hat, string Size, int Stripes, string Arrangement, IReadOnlyList<PlannedPart> Parts)
{
    /// <summary>The longest text of a question or a sheet.</summary>
    public const int MostJson = 200_000;

    private const int MostWords = 80;
    /// <summary>The most parts.</summary>
    public const int MostParts = 5_000;


    /// <summary>The question it answers, as JSON of the page's own; null for none.</summary>
    public string? Question { get; init; }

    /// <summary>Whether its yarn is promised to it, so that no other plan takes it.</summary>
    public bool Reserves { get; init; } = true;

    /// <summary>Says of each field what is wrong with it, under <paramref name="at"/> and the field's name.</summary>
    public void Check(FieldErrors errors, string at = "")
    {
        ArgumentNullException.ThrowIfNull(errors);
        foreach (var (field, text) in new[] { ("name", Name?.Trim()), ("hat", Hat), ("size", Size), ("arrangement", Arrangement) })
        {
            errors.CheckText(at + field, text, MostWords);
            if (string.IsNullOrWhiteSpace(text))
            {
                errors.Add(at + field, "is missing");
            }
        }

        if (Stripes is < 0 or > 1_000)
        {
            errors.Add($"{at}stripes", "must be a whole number from 0 to 1000");
        }

        errors.CheckText($"{at}question", Question, MostJson);
        if (Parts is null || Parts.Count > MostParts)
        {
            errors.Add($"{at}parts", Parts is null ? "is missing" : $"must be at most {MostParts}");
            return;
        }

        for (var i = 0; i < Parts.Count; i++)
        {
            var part = Parts[i];
            errors.CheckText($"{at}parts[{i}].part", part?.Part, MostWords);
            if (string.IsNullOrWhiteSpace(part?.Part))
            {
                errors.Add($"{at}parts[{i}].part", "is missing");
            }

            if (string.IsNullOrEmpty(part?.Leftover))
            {
                errors.Add($"{at}parts[{i}].leftover", "is missing");
            }

            if (part?.Millimetres is not (> 0 and <= 1_000_000_000))
            {
                errors.Add($"{at}parts[{i}].millimetres", "must be a whole number from 1 to 1000000000");
            }
        }
    }
}
