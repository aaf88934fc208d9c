namespace StashMatch.Store;

/// <summary>A backup was not put in the file's place, and why in plain words. The file is as it was.</summary>
public sealed class RestoreRefusedException(string message, Exception? cause = null) : Exception(message, cause);
