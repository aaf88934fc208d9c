using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace StashMatch.Knitting.Yarns;

/// <summary>A fibre's share of a yarn.</summary>
/// <param name="Fibre">The fibre.</param>
/// <param name="Word">The word the label has for it.</param>
/// <param name="Percent">Over 0, at most 100, to a hundredth.</param>
public sealed record FibreShare(Fibre Fibre, string Word, decimal Percent);

/// <summary>What a yarn is spun of, in shares that come to 100 % (thirds may be written short, such as 33.3 %).</summary>
public sealed class FibreBlend : IEquatable<FibreBlend>
{
    private FibreBlend(IReadOnlyList<FibreShare> shares) => Shares = shares;

    /// <summary>A yarn nobody knows the fibre of.</summary>
    public static FibreBlend Unknown { get; } = new([new FibreShare(Fibre.Unknown, "unknown", 100)]);

    /// <summary>The shares, as the label orders them.</summary>
    public IReadOnlyList<FibreShare> Shares { get; }

    /// <summary>Whether nothing at all is known.</summary>
    public bool IsUnknown => Shares.All(s => s.Fibre.Family == FibreFamily.Unknown);

    /// <summary>
    /// Reads a label's fibre text, such as "80% merino, 20% nylon", "80 merino 20 nylon" or "merino/nylon 80/20";
    /// nothing or "unknown" is <see cref="Unknown"/>; a lone fibre is all of it.
    /// </summary>
    /// <param name="text">The text, 500 characters and 12 fibres at most.</param>
    /// <param name="blend">The blend, when the answer is true.</param>
    /// <param name="message">What is wrong, otherwise, in plain words.</param>
    public static bool TryParse(string? text, [NotNullWhen(true)] out FibreBlend? blend, [NotNullWhen(false)] out string? message)
    {
        (blend, message) = (null, null);
        if (string.IsNullOrWhiteSpace(text) || text.Trim().Equals("unknown", StringComparison.OrdinalIgnoreCase))
        {
            blend = Unknown;
            return true;
        }

        if (!FibreText.TryRead(text, out var shares, out message))
        {
            return false;
        }

        blend = new FibreBlend(shares);
        return true;
    }

    /// <summary>Yarns held together: the mass-weighted mix. A superwash yarn's wool counts as superwash.</summary>
    /// <param name="yarns">Each with its share of the mass; the shares come to 1.</param>
    public static FibreBlend Mix(IReadOnlyList<(FibreBlend Blend, bool Superwash, decimal MassShare)> yarns) => new([.. yarns
        .SelectMany(y => y.Blend.Shares.Select(s => (
            Washed: y.Superwash && s.Fibre.Family == FibreFamily.Wool, s.Fibre, s.Word, Percent: s.Percent * y.MassShare)))
        .GroupBy(s => s.Washed ? (Fibre.SuperwashWool, Fibre.SuperwashWool.Name) : (s.Fibre, s.Word))
        .Select(g => new FibreShare(g.Key.Item1, g.Key.Item2, g.Sum(s => s.Percent)))]);

    /// <summary>Whether there is wool in it that felts.</summary>
    /// <param name="superwash">Whether the yarn is said to be machine-washable.</param>
    public bool HasUntreatedWool(bool superwash) => !superwash && Contains(FibreFamily.Wool);

    /// <summary>Whether there is machine-washable wool in it.</summary>
    /// <param name="superwash">Whether the yarn is said to be machine-washable.</param>
    public bool HasSuperwashWool(bool superwash) => Contains(FibreFamily.SuperwashWool) || (superwash && Contains(FibreFamily.Wool));

    /// <summary>Whether a family has a share in it.</summary>
    public bool Contains(FibreFamily family) => Shares.Any(s => s.Fibre.Family == family);

    /// <summary>Whether a fibre, by its own name, has a share in it.</summary>
    public bool Contains(string fibre) => Shares.Any(s => s.Fibre.Name == fibre);

    /// <inheritdoc/>
    public bool Equals(FibreBlend? other) => other is not null && Shares.SequenceEqual(other.Shares);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as FibreBlend);

    /// <inheritdoc/>
    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    /// <summary>The shares as text that reads back the same, such as "80% merino, 20% nylon".</summary>
    public override string ToString() => Equals(Unknown)
        ? "unknown"
        : string.Join(", ", Shares.Select(s => $"{s.Percent.ToString("0.##", CultureInfo.InvariantCulture)}% {s.Word}"));
}
