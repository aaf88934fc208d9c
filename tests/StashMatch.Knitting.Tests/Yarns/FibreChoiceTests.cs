using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Knitting.Tests.Yarns;

/// <summary>Which fibres go in: the table is ours; charities ask for one or the other of them [practice].</summary>
public sealed class FibreChoiceTests
{
    [Theory]
    [InlineData("100% wool", false, null, "only-wool")]
    [InlineData("100% superwash wool", false, null, "only-wool machine-washable")]
    [InlineData("100% wool", true, null, "only-wool machine-washable")]
    [InlineData("80% merino, 20% nylon", false, null, "")]
    [InlineData("75% superwash merino, 25% nylon", false, null, "machine-washable")]
    [InlineData("100% cotton", false, null, "no-wool machine-washable")]
    [InlineData("100% cotton", false, "hand wash", "no-wool")]
    [InlineData("100% acrylic", false, "40 C normal", "no-wool machine-washable")]
    [InlineData("100% alpaca", false, null, "no-wool")]
    [InlineData("97% wool, 3% elastane", false, null, "only-wool")]
    [InlineData("unknown", false, null, "")]
    public void A_choice_of_fibres_lets_in_what_it_says(string fibre, bool superwash, string? care, string goesIn)
    {
        Assert.True(FibreBlend.TryParse(fibre, out var blend, out _));
        Care? label = null;
        Assert.True(care is null || Care.TryParse(care, out label, out _));
        var ball = Samples.OfMetres("a", 50) with { Fibre = blend, Superwash = superwash, Care = label };
        var allowed = new[] { (FibreChoice.NoWool, "no-wool"), (FibreChoice.OnlyWool, "only-wool"), (FibreChoice.MachineWashable, "machine-washable") }
            .Where(c => c.Item1.Allows(ball)).Select(c => c.Item2);
        Assert.Equal(goesIn, string.Join(' ', allowed));
        Assert.True(FibreChoice.Any.Allows(ball));
    }
}
