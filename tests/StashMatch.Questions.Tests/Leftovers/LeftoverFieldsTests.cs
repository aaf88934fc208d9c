using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Questions.Tests.Leftovers;

public sealed class LeftoverFieldsTests
{
    private static readonly LeftoverDetails Full = new("Moss bank", new LabelRatio(4, MassUnit.Ounces, 205.5m, LengthUnit.Yards, RatioSource.Guessed))
    {
        Code = "Mb",
        Class = WeightClass.Light,
        Fibre = FibreBlend.TryParse("80% merino, 20% nylon", out var fibre, out _) ? fibre : FibreBlend.Unknown,
        Superwash = true,
        Make = YarnMake.Drape,
        Colour = YarnColour.FromRgb(0x5B, 0x7A, 0x3A),
        Care = Care.TryParse("hand wash, line", out var care, out _) ? care : null,
        Lot = "7",
        Bag = "Peg bag",
        KeptIn = "loft",
        KeptBackFor = "mittens",
        NotForHats = true,
        Crumb = true,
        Note = "=SUM(A1), é 🧶",
    };

    [Fact]
    public void Every_detail_is_written_and_read_back_the_same()
    {
        Assert.All(typeof(LeftoverDetails).GetProperties(), p => Assert.NotEqual(p.GetValue(new LeftoverDetails("", null)), p.GetValue(Full)));
        var columns = LeftoverFields.Say(Full);
        var said = LeftoverFields.OfColumns(c => LeftoverFields.Columns.Contains(c, StringComparer.Ordinal) ? LeftoverFields.Text(columns, c) : null);
        foreach (var read in new[] { Read(LeftoverFields.Say(Full)), Read(said) })
        {
            Assert.Equal(Texts(Full), Texts(read));
            Assert.Equal(Full with { Fibre = read.Fibre, Care = read.Care }, read);
        }
    }

    [Fact]
    public void A_change_touches_the_fields_it_names_and_nothing_clears_one()
    {
        var changed = LeftoverFields.Change(Full, new Reading(Said.Named(("lot", Said.Nothing), ("bag", Said.Exact("Tin")), ("ratioFrom", Said.Exact("measured"))), new FieldErrors()));
        Assert.Equal((null, "Tin", RatioSource.Measured, 205.5m, "loft"), (changed.Lot, changed.Bag, changed.Ratio!.Source, changed.Ratio.Length, changed.KeptIn));
        Assert.Equal(YarnMake.Singles, LeftoverFields.Change(Full, new Reading(Said.Named(("singles", Said.Exact("yes"))), new FieldErrors())).Make);
        Assert.Equal(YarnMake.Drape, LeftoverFields.Change(Full, new Reading(Said.Named(("lot", Said.Exact("8"))), new FieldErrors())).Make);
    }

    [Theory]
    [InlineData("name", "")]
    [InlineData("code", "XYZ")]
    [InlineData("label", "100 g")]
    [InlineData("weightClass", "8")]
    [InlineData("fibre", "120% wool")]
    [InlineData("make", "woven")]
    [InlineData("colour", "#12")]
    [InlineData("care", "boil")]
    [InlineData("crumb", "perhaps")]
    [InlineData("lot", "Mo\0ss")]
    public void What_cannot_be_read_is_named_and_nothing_else(string field, string typed)
    {
        var errors = new FieldErrors();
        Assert.Null(LeftoverFields.Read(new Reading(LeftoverFields.Say(Full).With(field, Said.Exact(typed)), errors)));
        Assert.Equal([field], errors.ByField.Keys);
    }

    [Fact]
    public void Every_text_has_its_longest()
    {
        foreach (var field in LeftoverFields.Fields.Where(f => f.Name is "name" or "lot" or "bag" or "keptIn" or "keptBackFor" or "note"))
        {
            LeftoverDetails? Of(int length) => LeftoverFields.Read(new Reading(LeftoverFields.Say(Full).With(field, Said.Exact(new string('x', length))), new FieldErrors()));
            Assert.NotNull(Of(field.Longest));
            Assert.Null(Of(field.Longest + 1));
        }
    }

    private static LeftoverDetails Read(Said said)
    {
        var errors = new FieldErrors();
        var read = LeftoverFields.Read(new Reading(said, errors));
        Assert.Empty(errors.ByField);
        return read!;
    }

    private static List<string> Texts(LeftoverDetails details) => [.. LeftoverFields.Columns.Select(c => LeftoverFields.Text(LeftoverFields.Say(details), c))];
}
