using System.Diagnostics.CodeAnalysis;
using System.Text;

namespace StashMatch.Store;

/// <summary>A table's bytes as text: UTF-8 and UTF-16 with their marks, UTF-8 without, else Windows-1252.</summary>
internal static class TableText
{
    private static readonly UTF8Encoding Utf8 = new(false, throwOnInvalidBytes: true);
    private static readonly Encoding Windows = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    /// <summary>Reads the bytes.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="text">Its text, when the answer is true.</param>
    /// <param name="encoding">What it was written in.</param>
    /// <param name="message">What is wrong, otherwise, in plain words.</param>
    public static bool TryRead(ReadOnlySpan<byte> bytes, [NotNullWhen(true)] out string? text, out string encoding, [NotNullWhen(false)] out string? message)
    {
        (text, encoding, message) = (null, "UTF-8", null);
        try
        {
            if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            {
                text = Utf8.GetString(bytes[3..]);
                return true;
            }

            if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            {
                encoding = "UTF-16";
                text = new UnicodeEncoding(bigEndian: bytes[0] == 0xFE, byteOrderMark: false, throwOnInvalidBytes: true).GetString(bytes[2..]);
                return true;
            }

            // Every table begins with a letter: beside it, UTF-16 without a mark has a zero.
            if (bytes.Length >= 2 && bytes.Length % 2 == 0 && (bytes[0] == 0) != (bytes[1] == 0))
            {
                encoding = "UTF-16";
                text = new UnicodeEncoding(bigEndian: bytes[0] == 0, byteOrderMark: false, throwOnInvalidBytes: true).GetString(bytes);
                return true;
            }
        }
        catch (ArgumentException)
        {
            message = $"The file says it is {encoding}, but it has unreadable characters.";
            return false;
        }

        try
        {
            text = Utf8.GetString(bytes);
        }
        catch (ArgumentException)
        {
            (text, encoding) = (Windows.GetString(bytes), "Windows-1252");
        }

        return true;
    }
}
