namespace StashMatch.Store.Data;

/// <summary>The store will not start, and says why in plain words.</summary>
public sealed class StoreRefusedException(string message, Exception? cause = null) : Exception(message, cause);
