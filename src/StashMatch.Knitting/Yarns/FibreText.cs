using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Yarns;

/// <summary>Reads a label's fibre text into shares: "80% merino, 20% nylon", "80 merino 20 nylon", "merino/nylon 80/20", or a lone fibre.</summary>
internal static class FibreText
{
    private const int MostCharacters = 500;
    private const int MostShares = 12;

    public static bool TryRead(string text, out List<FibreShare> shares, [NotNullWhen(false)] out string? message)
    {
        (shares, message) = ([], null);
        if (text.Length > MostCharacters)
        {
            message = $"it is longer than {MostCharacters} characters";
            return false;
        }

        if (!TryGroup(TypedText.Cut(text), out var groups, out message) || !TryPair(groups, out var pairs, out message))
        {
            return false;
        }

        foreach (var (word, number) in pairs)
        {
            if (!TryShare(word, number, out var share, out message))
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

        message = shares.Count switch
        {
            0 => "no fibre can be read",
            > MostShares => $"a yarn has {MostShares} fibres at most",
            _ when AddUp(shares) => null,
            _ => $"the shares come to {shares.Sum(s => s.Percent).ToString("0.##", CultureInfo.InvariantCulture)} %, not 100 %",
        };
        return message is null;
    }

    // Exactly 100, or whole thirds written short: 33.3 + 33.3 + 33.3 [practice].
    private static bool AddUp(List<FibreShare> shares) =>
        shares.Sum(s => s.Percent) == 100
        || (shares.All(s => Math.Abs((s.Percent * 3) - Math.Round(s.Percent * 3)) <= 0.2m) && shares.Sum(s => Math.Round(s.Percent * 3)) == 300);

    // Pieces between separators; words that follow each other are one fibre ("baby alpaca").
    private static bool TryGroup(List<TypedPiece> pieces, out List<List<TypedPiece>> groups, [NotNullWhen(false)] out string? message)
    {
        (groups, message) = ([], null);
        var group = new List<TypedPiece>();
        foreach (var piece in pieces)
        {
            if (piece is { Kind: TypedKind.Mark, Text: "," or ";" or "/" or "+" or "&" or "|" } or { Kind: TypedKind.Word, Text: "and" })
            {
                groups.Add(group);
                group = [];
            }
            else if (piece.Kind == TypedKind.Word && group is [.., { Kind: TypedKind.Word, Text: var before }])
            {
                group[^1] = piece with { Text = $"{before} {piece.Text}" };
            }
            else if (piece.Kind != TypedKind.Mark)
            {
                group.Add(piece);
            }
            else if (piece.Text is not ("%" or "％" or "(" or ")" or "."))
            {
                message = NotAShare(piece.Text);
                return false;
            }
        }

        groups.Add(group);
        groups.RemoveAll(g => g.Count == 0);
        return true;
    }

    private static bool TryPair(List<List<TypedPiece>> groups, out List<(string Word, string? Number)> pairs, [NotNullWhen(false)] out string? message)
    {
        (pairs, message) = ([], null);
        var flat = groups.SelectMany(g => g).ToList();
        if (flat is [{ Kind: TypedKind.Word }])
        {
            pairs.Add((flat[0].Text, null));
            return true;
        }

        var half = flat.Count / 2;
        if (flat.Count >= 4 && flat.Count % 2 == 0
            && flat[0].Kind != flat[half].Kind
            && flat.Take(half).All(p => p.Kind == flat[0].Kind) && flat.Skip(half).All(p => p.Kind == flat[half].Kind))
        {
            pairs.AddRange(flat.Take(half).Zip(flat.Skip(half), Pair));
            return true;
        }

        foreach (var group in groups)
        {
            if (group is [var alone])
            {
                message = alone.Kind == TypedKind.Word ? $"the share of {alone.Text} is missing" : $"the fibre of {alone.Text} % is missing";
                return false;
            }

            var halves = group.Chunk(2).ToList();
            if (!halves.TrueForAll(h => h.Length == 2 && h[0].Kind != h[1].Kind))
            {
                message = NotAShare(string.Join(' ', group.Select(p => p.Text)));
                return false;
            }

            pairs.AddRange(halves.Select(h => Pair(h[0], h[1])));
        }

        return true;
    }

    private static (string Word, string? Number) Pair(TypedPiece a, TypedPiece b) =>
        a.Kind == TypedKind.Word ? (a.Text, b.Text) : (b.Text, a.Text);

    private static bool TryShare(string word, string? number, [NotNullWhen(true)] out FibreShare? share, [NotNullWhen(false)] out string? message)
    {
        (share, message) = (null, null);
        if (Fibre.Find(word) is not { } fibre)
        {
            message = $"\u201c{word}\u201d is not a known fibre. Try wool, merino, alpaca, cotton or nylon, or unknown";
            return false;
        }

        decimal percent = 100;
        if (number is not null && !TypedNumber.TryRead(number, out percent, out message))
        {
            message = $"the share of {word} {message}";
            return false;
        }

        // Labels give a tenth at most; two places keep what is shown and what is held the same.
        percent = Math.Round(percent, 2);
        if (percent is <= 0 or > 100)
        {
            message = $"the share of {word} must be over 0 and at most 100 %";
            return false;
        }

        share = new FibreShare(fibre, word, percent);
        return true;
    }

    private static string NotAShare(string piece) => $"\u201c{piece}\u201d is not a share and a fibre, such as 80% merino";
}
