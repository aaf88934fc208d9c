using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using Xunit;

namespace StashMatch.Store.Tests;

/// <summary>A database file as the first version left it when it was closed: the demo, four leftovers, a hat. Never written anew.</summary>
internal static class Released
{
    public static string File => Path.Combine(AppContext.BaseDirectory, "Released", "first.db");

    /// <summary>Lays the file into a folder.</summary>
    public static void LayInto(string folder) => System.IO.File.Copy(File, Path.Combine(folder, "stashmatch.db"));

    /// <summary>All of it is there, in today's words.</summary>
    public static async Task CheckAsync(Shelf shelf)
    {
        var stop = TestContext.Current.CancellationToken;
        var list = await shelf.Leftovers.ListAsync(stop);
        Assert.Equal((27, 24), (list.Count, list.Count(l => l.IsDemo)));
        Assert.Equal(["done", "wellie", "moss", "oatcake"], list.Take(4).Select(l => l.Id));
        var moss = list.Single(l => l.Id == "moss");
        Assert.Equal(("Moss bank", "Mb", 16.5m, 4m, 2), (moss.Name, moss.Code, moss.Left.Value, moss.Weighing.Tare.Value, moss.Weighings));
        Assert.Equal(new LabelRatio(50, MassUnit.Grams, 125, LengthUnit.Metres, RatioSource.Printed), moss.Ratio);
        Assert.Equal(("80% merino, 20% nylon", "#5B7A3A", "7", "30 C mild, flat", true), (moss.Fibre.ToString(), moss.Colour?.Hex, moss.Lot, moss.Care?.ToString(), moss.Superwash));
        var wellie = list.Single(l => l.Id == "wellie");
        Assert.Equal((new LabelRatio(4, MassUnit.Ounces, 205.5m, LengthUnit.Yards, RatioSource.Measured), YarnMake.Singles), (wellie.Ratio, wellie.Make));
        Assert.True(list.Single(l => l.Id == "done").KnittedUp);
        Assert.Equal([23.5m, 16.5m], (await shelf.Leftovers.HistoryAsync("moss", stop)).Select(h => h.Left.Value));
        Assert.Equal([EntryKind.Weighed, EntryKind.KnittedUp, EntryKind.Removed], (await shelf.Leftovers.HistoryAsync("gone", stop)).Select(h => h.Kind));
        Assert.Equal("Mine", Assert.Single(await shelf.Hats.ListAsync(stop), h => !h.IsSample).Hat.Name);
        Assert.Equal(EntryKind.Removed, await shelf.Leftovers.UndoAsync("gone", stop));
        Assert.Equal(EntryKind.KnittedUp, await shelf.Leftovers.UndoAsync("gone", stop));
        Assert.Equal(Grams.From(8), (await shelf.Leftovers.FindAsync("gone", stop))?.Left);
    }
}
