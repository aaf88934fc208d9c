namespace StashMatch.Store;

/// <summary>A key that logs once was given again, with another leftover. Nothing was logged.</summary>
public sealed class KeyUsedException() : Exception("The key was used for something else already. Give each leftover a key of its own.");
