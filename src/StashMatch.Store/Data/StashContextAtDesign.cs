using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace StashMatch.Store.Data;

/// <summary>Lets the migration tool build the context; no database is opened.</summary>
public sealed class StashContextAtDesign : IDesignTimeDbContextFactory<StashContext>
{
    public StashContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<StashContext>().UseSqlite("Data Source=:memory:").Options, Owner.Home);
}
