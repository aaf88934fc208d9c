using System.Text.Json;
using System.Text.Json.Nodes;
using StashMatch.Knitting.Hats;
using Xunit;

namespace StashMatch.Questions.Tests.Hats;

public sealed class HatTextTests
{
    public static TheoryData<string, string> WrongByMeasurements() => new()
    {
        { "hat.name", Measured($$""" "name":"{{new string('n', 81)}}" """) },
        { "hat.weightClass", Measured(""" "weightClass":8 """) },
        { "hat.weightClass", Measured(""" "weightClass":-1 """) },
        { "hat.weightClass", Measured(""" "weightClass":null """) },
        { "hat.construction", Measured(""" "construction":null """) },
        { "hat.construction", Measured(""" "construction":"Brim-Up-Round" """) },
        { "hat.gauge.stitchesPer10cm", Measured(""" "gauge":{"stitchesPer10cm":3.9,"rowsPer10cm":30} """) },
        { "hat.gauge.stitchesPer10cm", Measured(""" "gauge":{"stitchesPer10cm":80.1,"rowsPer10cm":30} """) },
        { "hat.gauge.rowsPer10cm", Measured(""" "gauge":{"stitchesPer10cm":22} """) },
        { "hat.gauge.rowsPer10cm", Measured(""" "gauge":{"stitchesPer10cm":22,"rowsPer10cm":1e308} """) },
        { "hat.brim.depthCm", Measured(""" "brim":{} """) },
        { "hat.brim.depthCm", Measured(""" "brim":{"depthCm":0} """) },
        { "hat.brim.depthCm", Measured(""" "brim":{"depthCm":1e-300} """) },
        { "hat.brim.depthCm", Measured(""" "brim":{"depthCm":30.5} """) },
        { "hat.brim.fit", Measured(""" "brim":{"depthCm":5,"fit":"loose"} """) },
        { "hat.brim.rib", Measured(""" "brim":{"depthCm":5,"rib":3} """) },
        { "hat.brim.bindOff", Measured(""" "brim":{"depthCm":5,"bindOff":"knotted"} """) },
        { "hat.braids.where", Measured(""" "braids":{"where":"everywhere"} """) },
        { "hat.braids.where", Measured(""" "braids":{"where":"beside-brim-too"} """) },
        { "hat.braids.where", Measured(""" "construction":"side-to-side","brim":{"depthCm":5},"braids":{"where":"beside-brim-too"} """) },
        { "hat.braids.strands", Measured(""" "braids":{"where":"none","strands":"string"} """) },
        { "hat.braids.strandCount", Measured(""" "braids":{"where":"between-stripes","strandCount":3} """) },
        { "hat.stripes", Measured(""" "stripes":{} """) },
        { "hat.stripes", Measured(""" "stripes":{"depthsCm":[3,4],"proportions":[1,2]} """) },
        { "hat.stripes", Measured(""" "stripeCounts":{"least":4,"most":6},"stripes":{"proportions":[1,2,3]} """) },
        { "hat.stripes.depthsCm", Measured(""" "stripes":{"depthsCm":[]} """) },
        { "hat.stripes.proportions[1]", Measured(""" "stripes":{"proportions":[1,0,3]} """) },
        { "hat.crown", Measured(""" "construction":"side-to-side","crown":{} """) },
        { "hat.crown.decreaseLines", Measured(""" "crown":{"decreaseLines":3} """) },
        { "hat.crown.decreaseLines", Measured(""" "crown":{"decreaseLines":17} """) },
        { "hat.crown.yarn", Measured(""" "crown":{"yarn":"other"} """) },
        { "hat.stripeCounts.least", Measured(""" "stripeCounts":{"least":0,"most":4} """) },
        { "hat.stripeCounts.most", Measured(""" "stripeCounts":{"least":6,"most":4} """) },
        { "hat.stripeCounts.most", Measured(""" "stripeCounts":{"least":6,"most":25} """) },
        { "hat.sizes", Measured(""" "sizes":[] """) },
        { "hat.sizes", Measured($$""" "sizes":[{{string.Join(',', Enumerable.Range(0, 41).Select(i => $$"""{"size":"{{i}}","headCm":52}"""))}}] """) },
        { "hat.sizes[0].size", Measured(""" "sizes":[{"size":" ","headCm":52}] """) },
        { "hat.sizes[0].size", Measured(""" "sizes":[{"size":"a size with a long name","headCm":52}] """) },
        { "hat.sizes[1].size", Measured(""" "sizes":[{"size":"C","headCm":52},{"size":"C","headCm":54}] """) },
        { "hat.sizes[0].headCm", Measured(""" "sizes":[{"size":"C"}] """) },
        { "hat.sizes[0].headCm", Measured(""" "sizes":[{"size":"C","headCm":29.9}] """) },
        { "hat.sizes[1].headCm", Measured(""" "sizes":[{"size":"B","headCm":50},{"size":"C","headCm":75.1}] """) },
        { "hat.sizes[0].heightCm", Measured(""" "sizes":[{"size":"C","circumferenceCm":46}] """) },
        { "hat.sizes[0].heightCm", Measured(""" "sizes":[{"size":"C","headCm":52,"heightCm":0}] """) },
        { "hat.sizes[0].heightCm", Measured(""" "sizes":[{"size":"C","headCm":52,"heightCm":201}] """) },
        { "hat.sizes[0].circumferenceCm", Measured(""" "sizes":[{"size":"C","circumferenceCm":-46,"heightCm":20}] """) },
        { "hat.sizes[0].circumferenceCm", Measured(""" "sizes":[{"size":"C","circumferenceCm":200.5,"heightCm":20}] """) },
        { "hat.sizes[0].stitches", Measured(""" "sizes":[{"size":"C","headCm":52,"stitches":-2}] """) },
        { "hat.usage.factor", Measured(""" "usage":{"factor":0.4} """) },
        { "hat.usage.factor", Measured(""" "usage":{"factor":2.1} """) },
        { "hat.usage.spreadPercent", Measured(""" "usage":{"factor":1.1,"spreadPercent":51} """) },
    };

    public static TheoryData<string, string> WrongByPrintedTable() => new()
    {
        { "hat.printed.unit", Printed("""{"size":"C","parts":[{"yarn":"A","length":3}]}""", unit: "null") },
        { "hat.printed.unit", Printed("""{"size":"C","parts":[{"yarn":"A","length":3}]}""", unit: "\"ft\"") },
        { "hat.printed.sizes", Printed("") },
        { "hat.printed.sizes[0].size", Printed("""{"parts":[{"yarn":"A","length":3}]}""") },
        { "hat.printed.sizes[1].size", Printed("""{"size":"C","parts":[{"yarn":"A","length":3}]},{"size":"C","parts":[{"yarn":"A","length":3}]}""") },
        { "hat.printed.sizes[0].headCm", Printed("""{"size":"C","headCm":20,"parts":[{"yarn":"A","length":3}]}""") },
        { "hat.printed.sizes[0].parts", Printed("""{"size":"C"}""") },
        { "hat.printed.sizes[0].parts", Parts("""{"part":"stripe 2","yarn":"A","length":3}""") },
        { "hat.printed.sizes[0].parts", Parts("""{"part":"stripe 1","yarn":"A","length":3},{"part":"stripe 3","yarn":"B","length":3}""") },
        { "hat.printed.sizes[0].parts", Parts("""{"part":"stripe 1","yarn":"A","length":3},{"part":"braid 1 strand a","yarn":"A","length":3}""") },
        { "hat.printed.sizes[0].parts", Parts("""{"part":"stripe 1","yarn":"A","length":3},{"yarn":"A","length":3}""") },
        { "hat.printed.sizes[0].parts[0].part", Parts("""{"part":"sleeve","yarn":"A","length":3}""") },
        { "hat.printed.sizes[0].parts[1].part", Parts("""{"part":"brim","yarn":"A","length":3},{"part":"brim","yarn":"B","length":3}""") },
        { "hat.printed.sizes[0].parts[1].part", Parts("""{"yarn":"A","length":3},{"yarn":"A","length":3}""") },
        { "hat.printed.sizes[0].parts[0].yarn", Parts("""{"part":"brim","length":3}""") },
        { "hat.printed.sizes[0].parts[0].yarn", Parts("""{"part":"brim","yarn":"a letter of many words","length":3}""") },
        { "hat.printed.sizes[0].parts[2].length", Parts("""{"yarn":"A","length":3},{"yarn":"B","length":3},{"yarn":"C"}""") },
        { "hat.printed.sizes[0].parts[0].length", Parts("""{"yarn":"A","length":0}""") },
        { "hat.printed.sizes[0].parts[0].length", Parts("""{"yarn":"A","length":1e-300}""") },
        { "hat.printed.sizes[0].parts[0].length", Parts("""{"yarn":"A","length":100001}""") },
    };

    [Theory]
    [MemberData(nameof(WrongByMeasurements))]
    [MemberData(nameof(WrongByPrintedTable))]
    public void What_cannot_be_read_is_named_and_nothing_else(string field, string json)
    {
        var errors = new FieldErrors();
        Assert.Null(Read(json, errors, "hat."));
        Assert.Equal([field], errors.ByField.Keys);
    }

    [Theory]
    [InlineData("NaN")]
    [InlineData("∞")]
    [InlineData("-∞")]
    public void A_number_that_is_none_is_named(string typed)
    {
        var (errors, odd) = (new FieldErrors(), Said.Typed(typed));
        using var json = JsonDocument.Parse(Measured(""" "brim":null """));
        var hat = SaidInJson.Read(json.RootElement, HatFields.All, errors)
            .With("gauge", Said.Named(("stitchesPer10cm", odd), ("rowsPer10cm", odd)))
            .With("brim", Said.Named(("depthCm", odd)));
        Assert.Null(HatText.Read(new Reading(hat, errors, "hat.")));
        Assert.Equal(["hat.brim.depthCm", "hat.gauge.rowsPer10cm", "hat.gauge.stitchesPer10cm"], errors.ByField.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Everything_wrong_is_named_at_once()
    {
        var errors = new FieldErrors();
        var json = Measured(""" "weightClass":9,"gauge":{},"brim":{"depthCm":5,"rib":7},"sizes":[{"headCm":5}] """);
        Assert.Null(Read(json, errors, ""));
        Assert.Equal(
            ["brim.rib", "gauge.rowsPer10cm", "gauge.stitchesPer10cm", "sizes[0].headCm", "sizes[0].size", "weightClass"],
            errors.ByField.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_hat_is_read_to_its_last_word()
    {
        var hat = Read("""
            {"name":"Bobbin","construction":"brim-up-round","gauge":{"stitchesPer10cm":22.5,"rowsPer10cm":30},"weightClass":3,
             "brim":{"depthCm":4.5,"folded":true,"fit":"easy","rib":4,"bindOff":"stretchy"},"braids":{"where":"beside-brim-too","strands":"scraps"},
             "crown":{"decreaseLines":9,"yarn":"own"},"stripeCounts":{"least":2,"most":5},
             "sizes":[{"size":"C","headCm":52},{"size":"wide","circumferenceCm":50,"heightCm":21.5,"stitches":112}],"usage":{"factor":1.2,"spreadPercent":5}}
            """);
        Assert.Equal(("Bobbin", Construction.BrimUpRound, 22.5m, 30m), (hat.Name, hat.Construction, hat.Gauge.StitchesPer10Cm, hat.Gauge.RowsPer10Cm));
        Assert.Equal((4.5m, true, BrimFit.Easy, 4, EdgeKind.Stretchy), (hat.Brim!.Depth.Value, hat.Brim.Folded, hat.Brim.Fit, hat.Brim.Rib, hat.Brim.BindOff));
        Assert.Equal(new Braids(BraidPlaces.BesideBrimToo, StrandSource.Scraps), hat.Braids);
        Assert.Equal((new Crown(9, CrownYarn.Own), new StripeCounts(2, 5)), (hat.Crown, hat.StripeCounts));
        Assert.Equal((1.2, 0.05), (hat.Usage.Factor, hat.Usage.Spread));
        Assert.Equal((46.8m, 20.8m, 52m, null), (hat.Sizes[0].Circumference.Value, hat.Sizes[0].Height.Value, hat.Sizes[0].Head?.Value, hat.Sizes[0].Stitches));
        Assert.Equal((50m, 21.5m, null, 112), (hat.Sizes[1].Circumference.Value, hat.Sizes[1].Height.Value, hat.Sizes[1].Head?.Value, hat.Sizes[1].Stitches));
    }

    [Fact]
    public void What_is_left_out_is_filled_in()
    {
        var hat = Read("""{"construction":"side-to-side","gauge":{"stitchesPer10cm":4,"rowsPer10cm":80},"weightClass":0}""");
        Assert.Null(hat.Brim);
        Assert.Equal((BraidPlaces.None, Usage.Uncalibrated), (hat.Braids.Where, hat.Usage));
        Assert.Equal(["A", "B", "C", "D", "E", "F", "G", "H"], hat.SizeNames);
        Usage Said(string usage) => Read("""{"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40},"weightClass":1,"usage":""" + usage + "}").Usage;
        Assert.Equal(new Usage(1.2, 0.12), Said("""{"factor":1.2}"""));
        Assert.Equal(new Usage(1.10, 0.12), Said("{}"));
        Assert.Equal(new Usage(1.10, 0.05, Calibrated: true), Said("""{"spreadPercent":5}"""));
    }

    private static HatDesign Read(string json)
    {
        var errors = new FieldErrors();
        var hat = Read(json, errors, "hat.");
        Assert.Empty(errors.ByField);
        return Assert.IsType<HatDesign>(hat);
    }

    private static Hat? Read(string json, FieldErrors errors, string at)
    {
        using var read = JsonDocument.Parse(json);
        var hat = HatText.Read(new Reading(SaidInJson.Read(read.RootElement, HatFields.All, errors, at), errors, at));
        return errors.Any ? null : hat;
    }

    // What is named here stands in the place of what a sound hat says.
    private static string Measured(string fields)
    {
        var hat = JsonNode.Parse("""{"name":"x","weightClass":3,"construction":"brim-up-round","gauge":{"stitchesPer10cm":22,"rowsPer10cm":30},"sizes":[{"size":"C","headCm":52}]}""")!.AsObject();
        foreach (var (name, value) in JsonNode.Parse("{" + fields + "}")!.AsObject())
        {
            hat[name] = value?.DeepClone();
        }

        return hat.ToJsonString();
    }

    private static string Printed(string sizes, string unit = "\"m\"") =>
        "{\"name\":\"x\",\"weightClass\":3,\"printed\":{\"unit\":" + unit + ",\"sizes\":[" + sizes + "]}}";

    private static string Parts(string parts) => Printed("{\"size\":\"C\",\"parts\":[" + parts + "]}");
}
