using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Data;

public sealed class StashContextTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_weighing_is_neither_changed_nor_deleted_by_itself()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using (var changing = shelf.Open())
        {
            (await changing.Ledger.AsTracking().FirstAsync(Stop)).GrossMilligrams = 1;
            await Assert.ThrowsAsync<InvalidOperationException>(() => changing.SaveChangesAsync(Stop));
        }

        await using (var deleting = shelf.Open())
        {
            deleting.Ledger.Remove(await deleting.Ledger.AsTracking().FirstAsync(Stop));
            await Assert.ThrowsAsync<InvalidOperationException>(() => deleting.SaveChangesAsync(Stop));
        }

        Assert.Equal(20m, Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Weighing.Net.Value);
    }

    [Fact]
    public async Task A_weighing_goes_with_its_leftover()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using var context = shelf.Open();
        context.Leftovers.Remove(await context.Leftovers.AsTracking().Include(r => r.Entries).FirstAsync(Stop));
        await context.SaveChangesAsync(Stop);
        Assert.Empty(await context.Ledger.ToListAsync(Stop));
    }

    [Fact]
    public async Task Another_owner_sees_nothing()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using var other = await Shelf.ReadyAsync(shelf.Folder, new Owner(Guid.NewGuid()));
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), "key", Stop);
        var hat = await shelf.Hats.SaveAsync(Described.Hat("""{"weightClass":1,"construction":"side-to-side","gauge":{"stitchesPer10cm":28,"rowsPer10cm":40}}"""), Stop);
        await shelf.Demo.LoadOnceAsync(Stop);

        await shelf.Plans.SaveAsync(new NewPlan("Mine", "h", "C", 1, "own-colours", [new PlannedPart(id, "brim", 1)]), Stop);
        await shelf.Settings.SaveAsync(new Settings { AllowancePercent = 33 }, Stop);
        var phone = await shelf.Phones.PairAsync("kitchen phone", Stop);

        Assert.Empty(await other.Leftovers.ListAsync(Stop));
        Assert.Empty(await other.Leftovers.ForHatsAsync(Stop));
        Assert.Empty(await other.Leftovers.HistoryAsync(id, Stop));
        Assert.Empty(await other.Plans.ListAsync(Stop));
        Assert.Equal(new Settings(), await other.Settings.ReadAsync(Stop));
        Assert.False(await other.Phones.MayComeInAsync(phone, Stop));
        Assert.DoesNotContain("Moss", System.Text.Encoding.UTF8.GetString(await other.Everything.WriteAsync(Stop)), StringComparison.Ordinal);
        Assert.Null(await other.Leftovers.FindAsync(id, Stop));
        Assert.Null(await other.Hats.FindAsync(hat, Stop));
        Assert.DoesNotContain(await other.Hats.ListAsync(Stop), h => h.Id == hat);
        await using var context = other.Open();
        Assert.Empty(await context.Ledger.ToListAsync(Stop));
        Assert.Empty(await context.DoneOnce.ToListAsync(Stop));
        Assert.Empty(await context.Marks.ToListAsync(Stop));
    }

    [Fact]
    public async Task Every_table_is_read_through_its_owner_and_written_by_its_owner()
    {
        await using var shelf = new Shelf();
        await using var context = shelf.Open();
        var tables = context.Model.GetEntityTypes().ToList();
        Assert.NotEmpty(tables);
        Assert.All(tables, table =>
        {
            Assert.True(typeof(IOwned).IsAssignableFrom(table.ClrType), table.Name);
            Assert.NotEmpty(table.GetDeclaredQueryFilters());
            Assert.True(table.FindProperty(nameof(IOwned.OwnerId))!.IsConcurrencyToken, table.Name);
        });
    }

    [Fact]
    public async Task Another_owners_verbs_find_nothing_to_act_on()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await using var other = await Shelf.ReadyAsync(shelf.Folder, new Owner(Guid.NewGuid()));
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), "key", Stop);
        Assert.False(await other.Leftovers.ReweighAsync(id, Shelf.Reading(1), Stop));
        Assert.False(await other.Leftovers.KnitUpAsync(id, Stop));
        Assert.False(await other.Leftovers.RemoveAsync(id, Stop));
        Assert.False(await other.Leftovers.PutBackAsync(id, Stop));
        Assert.Equal(0, await other.Demo.RemoveAsync(Stop));
        Assert.Equal(id, await other.Leftovers.WeighAsync(Shelf.Moss(), "key", Stop));
        Assert.Equal(20m, Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Weighing.Net.Value);
        Assert.Single(await other.Leftovers.ListAsync(Stop));
    }

    [Theory]
    [InlineData("write")]
    [InlineData("take over")]
    [InlineData("delete")]
    [InlineData("add")]
    [InlineData("weigh")]
    [InlineData("weigh unseen")]
    public async Task Saving_refuses_anothers_rows(string how)
    {
        await using var shelf = await Shelf.ReadyAsync();
        var thief = new Owner(Guid.NewGuid());
        await using var other = await Shelf.ReadyAsync(shelf.Folder, thief);
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using var context = other.Open();
        var row = await context.Leftovers.IgnoreQueryFilters().AsTracking().FirstAsync(Stop);
        switch (how)
        {
            case "write":
                row.Name = "mine now";
                break;
            case "take over":
                row.OwnerId = thief.Id;
                break;
            case "delete":
                context.Remove(row);
                break;
            case "add":
                context.Marks.Add(new MarkRow { OwnerId = row.OwnerId, Name = "left by a stranger" });
                break;
            case "weigh":
                row.Entries.Add(new EntryRow { GrossMilligrams = 1, StepMilligrams = 1 });
                break;
            default:
                context.ChangeTracker.Clear();
                context.Ledger.Add(new EntryRow { LeftoverId = row.Id, GrossMilligrams = 1, StepMilligrams = 1 });
                break;
        }

        await Assert.ThrowsAsync<InvalidOperationException>(() => context.SaveChangesAsync(Stop));
        Assert.Equal("Moss", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Name);
    }

    [Fact]
    public async Task A_row_made_up_to_look_like_ones_own_overwrites_nobodys()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Hats.SaveAsync(Described.Hat(Described.Plain), Stop);
        await using var own = shelf.Open();
        var hat = await own.Hats.FirstAsync(Stop);
        var thief = new Owner(Guid.NewGuid());
        await using var other = await Shelf.ReadyAsync(shelf.Folder, thief);
        await using var context = other.Open();
        context.Update(new HatRow { Id = hat.Id, OwnerId = thief.Id, PublicId = "x", Name = "x", Description = "{}" });
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => context.SaveChangesAsync(Stop));
        Assert.Equal("Mine", (await own.Hats.SingleAsync(Stop)).Name);
    }

    [Fact]
    public async Task Two_who_change_one_leftover_at_once_get_one_winner()
    {
        await using var shelf = await Shelf.ReadyAsync();
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using var one = shelf.Open();
        await using var two = shelf.Open();
        var (a, b) = (await one.Leftovers.AsTracking().FirstAsync(Stop), await two.Leftovers.AsTracking().FirstAsync(Stop));
        (a.Note, b.Note) = ("first", "second");
        await one.SaveChangesAsync(Stop);
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => two.SaveChangesAsync(Stop));
        Assert.Equal("first", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Note);
    }

    [Fact]
    public async Task A_weighing_renews_its_leftovers_version()
    {
        await using var shelf = await Shelf.ReadyAsync();
        var id = await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        await using var stale = shelf.Open();
        var row = await stale.Leftovers.AsTracking().FirstAsync(Stop);
        await shelf.Leftovers.ReweighAsync(id, Shelf.Reading(12), Stop);
        row.Note = "planned on the old weight";
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => stale.SaveChangesAsync(Stop));
    }
}
