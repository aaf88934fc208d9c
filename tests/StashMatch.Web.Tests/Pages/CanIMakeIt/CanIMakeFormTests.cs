using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Tests;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pages.CanIMakeIt;
using Xunit;

namespace StashMatch.Web.Tests.Pages.CanIMakeIt;

public sealed class CanIMakeFormTests
{
    private static readonly IReadOnlyList<Leftover> Bag = [Samples.OfMetres("moss", 40), Samples.OfMetres("plum", 30), Samples.OfMetres("oat", 90)];

    private static readonly CanIMakeForm Plain = new() { Hat = "h", Size = "C" };

    [Fact]
    public void What_is_left_out_takes_its_default()
    {
        var question = Read(Plain);
        Assert.NotNull(question);
        Assert.Null(question.Stripes);
        Assert.Equal(Arrangement.OwnColours, question.Arrangement);
        Assert.Equal(10, question.AllowancePercent);
        Assert.False(question.Blend);
        Assert.Equal(3, question.Leftovers.Count);
    }

    [Theory]
    [InlineData("size", "Z")]
    [InlineData("size", null)]
    [InlineData("stripes", "six")]
    [InlineData("stripes", "0")]
    [InlineData("stripes", "25")]
    [InlineData("stripes", "-4")]
    [InlineData("arrangement", "heap")]
    [InlineData("allowancePercent", "ten")]
    [InlineData("allowancePercent", "100.5")]
    [InlineData("allowancePercent", "1.5.2")]
    [InlineData("nextDoor", "merge")]
    [InlineData("brim", "double")]
    [InlineData("fibres", "fur")]
    [InlineData("leftovers", "nobody")]
    [InlineData("locks", "brim~nobody")]
    [InlineData("locks", "~moss")]
    [InlineData("never", "sleeve~moss")]
    public void What_cannot_be_read_is_named_and_nothing_is_asked(string field, string? value)
    {
        var form = field switch
        {
            "size" => Plain with { Size = value },
            "stripes" => Plain with { Stripes = value },
            "arrangement" => Plain with { Arrangement = value },
            "allowancePercent" => Plain with { Allowance = value },
            "nextDoor" => Plain with { NextDoor = value },
            "brim" => Plain with { Brim = value },
            "fibres" => Plain with { Fibres = value },
            "leftovers" => Plain with { Leftovers = [value!] },
            "locks" => Plain with { Keep = [value!] },
            _ => Plain with { Never = [value!] },
        };
        Assert.Null(Read(form, out var errors));
        Assert.NotNull(errors.Of(field));
        Assert.Single(errors.ByField);
    }

    [Fact]
    public void Only_what_is_ticked_is_asked_with_and_what_is_kept_in_a_part_besides()
    {
        var question = Read(Plain with { Leftovers = ["moss"], Keep = ["brim~oat"] })!;
        Assert.Equal(["moss", "oat"], question.Leftovers.Select(l => l.Id));
        Assert.Equal([new Pairing("brim", "oat")], question.Locks);
    }

    [Fact]
    public void A_decision_about_a_part_takes_the_place_of_the_one_before_and_can_be_put_back()
    {
        var form = Plain with { Keep = ["brim~oat", "stripe 1~moss"] };
        Assert.Equal("/can-i-make?hat=h&size=C&locks=stripe%201~moss&locks=brim~plum", form.KeepHere("brim", "plum"));
        Assert.Equal("/can-i-make?hat=h&size=C&locks=stripe%201~moss&never=brim~oat", form.NotThisOne("brim", "oat"));
        Assert.Equal("/can-i-make?hat=h&size=C&locks=stripe%201~moss", form.PutBack("brim"));
        Assert.True(form.IsDecided("brim"));
        Assert.False(form.IsDecided("stripe 2"));
        Assert.Equal([new Pairing("brim", "oat")], Read(Plain with { Never = ["brim~oat"] })!.Never);
    }

    [Fact]
    public void A_leftover_is_kept_back_and_put_back_and_fibres_are_chosen_but_what_is_kept_in_a_part_goes_in()
    {
        var form = Plain with { Leftovers = ["moss", "oat"] };
        Assert.EndsWith("&back=moss&leftovers=moss&leftovers=oat", form.KeepBack("moss"), StringComparison.Ordinal);
        Assert.Equal(["oat"], Read(form with { Back = ["moss"] })!.Leftovers.Select(l => l.Id));
        Assert.Equal(["moss", "oat"], Read(form with { Back = ["moss"], Keep = ["brim~moss"] })!.Leftovers.Select(l => l.Id).Order());
        Assert.Empty(Read(form with { Fibres = "machine-washable" })!.Leftovers);
        Assert.Equal(["oat"], Read(form with { Fibres = "machine-washable", Keep = ["brim~oat"] })!.Leftovers.Select(l => l.Id));
        Assert.EndsWith("&choose=stripe%202", form.ChooseFor("stripe 2"), StringComparison.Ordinal);
        Assert.DoesNotContain("choose", (form with { Choose = "stripe 2" }).Address(f => f), StringComparison.Ordinal);
    }

    [Fact]
    public void A_repair_changes_one_thing_in_the_address_and_keeps_the_rest()
    {
        var form = Plain with { Stripes = "6", Allowance = "15", Leftovers = ["moss", "oat"] };
        Assert.Equal("/can-i-make?hat=h&size=C&stripes=4&allowancePercent=15&leftovers=moss&leftovers=oat",
            form.Try(Way(RepairCode.FewerStripes) with { Stripes = 4 }, 6));
        Assert.Equal("/can-i-make?hat=h&size=B&stripes=6&allowancePercent=15&leftovers=moss&leftovers=oat",
            form.Try(Way(RepairCode.SmallerSize) with { Size = "B" }, 6));
        Assert.Equal("/can-i-make?hat=h&size=C&stripes=9&locks=brim~oat",
            (Plain with { Stripes = null })
                .Try(Way(RepairCode.MoveOne) with { Part = "brim", Leftover = "oat" }, 9)?.Replace("%20", " ", StringComparison.Ordinal)
                    .Replace("%7E", "~", StringComparison.Ordinal));
        Assert.EndsWith("&brim=single&leftovers=moss&leftovers=oat", form.Try(Way(RepairCode.UnfoldBrim), 6), StringComparison.Ordinal);
        Assert.Null(form.Try(Way(RepairCode.WeighSwatch), 6));
        var single = Read(Plain with { Brim = "single" })!;
        Assert.False(((HatDesign)single.Hat).Brim!.Folded);
    }

    [Fact]
    public void The_opening_is_asked_where_the_address_asks_nothing_and_other_fields_are_kept()
    {
        Assert.Equal(("side-to-side-sample", "F", "6"),
            (new CanIMakeForm().OrFirst().Hat, new CanIMakeForm().OrFirst().Size, new CanIMakeForm().OrFirst().Stripes));
        Assert.Equal("abc", (new CanIMakeForm { Allowance = "abc" }).OrFirst().Allowance);
        Assert.Null((new CanIMakeForm { Size = "C" }).OrFirst().Stripes);
    }

    [Fact]
    public void Rows_of_each_stripe_make_a_hat_of_their_own_and_stay_in_the_address()
    {
        var form = Plain with { Depths = "40,41,41,57", Bag = "tin" };
        Assert.Equal("/can-i-make?hat=h&size=C&rows=40%2C41%2C41%2C57&bag=tin&locks=brim~oat", form.KeepHere("brim", "oat"));
        var own = (HatDesign)Read(form)!.Hat;
        Assert.Equal([4], own.CountsFor("C"));
        Assert.Equal([40, 41, 41, 57], own.PlanOf("C", 4).Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows));
        Assert.Null(Read(form with { Size = "D" }, out var errors));
        Assert.Equal(["rows"], errors.ByField.Keys);
    }

    private static Repair Way(RepairCode code) => new(code, Verdict.Yes, 1) { Changed = Read(Plain)! };

    private static Question? Read(CanIMakeForm form) => Read(form, out _);

    private static Question? Read(CanIMakeForm form, out FieldErrors errors) => form.Read(Samples.SideToSide, Bag, errors = new FieldErrors());
}
