namespace StashMatch.Store;

/// <summary>A row that can be kept.</summary>
/// <param name="Number">The row's number in the file; the heading is 1.</param>
/// <param name="Leftover">What it says.</param>
/// <param name="IsKnown">Whether its id is known already; it is then left as it is.</param>
public sealed record TableRow(int Number, NewLeftover Leftover, bool IsKnown = false);

/// <summary>A row that cannot be read, and why.</summary>
/// <param name="Number">The row's number in the file; the heading is 1.</param>
/// <param name="Reasons">Each begins with the column's name, if it lies in one.</param>
public sealed record BadRow(int Number, IReadOnlyList<string> Reasons);

/// <summary>What a table says, before anything of it is kept.</summary>
public sealed record TablePreview
{
    /// <summary>Why nothing of the file can be read; null where it can.</summary>
    public string? Refused { get; init; }

    /// <summary>The rows that can be kept, in the file's order.</summary>
    public IReadOnlyList<TableRow> Rows { get; init; } = [];

    /// <summary>The rows that cannot be read.</summary>
    public IReadOnlyList<BadRow> Bad { get; init; } = [];

    /// <summary>Columns nothing is read from.</summary>
    public IReadOnlyList<string> NotRead { get; init; } = [];

    /// <summary>The sign between cells.</summary>
    public char Separator { get; init; } = ',';

    /// <summary>What the file was written in.</summary>
    public string Encoding { get; init; } = "";
}

/// <summary>What was kept of a table.</summary>
/// <param name="Logged">How many leftovers were logged.</param>
/// <param name="LeftAsTheyAre">How many rows were of leftovers known already.</param>
public sealed record TableKept(int Logged, int LeftAsTheyAre);
