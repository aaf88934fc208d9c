using Xunit;

namespace StashMatch.Store.Tests;

public sealed class ReleasedTests
{
    [Fact]
    public async Task A_file_of_the_first_version_is_brought_up_to_date_with_all_that_is_in_it()
    {
        await using var shelf = new Shelf();
        Released.LayInto(shelf.Folder);
        await shelf.Start.ReadyAsync(TestContext.Current.CancellationToken);
        await Released.CheckAsync(shelf);
        Assert.Equal(BackupKind.BeforeUpdate, Assert.Single(shelf.Backups.List()).Kind);
    }
}
