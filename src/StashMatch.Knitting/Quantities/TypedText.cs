using System.Globalization;

namespace StashMatch.Knitting.Quantities;

/// <summary>What a piece of typed text is.</summary>
internal enum TypedKind
{
    /// <summary>Digits with their signs, to be read by <see cref="TypedNumber"/>.</summary>
    Number,

    /// <summary>Letters, with hyphens and apostrophes between them, in lower case.</summary>
    Word,

    /// <summary>Any other single character that is not a space.</summary>
    Mark,
}

/// <summary>One piece of typed text.</summary>
internal readonly record struct TypedPiece(TypedKind Kind, string Text)
{
    public bool Is(char mark) => Kind == TypedKind.Mark && Text[0] == mark;
}

/// <summary>Cuts a line of typed text into numbers, words and marks, in one pass whose time grows with the length only.</summary>
internal static class TypedText
{
    public static List<TypedPiece> Cut(string text)
    {
        var pieces = new List<TypedPiece>();
        var at = 0;
        while (at < text.Length)
        {
            var start = at;
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
            }
            else if (NumberStarts(text, at))
            {
                at = NumberEnd(text, at);
                pieces.Add(new(TypedKind.Number, text[start..at]));
            }
            else if (char.IsLetter(text[at]))
            {
                at = WordEnd(text, at);
                pieces.Add(new(TypedKind.Word, text[start..at].ToLower(CultureInfo.InvariantCulture)));
            }
            else
            {
                pieces.Add(new(TypedKind.Mark, text[at++].ToString()));
            }
        }

        return pieces;
    }

    // A sign begins a number only after a gap: "100g-400m" has a dash, "100 g -400 m" a minus; "merino,20" a comma, "1 oz .5" a point.
    private static bool NumberStarts(string text, int at) =>
        IsDigit(text, at)
        || ((TypedNumber.IsDecimalSign(text[at]) || TypedNumber.IsMinus(text[at])) && IsDigit(text, at + 1)
            && (at == 0 || char.IsWhiteSpace(text[at - 1]) || text[at - 1] == '/'));

    private static int NumberEnd(string text, int at)
    {
        do
        {
            at++;
        }
        while (IsDigit(text, at) || (at < text.Length && TypedNumber.IsDecimalSign(text[at]) && IsDigit(text, at - 1) && IsDigit(text, at + 1)));

        // "1 3/4" is one number.
        var over = Skip(text, at, char.IsWhiteSpace);
        var slash = Skip(text, over, char.IsAsciiDigit);
        var end = slash < text.Length && text[slash] == '/' ? Skip(text, slash + 1, char.IsAsciiDigit) : slash;
        return over > at && slash > over && end > slash + 1 ? end : at;
    }

    private static int WordEnd(string text, int at)
    {
        do
        {
            at++;
        }
        while (at < text.Length && (char.IsLetter(text[at]) || (text[at] is '-' or '\'' or '’' && at + 1 < text.Length && char.IsLetter(text[at + 1]))));
        return at;
    }

    private static bool IsDigit(string text, int at) => at < text.Length && (char.IsDigit(text[at]) || TypedNumber.IsFraction(text[at]));

    private static int Skip(string text, int at, Func<char, bool> these)
    {
        while (at < text.Length && these(text[at]))
        {
            at++;
        }

        return at;
    }
}
