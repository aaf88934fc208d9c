using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pages.WeighLeftovers;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class HistoryChartTests
{
    private static readonly LabelRatio Ratio = new(50, MassUnit.Grams, 125, LengthUnit.Metres, RatioSource.Printed);

    [Fact]
    public void Each_step_that_counts_is_a_strand_as_long_as_what_was_left()
    {
        var svg = HistoryChart.Svg([Step(EntryKind.Weighed, 40), Step(EntryKind.Edited, 40), Step(EntryKind.Used, 20), Step(EntryKind.Used, 10) with { IsUndone = true }, Step(EntryKind.Undone, 20), Step(EntryKind.KnittedUp, 0)], Ratio, null)!;
        var widths = svg.Split("<rect ").Skip(1).Select(r => decimal.Parse(r.Split("width=\"")[1].Split('"')[0], System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(3, widths.Count);
        Assert.Equal(widths[0] / 2, widths[1], 1);
        Assert.Equal(1, widths[2]);
        Assert.Contains(">m</text>", svg, StringComparison.Ordinal);
        Assert.Contains(">yd</text>", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void One_step_or_no_label_needs_no_drawing()
    {
        Assert.Null(HistoryChart.Svg([Step(EntryKind.Weighed, 40)], Ratio, null));
        Assert.Null(HistoryChart.Svg([Step(EntryKind.Weighed, 40), Step(EntryKind.Weighed, 30)], null, null));
    }

    [Fact]
    public void Never_more_than_thirty_strands_the_latest() =>
        Assert.Equal(HistoryChart.Most, HistoryChart.Svg([.. Enumerable.Range(1, 50).Select(i => Step(EntryKind.Weighed, i))], Ratio, null)!.Split("<rect ").Length - 1);

    private static HistoryEntry Step(EntryKind kind, decimal left) => new(kind, new DateTimeOffset(2026, 11, 25, 12, 0, 0, TimeSpan.Zero), Grams.From(left));
}
