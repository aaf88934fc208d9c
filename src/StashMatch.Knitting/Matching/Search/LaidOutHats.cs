using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using StashMatch.Knitting.Hats;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>What each size and stripe count of a hat needs, worked out once and kept with the hat.</summary>
internal static class LaidOutHats
{
    private static readonly ConditionalWeakTable<Hat, ConcurrentDictionary<(string, int), (HatNeeds?, CannotBeKnitted?)>> Kept = [];

    /// <summary>As <see cref="Hat.TryNeeds"/>.</summary>
    public static bool TryNeeds(Hat hat, string size, int stripes, [NotNullWhen(true)] out HatNeeds? needs, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        (needs, why) = Kept.GetOrCreateValue(hat).GetOrAdd(
            (size, stripes), static (key, of) => of.TryNeeds(key.Item1, key.Item2, out var found, out var cannot) ? (found, null) : (null, cannot), hat);
        return needs is not null;
    }
}
