using System.Text;
using CsCheck;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Store.Tests.Tables;

public sealed class LeftoverTableTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void What_is_written_reads_back_the_same_for_two_thousand_bags() => RandomBags.Leftover.Array[1, 8].Sample(
        bag =>
        {
            var before = Listed(bag);
            var table = LeftoverTable.Write(before, bom: false);
            var read = TableReader.Read(table);
            Assert.True(read is { Refused: null, Bad: [], NotRead: [] }, $"{read.Refused} {string.Join(' ', read.Bad.SelectMany(b => b.Reasons))}\n{Encoding.UTF8.GetString(table)}");
            Assert.Equal(before, Listed(read.Rows.Select(r => r.Leftover)));
        },
        iter: 2_000);

    [Fact]
    public async Task What_is_written_reads_back_the_same_through_two_stores()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using var back = await Shelf.ReadyAsync();
        foreach (var bag in RandomBags.Leftover.Array[1, 8].Array[60].Single())
        {
            await shelf.Everything.ClearAsync(Stop);
            await back.Everything.ClearAsync(Stop);
            await shelf.Table.KeepAsync(new TablePreview { Rows = [.. bag.Select((l, i) => new TableRow(i, l))] }, Stop);
            var table = await shelf.Table.WriteAsync(cancel: Stop);
            await back.Table.KeepAsync(await back.Table.PreviewAsync(table, Stop), Stop);
            Assert.Equal((await shelf.Leftovers.ListAsync(Stop)).Select(l => l with { WeighedAt = default, Version = default }), (await back.Leftovers.ListAsync(Stop)).Select(l => l with { WeighedAt = default, Version = default }));
            Assert.Equal(table, await back.Table.WriteAsync(cancel: Stop));
        }
    }

    [Fact]
    public async Task A_look_at_a_table_keeps_nothing_and_names_good_bad_and_known_rows()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        var preview = await ReadAsync(shelf, "id,name,grams,label,shop\nmoss,Moss,5,100 g / 400 m,a\noat,Oat,\"15,2\",50 g / 210 m,b\n,Rust,1.2.3,50 g / 210 m,c\n,Teal,7,50 g,d\noat,Oat,3,,e\n,Plum,7\n");
        Assert.Equal([(2, "Moss", true), (3, "Oat", false)], preview.Rows.Select(r => (r.Number, r.Leftover.Name, r.IsKnown)));
        Assert.Equal(15.2m, preview.Rows[1].Leftover.Weighing.Gross.Value);
        Assert.Equal([4, 5, 6, 7], preview.Bad.Select(b => b.Number));
        Assert.Equal("grams has more than one decimal sign; type 1000.5, not 1.000,5", Assert.Single(preview.Bad[0].Reasons));
        Assert.StartsWith("label cannot be read", Assert.Single(preview.Bad[1].Reasons), StringComparison.Ordinal);
        Assert.Equal("id oat is in row 3 already", Assert.Single(preview.Bad[2].Reasons));
        Assert.StartsWith("has 3 cells, but the heading has 5", Assert.Single(preview.Bad[3].Reasons), StringComparison.Ordinal);
        Assert.Equal(["shop"], preview.NotRead);
        Assert.Single(await shelf.Leftovers.ListAsync(Stop));
        Assert.Equal(new TableKept(1, 1), await shelf.Table.KeepAsync(preview, Stop));
        Assert.Equal(new TableKept(0, 2), await shelf.Table.KeepAsync(preview, Stop));
        Assert.Equal(20m, (await shelf.Leftovers.FindAsync("moss", Stop))?.Left.Value);
    }

    [Theory]
    [InlineData("name,grams,labelGrams,labelMetres\r\n\"Ré, 1\",\"1,5\",50,210\r\n")]
    [InlineData("Name;Grams;label grams;label metres\nRé, 1;1,5;50;210\n")]
    [InlineData("NAME\tGRAMS\tLABEL_GRAMS\tLABEL_METERS\nRé, 1\t1.5\t50\t210")]
    [InlineData("sep=;\r\nname;grams;label\r\nRé, 1;1,5;50 g / 210 m\r\n")]
    public async Task Any_usual_sign_between_cells_and_any_usual_encoding_is_read(string text)
    {
        await using var shelf = await Shelf.ReadyAsync();
        var windows = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
        foreach (var bytes in new[]
        {
            Encoding.UTF8.GetBytes(text), [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text)], [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)],
            [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(text)], Encoding.Unicode.GetBytes(text), windows.GetBytes(text),
        })
        {
            var preview = await shelf.Table.PreviewAsync(bytes, Stop);
            Assert.True(preview is { Refused: null, Bad: [] }, preview.Refused ?? string.Join(' ', preview.Bad.SelectMany(b => b.Reasons)));
            var leftover = Assert.Single(preview.Rows).Leftover;
            Assert.Equal(("Ré, 1", 1.5m, new LabelRatio(50, MassUnit.Grams, 210, LengthUnit.Metres, RatioSource.Printed)), (leftover.Name, leftover.Weighing.Gross.Value, leftover.Ratio));
        }
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("a,b\n1,2\n", "must name the columns")]
    [InlineData("name,grams,Grams\nMoss,1,2\n", "grams is there twice")]
    [InlineData("na\"me,grams\nMoss,1\n", "a quotation mark is missing")]
    [InlineData("sep=|\nname|grams\nMoss|1\n", "Put a comma")]
    public async Task A_file_nothing_can_be_read_from_is_refused_in_a_sentence(string text, string says)
    {
        await using var shelf = await Shelf.ReadyAsync();
        Assert.Contains(says, (await ReadAsync(shelf, text)).Refused, StringComparison.Ordinal);
        Assert.Contains("unreadable characters", (await shelf.Table.PreviewAsync(new byte[] { 0xEF, 0xBB, 0xBF, 0xFF }, Stop)).Refused, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"Moss,20\nOat,3\n", 2, "never ends")]
    [InlineData("Mo\"ss,20\nOat,3\n", 2, "in the middle of a cell")]
    [InlineData("\"Moss\"x,20\nOat,3\n", 2, "after a closing quotation mark")]
    [InlineData("\nMoss,\n", 3, "grams is missing")]
    [InlineData("\"Mo\nss\",1\nOat,-3\n", 3, "grams must not be below 0")]
    public async Task A_row_that_cannot_be_read_is_named_by_its_number_and_the_reason(string rows, int number, string says)
    {
        await using var shelf = await Shelf.ReadyAsync();
        var bad = Assert.Single((await ReadAsync(shelf, "name,grams\n" + rows)).Bad);
        Assert.Equal(number, bad.Number);
        Assert.Contains(says, Assert.Single(bad.Reasons), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_text_a_spreadsheet_would_take_for_a_formula_goes_out_with_an_apostrophe_and_numbers_do_not()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss("=HYPERLINK(1)") with { Note = "-soft", Lot = "'=7", Bag = "plain" }, cancel: Stop);
        var table = Encoding.UTF8.GetString(await shelf.Table.WriteAsync(cancel: Stop));
        Assert.Contains("'=HYPERLINK(1)", table, StringComparison.Ordinal);
        Assert.Contains("'-soft", table, StringComparison.Ordinal);
        Assert.Contains("''=7", table, StringComparison.Ordinal);
        Assert.Contains(",plain,", table, StringComparison.Ordinal);
        Assert.Contains(",20,0,0.1,100,,400,,", table, StringComparison.Ordinal);
        Assert.Equal(0xEF, (await shelf.Table.WriteAsync(bom: true, Stop))[0]);
    }

    [Fact]
    public async Task A_table_holds_what_is_left_and_takes_ten_thousand_rows()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await shelf.Leftovers.UseAsync(id, Grams.From(6), null, Stop);
        Assert.Contains("moss,Moss,Mo,14,0,0.1,", Encoding.UTF8.GetString(await shelf.Table.WriteAsync(cancel: Stop)), StringComparison.Ordinal);
        var many = new StringBuilder("id,name,grams\n");
        for (var i = 0; i < 10_000; i++)
        {
            many.Append(FormattableString.Invariant($"ball-{i},Ball {i},{(i % 90) + 1}\n"));
        }

        var preview = await ReadAsync(shelf, many.ToString());
        Assert.Equal(10_000, preview.Rows.Count);
        Assert.Equal(new TableKept(1_000, 0), await shelf.Table.KeepAsync(preview with { Rows = [.. preview.Rows.Take(1_000)] }, Stop));
        Assert.Equal(["ball-0", "ball-1"], (await shelf.Leftovers.ListAsync(Stop)).Take(2).Select(l => l.Id));
        Assert.Contains("over 10000 rows", (await ReadAsync(shelf, many.Append("x,y,1\n").ToString())).Refused, StringComparison.Ordinal);
    }

    private static Task<TablePreview> ReadAsync(Shelf shelf, string text) => shelf.Table.PreviewAsync(Encoding.UTF8.GetBytes(text), Stop);

    private static List<LoggedLeftover> Listed(IEnumerable<NewLeftover> bag)
    {
        var tags = new Tags();
        return [.. bag.Select(l => l.ToRow(tags, default)).Select(r => LoggedLeftover.Of(r, new Ledger([.. r.Entries]), 0))];
    }
}
