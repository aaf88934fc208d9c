using System.Globalization;
using System.Text;
using CsCheck;
using Xunit;

namespace StashMatch.Store.Tests.Tables;

/// <summary>Broken files: nothing falls over, and no row is taken for what it does not say.</summary>
public sealed class TableFuzzTests
{
    private const int Files = 20_000;

    private static readonly string[] Sound =
    [
        "id,name,code,grams,tareGrams,scaleStepGrams,labelGrams,labelOunces,labelMetres,labelYards,ratioFrom,weightClass,fibre,superwash,make,colour,care,lot,bag,keptIn,keptBackFor,notForHats,crumb,knittedUp,note\r\n"
            + "moss,Moss,Mo,20,4,0.1,100,,400,,printed,1,\"80% merino, 20% nylon\",yes,plied,#5B7A3A,\"30 C mild, flat\",7,Peg bag,jar,,no,no,no,\"soft, \"\"very\"\"\r\nsoft\"\r\n"
            + "oat,'=Oat,,15.25,,,,4,,205.5,measured,,,,,,,,,,socks,,,,\r\n",
        "name;grams;label\nRost;1,5;50 g / 210 m\nBlau;22;4 oz / 205 yd\n",
        "grams\tname\tnote\n3½\tTeal\ta b\n7\tPlum\t\n",
    ];

    private static readonly string[] Bits = [",", ";", "\t", "\"", "\"\"", "\n", "\r\n", "\r", "'", "=", "-", ".", "1", "0", "é", "\0", "½", " ", "e9", "½½", "\uFEFF", "no", "100"];

    [Fact]
    public void Twenty_thousand_broken_files_are_read_as_they_stand_or_not_at_all()
    {
        var (rows, bad, refused) = (0, 0, 0);
        var breaks = Gen.Select(Gen.Int[0, Sound.Length - 1], Gen.Select(Gen.Int[0, 3], Gen.Int[0, 100_000], Gen.Int[0, 12], Gen.Int[0, Bits.Length - 1].Select(i => Bits[i])).Array[1, 5], Gen.Int[0, 5]);
        breaks.Sample(
            file =>
            {
                var text = file.Item2.Aggregate(Sound[file.Item1], Break);
                var preview = TableReader.Read(Encode(text, file.Item3, out var encoded));
                if (preview.Refused is not null)
                {
                    Interlocked.Increment(ref refused);
                    return;
                }

                Interlocked.Add(ref rows, preview.Rows.Count);
                Interlocked.Add(ref bad, preview.Bad.Count);
                Compare(preview, encoded);
            },
            iter: Files);
        Assert.InRange(rows, Files / 4, Files * 3);
        Assert.InRange(bad, Files / 10, Files * 3);
        Assert.InRange(refused, 50, Files);
    }

    private static string Break(string text, (int How, int At, int Length, string Bit) b)
    {
        var at = b.At % (text.Length + 1);
        var end = Math.Min(text.Length, at + b.Length);
        return b.How switch
        {
            0 => text[..at] + text[end..],
            1 => text[..at] + b.Bit + text[at..],
            2 => text[..at] + text[at..end] + text[at..],
            _ => text[..at] + b.Bit + text[end..],
        };
    }

    // A file may also be written in one encoding and cut in the middle of a character.
    private static byte[] Encode(string text, int how, out string? read)
    {
        read = text;
        switch (how)
        {
            case 0:
                return [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text)];
            case 1:
                return [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)];
            case 2 when text.Contains('é', StringComparison.Ordinal) && !text.Contains('\uFEFF', StringComparison.Ordinal):
                return CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text);
            case 3:
                read = null;
                return [.. Encoding.UTF8.GetBytes(text).Select((b, i) => i == text.Length / 2 ? (byte)(b ^ 0x80) : b)];
            default:
                return Encoding.UTF8.GetBytes(text);
        }
    }

    // An independent reading: RFC 4180 by hand, and the simplest reading of each cell.
    private static void Compare(TablePreview preview, string? text)
    {
        if (text is null)
        {
            return;
        }

        var first = text.StartsWith('\uFEFF') ? text[1..] : text;
        var records = Cut(first, preview.Separator);
        var heading = records[0].Select(h => string.Concat(h.Where(char.IsLetterOrDigit)).ToLowerInvariant()).ToList();
        foreach (var row in preview.Rows)
        {
            var cells = records[row.Number - 1];
            Assert.Equal(heading.Count, cells.Count);
            string Cell(string column) => heading.IndexOf(column.ToLowerInvariant()) is >= 0 and var i ? cells[i] : "";
            Assert.Equal(Plain(Cell("name")).Trim(), row.Leftover.Name.Trim());
            Assert.Equal(Simple(Cell("grams")), row.Leftover.Weighing.Gross.Value);
            Assert.Equal(Cell("tareGrams").Trim().Length == 0 ? 0 : Simple(Cell("tareGrams")), row.Leftover.Weighing.Tare.Value);
            Assert.Equal(Cell("scaleStepGrams").Trim().Length == 0 ? 1 : Simple(Cell("scaleStepGrams")), row.Leftover.Weighing.ScaleStep.Value);
            Assert.Equal(Plain(Cell("note")), row.Leftover.Note ?? "");
            Assert.Equal(Plain(Cell("lot")), row.Leftover.Lot ?? "");
            Assert.Equal(Plain(Cell("id")), row.Leftover.Id ?? "");
            if (Cell("labelMetres").Trim().Length > 0)
            {
                Assert.Equal(Simple(Cell("labelMetres")), Math.Round(row.Leftover.Ratio!.Length, 3, MidpointRounding.AwayFromZero));
            }
        }

        Assert.Equal(
            records.Select((r, i) => (r, Number: i + 1)).Skip(1).Where(r => r.r.Exists(c => c.Length > 0)).Select(r => r.Number).Where(n => !Ends(preview, n)),
            preview.Rows.Select(r => r.Number).Concat(preview.Bad.Select(b => b.Number)).Order().Where(n => !Ends(preview, n)));
    }

    // Where a quotation mark is out of place the two readings may cut differently from there on; such a row must then be a bad one.
    private static bool Ends(TablePreview preview, int number) => preview.Bad.Any(b => b.Number <= number && b.Reasons[0].Contains("quotation mark", StringComparison.Ordinal));

    private static string Plain(string cell) =>
        cell.StartsWith('\'') && cell.TrimStart('\'', ' ') is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..] ? cell[1..] : cell;

    private static decimal Simple(string cell)
    {
        var typed = cell.Trim().TrimStart('+').Trim().Replace(',', '.');
        if (typed.Split('/') is [var above, var below])
        {
            // "3/4", "1 3/4".
            var parts = above.Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return Math.Round((parts.Length > 1 ? Whole(parts[0]) : 0) + (Whole(parts[^1]) / Whole(below.Trim())), 3, MidpointRounding.AwayFromZero);
        }

        var half = typed.EndsWith('½');
        var number = half ? typed[..^1].Trim() : typed;
        var value = number.Length == 0 && half ? 0 : decimal.Parse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return Math.Round(half ? value + 0.5m : value, 3, MidpointRounding.AwayFromZero);
    }

    private static decimal Whole(string digits) => decimal.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    private static List<List<string>> Cut(string text, char separator)
    {
        var (records, record, cell, quoted) = (new List<List<string>>(), new List<string>(), new StringBuilder(), false);
        var fresh = true;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted)
            {
                if (c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append(text[++i]);
                }
                else if (c == '"')
                {
                    quoted = false;
                }
                else
                {
                    cell.Append(c);
                }
            }
            else if (c == '"' && cell.Length == 0 && fresh)
            {
                (quoted, fresh) = (true, false);
            }
            else if (c == separator)
            {
                record.Add(cell.ToString());
                cell.Clear();
                fresh = true;
            }
            else if (c is '\r' or '\n')
            {
                i += c == '\r' && i + 1 < text.Length && text[i + 1] == '\n' ? 1 : 0;
                record.Add(cell.ToString());
                cell.Clear();
                records.Add(record);
                (record, fresh) = ([], true);
            }
            else
            {
                cell.Append(c);
                fresh = false;
            }
        }

        if (cell.Length > 0 || record.Count > 0 || !fresh)
        {
            record.Add(cell.ToString());
            records.Add(record);
        }

        return records;
    }
}
