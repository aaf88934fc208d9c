using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace StashMatch.Knitting.Quantities;

/// <summary>Numbers as people type them: 1,5 or 1.5 or ½ or 1 1/2 or full-width digits. One separator is the decimal sign, whichever it is; there is no grouping sign.</summary>
public static class TypedNumber
{
    private const decimal Most = 1_000_000_000;

    // Far too large already; a fraction on top of it must not run out of digits.
    private const decimal MostWhole = 10 * Most;

    private static readonly Dictionary<char, decimal> Fractions = new()
    {
        ['½'] = 0.5m,
        ['¼'] = 0.25m,
        ['¾'] = 0.75m,
        ['⅓'] = 1 / 3m,
        ['⅔'] = 2 / 3m,
        ['⅛'] = 0.125m,
        ['⅜'] = 0.375m,
        ['⅝'] = 0.625m,
        ['⅞'] = 0.875m,
    };

    /// <summary>Reads a number from 0 to 1,000,000,000.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="value">The number, when the answer is true.</param>
    /// <param name="message">What is wrong, otherwise: the end of a sentence that begins with the field's name.</param>
    public static bool TryRead(string? text, out decimal value, [NotNullWhen(false)] out string? message)
    {
        (value, message) = (0, null);
        var typed = Plain(text ?? "");
        if (typed.Length == 0)
        {
            message = "is empty";
        }
        else if (typed.Length > 30)
        {
            message = "is too long for a number";
        }
        else if (typed[0] == '-')
        {
            message = "must not be below 0";
        }
        else if (typed.Count(c => c is '.' or ',') > 1)
        {
            message = "has more than one decimal sign; type 1000.5, not 1.000,5";
        }
        else if (!TryMixed(typed, out value))
        {
            message = "must be a number, such as 34 or 34.5";
        }
        else if (value > Most)
        {
            message = "is too large";
        }

        value = message is null ? value : 0;
        return message is null;
    }

    /// <summary>Whether a character is a whole fraction, such as ½.</summary>
    internal static bool IsFraction(char c) => Fractions.ContainsKey(c);

    /// <summary>Whether a character may be a decimal sign.</summary>
    internal static bool IsDecimalSign(char c) => c is '.' or ',' or '．' or '，' or '٫';

    /// <summary>Whether a character may be a minus.</summary>
    internal static bool IsMinus(char c) => c is '-' or '\u2212' or '－' or '\u2013';

    private static bool TryMixed(string typed, out decimal value)
    {
        value = 0;
        if (Fractions.TryGetValue(typed[^1], out var fraction))
        {
            var whole = typed[..^1].TrimEnd();
            if (whole.Length > 0 && !TryWhole(whole, out value))
            {
                return false;
            }

            value = Math.Min(value, MostWhole) + fraction;
            return true;
        }

        if (typed.IndexOf('/', StringComparison.Ordinal) is var slash && slash > 0)
        {
            var space = typed.LastIndexOf(' ', slash);
            var wholes = 0m;
            return (space <= 0 || TryWhole(typed[..space].TrimEnd(), out wholes))
                && TryWhole(typed[(space + 1)..slash].Trim(), out var over)
                && TryWhole(typed[(slash + 1)..].Trim(), out var under)
                && under > 0
                && (value = Math.Min(wholes, MostWhole) + (over / under)) >= 0;
        }

        return TryDecimal(typed.Replace(',', '.'), out value);
    }

    private static bool TryWhole(string digits, out decimal value) =>
        decimal.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out value);

    private static bool TryDecimal(string digits, out decimal value) =>
        decimal.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);

    // Full-width and other digits become plain ones, odd spaces plain ones, odd minus signs a hyphen, a leading plus goes.
    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            plain.Append(c switch
            {
                '．' => '.',
                _ when IsDecimalSign(c) && c != '.' => ',',
                _ when IsMinus(c) => '-',
                '⁄' or '／' => '/',
                _ when char.IsDigit(c) && CharUnicodeInfo.GetDecimalDigitValue(c) is >= 0 and var digit => (char)('0' + digit),
                _ when char.IsWhiteSpace(c) => ' ',
                _ => c,
            });
        }

        var typed = plain.ToString().Trim();
        return typed.Length > 1 && typed[0] == '+' ? typed[1..].TrimStart() : typed;
    }
}
