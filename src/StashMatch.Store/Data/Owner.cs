namespace StashMatch.Store.Data;

/// <summary>Whose things they are. At home there is one fixed owner.</summary>
public sealed record Owner(Guid Id)
{
    /// <summary>The one person at home.</summary>
    public static Owner Home { get; } = new(new Guid("00000000-0000-0000-0000-000000000001"));
}
