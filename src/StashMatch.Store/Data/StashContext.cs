using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace StashMatch.Store.Data;

/// <summary>The database, seen as one owner: other owners' rows are neither read nor written.</summary>
public sealed class StashContext(DbContextOptions<StashContext> options, Owner owner) : DbContext(options)
{
    public Guid OwnerId { get; } = owner.Id;

    public DbSet<LeftoverRow> Leftovers => Set<LeftoverRow>();

    public DbSet<EntryRow> Ledger => Set<EntryRow>();

    public DbSet<PlanRow> Plans => Set<PlanRow>();

    public DbSet<PromiseRow> Promises => Set<PromiseRow>();

    public DbSet<SettingsRow> Settings => Set<SettingsRow>();

    public DbSet<PhoneRow> Phones => Set<PhoneRow>();

    public DbSet<HatRow> Hats => Set<HatRow>();

    public DbSet<CalibrationRow> Calibrations => Set<CalibrationRow>();

    public DbSet<KitRow> Kits => Set<KitRow>();

    public DbSet<TesterRow> Testers => Set<TesterRow>();

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
        Own<LeftoverRow>(modelBuilder, e =>
        {
            e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique();
            e.HasIndex(r => new { r.OwnerId, r.LoggedAt });
            e.Property(r => r.Version).IsConcurrencyToken();
            e.HasOne(r => r.Picture).WithOne().HasForeignKey<PictureRow>(p => p.LeftoverId).OnDelete(DeleteBehavior.Cascade);
            e.HasMany(r => r.Entries).WithOne().HasForeignKey(w => w.LeftoverId).OnDelete(DeleteBehavior.Cascade);
        });
        Own<PictureRow>(modelBuilder, e => e.ToTable("Pictures").HasKey(p => p.LeftoverId));
        Own<EntryRow>(modelBuilder, e => e.ToTable("Ledger"));
        Own<PlanRow>(modelBuilder, e =>
        {
            e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique();
            e.HasIndex(r => new { r.OwnerId, r.Name }).IsUnique();
            e.Property(r => r.Version).IsConcurrencyToken();
            e.HasMany(r => r.Promises).WithOne().HasForeignKey(p => p.PlanId).OnDelete(DeleteBehavior.Cascade);
        });
        Own<PromiseRow>(modelBuilder, e => e.HasOne<LeftoverRow>().WithMany().HasForeignKey(p => p.LeftoverId).OnDelete(DeleteBehavior.SetNull));
        Own<SettingsRow>(modelBuilder, e => e.HasIndex(r => r.OwnerId).IsUnique());
        Own<PhoneRow>(modelBuilder, _ => { });
        Own<HatRow>(modelBuilder, e => e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique());
        Own<CalibrationRow>(modelBuilder, _ => { });
        Own<KitRow>(modelBuilder, e => e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique());
        Own<TesterRow>(modelBuilder, e =>
        {
            e.HasIndex(r => new { r.OwnerId, r.PublicId }).IsUnique();
            e.HasIndex(r => new { r.OwnerId, r.HatId });
        });
        Own<DoneOnceRow>(modelBuilder, e => e.HasIndex(r => new { r.OwnerId, r.Key }).IsUnique());
        Own<MarkRow>(modelBuilder, e => e.HasIndex(r => new { r.OwnerId, r.Name }).IsUnique());
    }

    // Read through the owner's filter; an update or delete names the owner in its WHERE.
    private void Own<T>(ModelBuilder modelBuilder, Action<EntityTypeBuilder<T>> more)
        where T : class, IOwned =>
        modelBuilder.Entity<T>(e =>
        {
            e.HasQueryFilter(r => r.OwnerId == OwnerId);
            e.Property(r => r.OwnerId).IsConcurrencyToken();
            more(e);
        });

    private void KeepTheRules()
    {
        var entries = ChangeTracker.Entries().ToList();
        var leftovers = entries.Where(e => e.Entity is LeftoverRow).ToDictionary(e => ((LeftoverRow)e.Entity).Id);
        foreach (var entry in entries.Where(e => e.State is EntityState.Added or EntityState.Modified or EntityState.Deleted))
        {
            if (entry.Entity is IOwned owned)
            {
                KeepToTheOwner(entry, owned);
            }

            if (entry.Entity is EntryRow line)
            {
                KeepAppending(entry.State, leftovers.GetValueOrDefault(line.LeftoverId));
            }

            if (entry is { State: EntityState.Added or EntityState.Modified, Entity: IRaced raced })
            {
                raced.Version = Guid.NewGuid();
            }
        }
    }

    private void KeepToTheOwner(EntityEntry entry, IOwned owned)
    {
        if (entry.State == EntityState.Added && owned.OwnerId == Guid.Empty)
        {
            owned.OwnerId = OwnerId;
        }

        var before = entry.State == EntityState.Added ? OwnerId : entry.Property(nameof(IOwned.OwnerId)).OriginalValue as Guid?;
        if (owned.OwnerId != OwnerId || before != OwnerId)
        {
            throw new InvalidOperationException("A row of another owner was about to be written.");
        }
    }

    // Appended to a leftover at hand, so never to a stranger's; gone only together with its leftover.
    private void KeepAppending(EntityState state, EntityEntry? leftover)
    {
        if (state == EntityState.Modified || (state == EntityState.Deleted && leftover?.State != EntityState.Deleted))
        {
            throw new InvalidOperationException("A ledger's line is appended, never changed.");
        }

        if (state == EntityState.Added && (leftover is null || (leftover.State != EntityState.Added && ((LeftoverRow)leftover.Entity).OwnerId != OwnerId)))
        {
            throw new InvalidOperationException("A ledger's line is appended to one's own leftover, fetched before.");
        }
    }

    private sealed class UtcTicks() : ValueConverter<DateTimeOffset, long>(t => t.UtcTicks, t => new DateTimeOffset(t, TimeSpan.Zero));
}
