using StashMatch.Store;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>An entry ready to be saved.</summary>
/// <param name="Leftover">What was typed.</param>
/// <param name="Once">The key under which it counts once.</param>
/// <param name="Picture">A small picture, if a photo was taken.</param>
public sealed record Entry(NewLeftover Leftover, string Once, byte[]? Picture);
