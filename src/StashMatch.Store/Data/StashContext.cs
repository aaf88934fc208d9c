using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace StashMatch.Store.Data;

/// <summary>The database, seen as one owner: other owners' rows are neither read nor written.</summary>
public sealed class StashContext(DbContextOptions<StashContext> options, Owner owner) : DbContext(options)
{
    public Guid OwnerId { get; } = owner.Id;

    public DbSet<LeftoverRow> Leftovers => Set<LeftoverRow>();

    public DbSet<WeighingRow> Weighings => Set<WeighingRow>();

    public DbSet<HatRow> Hats => Set<HatRow>();

    public DbSet<CalibrationRow> Calibrations => Set<CalibrationRow>();

    public DbSet<DoneOnceRow> DoneOnce => Set<DoneOnceRow>();

    public DbSet<MarkRow> Marks => Set<MarkRow>();

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        KeepTheRules();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        KeepTheRules();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicks>();
        configurationBuilder.Properties<decimal>().HaveConversion<string>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<LeftoverRow>(e =>
        {
            e.HasQueryFilter(r => r.OwnerId == OwnerId);
            e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique();
            e.HasIndex(r => new { r.OwnerId, r.LoggedAt });
            e.Property(r => r.Version).IsConcurrencyToken();
            e.HasMany(r => r.Weighings).WithOne().HasForeignKey(w => w.LeftoverId).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<WeighingRow>().HasQueryFilter(r => r.OwnerId == OwnerId);
        modelBuilder.Entity<HatRow>(e =>
        {
            e.HasQueryFilter(r => r.OwnerId == OwnerId);
            e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique();
        });
        modelBuilder.Entity<CalibrationRow>().HasQueryFilter(r => r.OwnerId == OwnerId);
        modelBuilder.Entity<DoneOnceRow>(e =>
        {
            e.HasQueryFilter(r => r.OwnerId == OwnerId);
            e.HasIndex(r => new { r.OwnerId, r.Key }).IsUnique();
        });
        modelBuilder.Entity<MarkRow>(e =>
        {
            e.HasQueryFilter(r => r.OwnerId == OwnerId);
            e.HasIndex(r => new { r.OwnerId, r.Name }).IsUnique();
        });
    }

    private void KeepTheRules()
    {
        foreach (var entry in ChangeTracker.Entries().Where(e => e.State is EntityState.Added or EntityState.Modified or EntityState.Deleted))
        {
            if (entry is { State: EntityState.Added, Entity: IOwned fresh } && fresh.OwnerId == Guid.Empty)
            {
                fresh.OwnerId = OwnerId;
            }

            if (entry.Entity is IOwned owned && owned.OwnerId != OwnerId)
            {
                throw new InvalidOperationException("A row of another owner was about to be written.");
            }

            if (entry is { Entity: WeighingRow, State: EntityState.Modified })
            {
                throw new InvalidOperationException("A weighing is appended, never changed.");
            }

            if (entry is { State: EntityState.Added or EntityState.Modified, Entity: IRaced raced })
            {
                raced.Version = Guid.NewGuid();
            }
        }
    }

    private sealed class UtcTicks() : ValueConverter<DateTimeOffset, long>(t => t.UtcTicks, t => new DateTimeOffset(t, TimeSpan.Zero));
}
