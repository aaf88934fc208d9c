namespace StashMatch.Knitting.Hats;

/// <summary>Why a hat cannot be knitted as asked: a result, not an error.</summary>
/// <param name="Field">The field that stands in the way, as the open interface names it ("stripes", "size", "brim.depthCm").</param>
/// <param name="Reason">One plain sentence.</param>
/// <param name="MostStripes">The largest stripe count that can be knitted, where the count is what stands in the way.</param>
public sealed record CannotBeKnitted(string Field, string Reason, int? MostStripes = null);
