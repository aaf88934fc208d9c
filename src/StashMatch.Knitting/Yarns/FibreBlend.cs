using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>A fibre's share of a yarn.</summary>
/// <param name="Fibre">The fibre.</param>
/// <param name="Word">The word the label has for it.</param>
/// <param name="Percent">Over 0, at most 100.</param>
public sealed record FibreShare(Fibre Fibre, string Word, decimal Percent);

/// <summary>What a yarn is spun of, in shares that come to 100 %.</summary>
public sealed partial class FibreBlend : IEquatable<FibreBlend>
{
    private FibreBlend(IReadOnlyList<FibreShare> shares) => Shares = shares;

    /// <summary>A yarn nobody knows the fibre of.</summary>
    public static FibreBlend Unknown { get; } = new([new FibreShare(Fibre.Unknown, "unknown", 100)]);

    /// <summary>The shares, as the label orders them.</summary>
    public IReadOnlyList<FibreShare> Shares { get; }

    /// <summary>Whether nothing at all is known.</summary>
    public bool IsUnknown => Shares.All(s => s.Fibre.Family == FibreFamily.Unknown);

    /// <summary>Reads a label's fibre text, such as "80% merino, 20% nylon"; nothing or "unknown" is <see cref="Unknown"/>; a lone fibre is all of it.</summary>
    /// <param name="text">The text.</param>
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

        if (text.Length > 200)
        {
            message = "the fibre text is over 200 characters";
            return false;
        }

        var shares = new List<FibreShare>();
        var pieces = Separators().Split(text).Where(p => !string.IsNullOrWhiteSpace(p)).ToList();
        foreach (var piece in pieces)
        {
            if (!TryShare(piece.Trim(), pieces.Count == 1, out var share, out message))
            {
                return false;
            }

            if (shares.Exists(s => s.Word == share.Word))
            {
                message = $"{share.Word} is there twice";
                return false;
            }

            shares.Add(share);
        }

        var sum = shares.Sum(s => s.Percent);
        if (shares.Count == 0 || sum != 100)
        {
            message = shares.Count == 0 ? "no fibre can be read" : $"the shares come to {sum.ToString("0.##", CultureInfo.InvariantCulture)} %, not 100 %";
            return false;
        }

        blend = new FibreBlend(shares);
        return true;
    }

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
    public override string ToString() => IsUnknown && Shares.Count == 1
        ? "unknown"
        : string.Join(", ", Shares.Select(s => $"{s.Percent.ToString("0.##", CultureInfo.InvariantCulture)}% {s.Word}"));

    private static bool TryShare(string piece, bool alone, [NotNullWhen(true)] out FibreShare? share, [NotNullWhen(false)] out string? message)
    {
        (share, message) = (null, null);
        var found = ShareText().Match(piece);
        if (!found.Success)
        {
            message = $"\u201c{piece}\u201d is not a share and a fibre, such as 80% merino";
            return false;
        }

        var number = found.Groups["before"].Success ? found.Groups["before"].Value : found.Groups["after"].Value;
        var word = Spaces().Replace(found.Groups["word"].Value.Trim().ToLowerInvariant(), " ");
        if (Fibre.Find(word) is not { } fibre)
        {
            message = $"\u201c{word}\u201d is not a fibre known here; say unknown for what is not known";
            return false;
        }

        decimal percent = 100;
        if (number.Length == 0 && !alone)
        {
            message = $"the share of {word} is missing";
            return false;
        }

        if (number.Length > 0 && !TypedNumber.TryRead(number, out percent, out message))
        {
            message = $"the share of {word} {message}";
            return false;
        }

        if (percent is <= 0 or > 100)
        {
            message = $"the share of {word} must be over 0 and at most 100 %";
            return false;
        }

        message = null;
        share = new FibreShare(fibre, word, percent);
        return true;
    }

    [GeneratedRegex(@"[;/+&\n]|,(?!\d)|\band\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Separators();

    [GeneratedRegex(@"^(?:(?<before>-?[\d.,]+)\s*%?\s*)?(?<word>[\p{L}][\p{L} \-']*?)(?:\s*(?<after>-?[\d.,]+)\s*%?)?$", RegexOptions.CultureInvariant)]
    private static partial Regex ShareText();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();
}
