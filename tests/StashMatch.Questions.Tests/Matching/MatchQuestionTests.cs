using System.Text.Json;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Tests;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Questions.Tests.Matching;

public sealed class MatchQuestionTests
{
    private static readonly IReadOnlyList<Leftover> Bag = [Samples.OfMetres("moss", 40), Samples.OfMetres("plum", 30), Samples.OfMetres("oat", 90), Samples.OfMetres("fern", 20)];

    [Fact]
    public void An_address_and_a_body_that_say_the_same_ask_the_same()
    {
        var typed = Read(MatchQuestion.InAddress(
        [
            ("size", "C"), ("stripes", "4"), ("arrangement", "as-it-falls"), ("allowance", "12,5"), ("nextDoor", "blend"), ("brim", "single"), ("brimDepth", "4"), ("bindOff", "tubular"),
            ("inTurn", "2"), ("colours", "gradient"), ("join", "moss~fern"), ("apart", "stripe 2"), ("back", "plum"), ("keep", "brim~oat"), ("never", "stripe 1~oat"),
        ]));
        var sent = Read(Json("""
            {"size":"C","stripes":4,"arrangement":"as-it-falls","allowancePercent":12.5,"nextDoor":"blend","brim":"single","brimDepthCm":4,"bindOff":"tubular","inTurn":2,
             "colourOrder":"gradient","joined":[{"of":["moss","fern"]}],"apart":["stripe 2"],"back":["plum"],"locks":[{"part":"brim","leftover":"oat"}],
             "never":[{"part":"stripe 1","leftover":"oat"}]}
            """));
        Same(typed, sent);
        Assert.Equal(["oat", "moss~fern"], typed.Leftovers.Select(l => l.Id));
        Assert.Equal((false, 4m, EdgeKind.Tubular), ((HatDesign)typed.Hat).Brim is { } brim ? (brim.Folded, brim.Depth.Value, brim.BindOff) : default);
    }

    public static TheoryData<string> Changes() => [.. ByName.Keys];

    private static readonly Dictionary<string, Func<Question, Question>> ByName = new(StringComparer.Ordinal)
    {
        ["another size"] = q => q with { Size = "D" },
        ["fewer stripes"] = q => q with { Stripes = 5 },
        ["any number of stripes"] = q => q with { Stripes = null },
        ["another arrangement"] = q => q with { Arrangement = Arrangement.InTurn, InTurn = 2 },
        ["less in reserve"] = q => q with { AllowancePercent = 2.5m },
        ["blend"] = q => q with { Blend = true },
        ["another order"] = q => q with { ColourOrder = ColourOrder.Contrast },
        ["one left out"] = q => q with { Leftovers = [.. q.Leftovers.Where(l => l.Id != "moss")] },
        ["a lock"] = q => q with { Locks = [new Pairing("brim", "oat")] },
        ["held double"] = q => q with { Locks = [new Pairing("stripe 1", "oat") { HeldDouble = true }] },
        ["never"] = q => q with { Never = [new Pairing("stripe 1", "plum")] },
        ["apart"] = q => q with { Apart = ["braid 1 strand a", "braid 1 strand b"] },
        ["single brim"] = q => q with { Hat = Brimmed(q, b => b with { Folded = false }) },
        ["shallower brim"] = q => q with { Hat = Brimmed(q, b => b with { Depth = Centimetres.From(3.5m) }) },
        ["plain bind-off"] = q => q with { Hat = Brimmed(q, b => b with { BindOff = EdgeKind.Stretchy }) },
        ["a braid less"] = q => q with { Hat = ((HatDesign)q.Hat) with { Braids = ((HatDesign)q.Hat).Braids with { Without = [2] } } },
        ["rows of their own"] = q => q with { Hat = OwnRows.TryPut((HatDesign)q.Hat, "C", [28, 29, 29, 29, 29, 29], out var own, out _) ? own : throw new InvalidOperationException() },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_changed_question_is_said_and_read_again_as_it_was_meant(string change)
    {
        var asked = Json("""{"size":"C","stripes":6,"arrangement":"own-colours"}""");
        var from = Read(asked);
        var to = ByName[change](from);
        var said = MatchQuestion.Changed(asked, from, to);
        Same(to, Read(said));
        Assert.Equal(SaidInJson.Write(said, MatchQuestion.Fields).ToJsonString(), SaidInJson.Write(Json(SaidInJson.Write(said, MatchQuestion.Fields).ToJsonString()), MatchQuestion.Fields).ToJsonString());
    }

    [Theory]
    [InlineData("""{"size":"C","stripes":0}""", "stripes")]
    [InlineData("""{"size":"C","stripes":25}""", "stripes")]
    [InlineData("""{"size":"C","allowancePercent":100.5}""", "allowancePercent")]
    [InlineData("""{"size":"C","brimDepthCm":0.5}""", "brimDepthCm")]
    [InlineData("""{"size":"C","without":[25]}""", "without[0]")]
    [InlineData("""{"size":"C","rows":[28,0]}""", "rows[1]")]
    [InlineData("""{"size":"C","leftovers":["nobody"]}""", "leftovers[0]")]
    [InlineData("""{"size":"C","leftovers":["moss","moss"]}""", "leftovers[1]")]
    [InlineData("""{"size":"C","leftovers":[{"id":"a","grams":3,"label":"100 g"}]}""", "leftovers[0].label")]
    [InlineData("""{"size":"C","stripes":6,"locks":[{"part":"stripe 7","leftover":"oat"}]}""", "locks[0].part")]
    [InlineData("""{"size":"Z"}""", "size")]
    public void What_is_out_of_its_bounds_is_named(string json, string field)
    {
        var errors = new FieldErrors();
        Assert.Null(MatchQuestion.Read(new Reading(Json(json), errors), Samples.SideToSide, Bag));
        Assert.Equal([field], errors.ByField.Keys);
    }

    [Fact]
    public void What_falls_away_with_another_hat_or_count_is_told_to_the_page()
    {
        Assert.Contains("locks", MatchQuestion.Gone["hat"]);
        Assert.Contains("rows", MatchQuestion.Gone["size"]);
        Assert.DoesNotContain("leftovers", MatchQuestion.Gone["hat"]);
        Assert.All(MatchQuestion.Gone.Keys, k => Assert.Contains(MatchQuestion.Fields, f => f.Name == k));
    }

    private static HatDesign Brimmed(Question question, Func<Brim, Brim> change) => ((HatDesign)question.Hat) with { Brim = change(((HatDesign)question.Hat).Brim!) };

    private static void Same(Question wanted, Question read)
    {
        Assert.Equal(
            (wanted.Size, wanted.Stripes, wanted.Arrangement, wanted.InTurn, wanted.AllowancePercent, wanted.Blend, wanted.ColourOrder),
            (read.Size, read.Stripes, read.Arrangement, read.InTurn, read.AllowancePercent, read.Blend, read.ColourOrder));
        Assert.Equal(wanted.Leftovers.Select(l => l.Id).Order(StringComparer.Ordinal), read.Leftovers.Select(l => l.Id).Order(StringComparer.Ordinal));
        Assert.Equal(wanted.Locks, read.Locks);
        Assert.Equal(wanted.Never, read.Never);
        Assert.Equal(wanted.Apart, read.Apart);
        foreach (var count in wanted.Hat.CountsFor(wanted.Size))
        {
            Assert.True(wanted.Hat.TryNeeds(wanted.Size, count, out var one, out _) & read.Hat.TryNeeds(read.Size, count, out var other, out _));
            Assert.Equal(one!.Parts, other!.Parts);
        }
    }

    private static Question Read(Said said)
    {
        var errors = new FieldErrors();
        var question = MatchQuestion.Read(new Reading(said, errors), Samples.SideToSide, Bag);
        Assert.Empty(errors.ByField);
        return question!;
    }

    private static Said Json(string json)
    {
        var errors = new FieldErrors();
        using var read = JsonDocument.Parse(json);
        var said = SaidInJson.Read(read.RootElement, MatchQuestion.Fields, errors);
        Assert.Empty(errors.ByField);
        return said;
    }
}
