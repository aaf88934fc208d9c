using StashMatch.Knitting.Tests;
using StashMatch.Store;
using StashMatch.Web.Pages.TesterResults;
using Xunit;

namespace StashMatch.Web.Tests.Pages.TesterResults;

public sealed class SheetCsvTests
{
    [Fact]
    public void A_sheet_sent_out_and_filled_in_comes_back()
    {
        var sheet = Sheet.Of("practice-hat", Samples.Practice, "C", "", new FieldErrors())!;
        Assert.Equal(["M", "S1", "S2", "S3", "S4"], sheet.Pieces.Select(p => p.Name));
        var rows = SheetCsv.Write(sheet).ReplaceLineEndings("\n").TrimEnd().Split('\n');
        Assert.Equal(6, rows.Length);
        rows[1] = "practice hat,C,4,Tess,1 g / 2.5 yd,\"0,1\",22,30,21.5,30,0,no,wound tightly,M,30,18.4";
        rows[2] = rows[2].Replace("S1,,", "S1,10.0,3.9", StringComparison.Ordinal);
        var read = SheetCsv.Read(string.Join("\r\n", rows));
        Assert.Empty(read.Problems);
        var one = Assert.Single(read.Sheets);
        Assert.Equal(("Tess", "C", 4, "1 g / 2.5 yd", 0.1m, 21.5m, "wound tightly"), (one.Tester, one.Size, one.Stripes, one.Label, one.ScaleStepGrams, one.Stitches, one.Changes));
        Assert.Equal([("M", 30m, 18.4m), ("S1", 10m, 3.9m)], one.Parts!.Select(p => (p!.Part, p.BeforeGrams!.Value, p.AfterGrams!.Value)));
        var result = TesterReader.Read(one, Samples.Practice, new FieldErrors())!;
        Assert.Equal(6.1m, result.Parts[1].Used.Value);
    }

    [Fact]
    public void Rows_that_cannot_be_read_are_named_and_the_others_kept()
    {
        const string Head = "hat;size;stripes;tester;label;scale_step_g;extra_rounds;other_yarn;part;before_g;after_g\n";
        var read = SheetCsv.Read(Head + "x;C;4;Ann;1 g / 2.5 yd;0,1;+2;yes;S1;ten;4\n;;;;;;;;S2;10;4\nx;C;4;Bea;1 g / 2.5 yd;0,1;;;S1;10;4\n;;;;;;;;S2;;\n");
        Assert.Equal(["Row 2: before_g must be a number, such as 34 or 34.5."], read.Problems);
        Assert.Equal([("Ann", 2, true), ("Bea", 0, false)], read.Sheets.Select(s => (s.Tester, s.ExtraRounds!.Value, s.OtherYarn!.Value)));
        Assert.Equal(["S2"], read.Sheets[0].Parts!.Select(p => p!.Part));
    }

    [Fact]
    public void A_sheet_of_another_hat_is_refused_and_named_and_those_of_this_hat_are_read()
    {
        const string Text = "hat,size,tester,label,part,before_g,after_g\nbobble hat,C,Ann,1 g / 2.5 yd,S1,10,4\n,,,,S2,10,4\n"
            + "Practice Hat,C,Bea,1 g / 2.5 yd,S1,10,4\n,C,Cem,1 g / 2.5 yd,S1,10,4\n";
        var read = SheetCsv.Read(Text, "practice hat");
        Assert.Equal(["Bea", "Cem"], read.Sheets.Select(s => s.Tester));
        Assert.Equal(2, read.Problems.Count);
        Assert.StartsWith("Row 2: this sheet is of “bobble hat”, not of “practice hat”", read.Problems[0], StringComparison.Ordinal);
        Assert.StartsWith("Row 3: this sheet is of “bobble hat”", read.Problems[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "The file is empty")]
    [InlineData("name,grams\na,1\n", "does not name the column tester")]
    [InlineData("tester,part,before_g,after_g\nAnn,S1,,\n", "No part in the file has been weighed")]
    [InlineData("tester,part,before_g,after_g,extra_rounds\nAnn,S1,10,4,many\n", "Row 2: extra_rounds must be a whole number")]
    public void A_file_that_is_no_sheet_says_what_it_lacks(string text, string says) =>
        Assert.Contains(SheetCsv.Read(text).Problems, p => p.Contains(says, StringComparison.Ordinal));

    [Fact]
    public void Text_a_spreadsheet_would_run_is_kept_as_text_on_the_way_out_and_restored_on_the_way_in()
    {
        var hat = Samples.Practice with { Name = "=1+1" };
        var text = SheetCsv.Write(Sheet.Of("x", hat, "C", "", new FieldErrors())!);
        Assert.DoesNotContain("\n=1", text, StringComparison.Ordinal);
        Assert.Contains("'=1+1", text, StringComparison.Ordinal);
        var read = SheetCsv.Read("tester,size,label,part,before_g,after_g\n'=Ann,C,1 g / 2.5 yd,S1,10,4\n");
        Assert.Equal("=Ann", Assert.Single(read.Sheets).Tester);
    }
}
