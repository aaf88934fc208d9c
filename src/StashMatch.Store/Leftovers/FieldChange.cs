namespace StashMatch.Store;

/// <summary>One field's text before and after an edit; empty where nothing stood.</summary>
public sealed record FieldChange(string Field, string Before, string After);
