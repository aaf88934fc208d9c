using System.Text;
using System.Text.Json;
using StashMatch.Knitting.Hats;
using Xunit;

namespace StashMatch.Store.Tests.Kept;

/// <summary>Files of every released layout, opened by the program of today. All in them is invented.</summary>
public sealed class KeptFormatTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("practice-hat")]
    [InlineData("side-to-side-sample")]
    [InlineData("brim-up-sample")]
    public void A_plan_of_before_is_read_and_brought_up_to_the_layout_of_today(string hat)
    {
        var before = PlannedQuestion.Read(Text($"plan-1-{hat}.json"));
        Assert.NotNull(before);
        Assert.Equal(hat, before.Asked[MatchQuestion.Hat].Words);
        Assert.Equal(Text($"plan-2-{hat}.json"), before.Write());
        Assert.Equal(before.Write(), PlannedQuestion.Read(before.Write())!.Write());
    }

    [Fact]
    public void What_a_plan_of_before_asked_in_its_address_is_asked_by_todays_names()
    {
        var plan = PlannedQuestion.Read(Text("plan-1-side-to-side-sample.json"))!;
        Assert.Equal(
            [
                ("hat", "side-to-side-sample"), ("size", "C"), ("stripes", "4"), ("arrangement", "as-it-falls"), ("allowancePercent", "12,5"), ("rows", "30,31,31,31"), ("inTurn", "3"),
                ("colourOrder", "gradient"), ("heldTogether", "teal~oat"), ("joined", "moss~fern"), ("leftovers", "moss"), ("leftovers", "oat"), ("locks", "brim~oat"), ("never", "stripe 2~plum"),
            ],
            SaidInAddress.Write(plan.Asked, MatchQuestion.Fields));
        Assert.Equal(12.5m, plan.AllowancePercent);
    }

    [Theory]
    [InlineData("plan-1-practice-hat.json")]
    [InlineData("plan-2-practice-hat.json")]
    public void The_hat_of_a_plan_keeps_its_lengths(string file)
    {
        // 26.5 yd and 3.3 yd of the printed table are 24.2316 m and 3.01752 m.
        var hat = PlannedQuestion.Read(Text(file))!.Hat;
        Assert.Equal(("D", 4, 24.2316, "M"), (hat.Size, hat.Stripes, hat.Parts[0].BareMetres, hat.Parts[0].Yarn));
        Assert.Equal(("braid 1 strand a", PartKind.Strand, 'a', 3.01752), (hat.Parts[1].Name, hat.Parts[1].Kind, hat.Parts[1].Strand, hat.Parts[1].BareMetres));
        Assert.Null(hat.Plan);
    }

    [Theory]
    [InlineData("plan-1-side-to-side-sample.json")]
    [InlineData("plan-2-side-to-side-sample.json")]
    public void The_hat_of_a_plan_keeps_its_rows(string file)
    {
        var plan = PlannedQuestion.Read(Text(file))!.Hat.Plan!;
        Assert.Equal((Construction.SideToSide, 28m, 40m, true), (plan.Construction, plan.Gauge.StitchesPer10Cm, plan.Gauge.RowsPer10Cm, plan.BrimFolded));
        Assert.Equal(plan.Sections.Where(s => s.Kind is not SectionKind.Brim).Sum(s => s.Rows), plan.BodyRows);
        Assert.Contains(plan.Sections, s => s.Runs.Any(r => r.Pattern == StitchPattern.TubularEdge));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("\"text\"")]
    [InlineData("""{"version":3,"asked":{},"allowancePercent":10,"hat":{}}""")]
    [InlineData("""{"address":"/elsewhere?hat=x","allowancePercent":10,"hat":{}}""")]
    public void What_is_no_question_of_a_plan_is_none(string? text) => Assert.Null(PlannedQuestion.Read(text));

    [Theory]
    [InlineData("hat-0.json")]
    [InlineData("hat-1.json")]
    public void A_hat_is_read_to_its_last_word(string file)
    {
        var hat = (HatDesign)HatText.Read(new Reading(KeptHat.Read(Text(file)), new FieldErrors()))!;
        Assert.Equal(("Bobbin", 22.5m, 4.5m, EdgeKind.Stretchy, 9, 5), (hat.Name, hat.Gauge.StitchesPer10Cm, hat.Brim!.Depth.Value, hat.Brim.BindOff, hat.Crown.DecreaseLines, hat.StripeCounts!.Most));
        Assert.Equal((112, 1.2, BraidPlaces.BesideBrimToo), (hat.Sizes[1].Stitches, hat.Usage.Factor, hat.Braids.Where));
        Assert.Equal(Text("hat-1.json"), KeptHat.Write(KeptHat.Read(Text(file))));
    }

    [Theory]
    [InlineData("kit-0.json")]
    [InlineData("kit-1.json")]
    public void A_kit_is_read_to_its_last_word(string file)
    {
        var kit = KitText.Read(new Reading(KeptKit.Read(Text(file)), new FieldErrors()))!;
        Assert.Equal(("Hedge", 193.5m), (kit.Name, kit.Total.Value));
        Assert.Equal(("Mini", 7, "20 g / 80 m", "#E2D3B2"), (kit.Skeins[1].Name, kit.Skeins[1].Count, kit.Skeins[1].Label.ToString(), kit.Skeins[0].Colour?.Hex));
        Assert.Equal(Text("kit-1.json"), KeptKit.Write(KeptKit.Read(Text(file))));
    }

    [Fact]
    public async Task Everything_of_before_is_read_and_its_plan_opened()
    {
        await using var shelf = await Shelf.ReadyAsync();
        Assert.Empty((await shelf.Everything.ReadAsync(Encoding.UTF8.GetBytes(Text("everything-1.json")), Stop)).ByField);
        Assert.Equal(["moss", "oat"], (await shelf.Leftovers.ListAsync(Stop)).Select(l => l.Id).Order(StringComparer.Ordinal));
        Assert.Equal(("socks", "7", 18.5m), await shelf.Leftovers.FindAsync("moss", Stop) is { } moss ? (moss.KeptBackFor, moss.Lot, moss.Left.Value) : default);
        Assert.Equal("Mine", Assert.Single(await shelf.Hats.ListAsync(Stop), h => !h.IsSample).Hat.Name);
        Assert.Equal("Hedge", Assert.Single(await shelf.Kits.ListAsync(Stop)).Name);
        var plan = (await shelf.Plans.ListAsync(Stop)).Single(p => p.Name == "Winter hat");
        Assert.Equal("D", PlannedQuestion.Read(plan.Question)!.Hat.Size);
    }

    [Fact]
    public async Task A_table_of_before_is_read_row_by_row()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var preview = await shelf.Table.PreviewAsync(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Kept", "leftovers-1.csv")), Stop);
        Assert.Equal((0, 2, 0), (preview.Bad.Count, preview.Rows.Count, preview.NotRead.Count));
        Assert.Equal(("Oat", "4 oz / 205.1235 yd", "socks"), (preview.Rows[0].Leftover.Name, preview.Rows[0].Leftover.Ratio!.ToString(), preview.Rows[1].Leftover.KeptBackFor));
        await shelf.Table.KeepAsync(preview, Stop);
        Assert.Equal(Text("leftovers-1.csv"), Encoding.UTF8.GetString(await shelf.Table.WriteAsync(false, Stop)).TrimEnd('\n'));
    }

    private static string Text(string file) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Kept", file)).TrimEnd('\n');
}
