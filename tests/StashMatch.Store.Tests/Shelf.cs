using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store.Tests;

/// <summary>A real store on a file of its own.</summary>
internal sealed class Shelf : IAsyncDisposable
{
    private readonly ServiceProvider _services;
    private readonly Counter _counter = new();

    public Shelf(string? folder = null, Owner? owner = null, TimeProvider? clock = null, string? onOpen = null, DbConnectionInterceptor? opening = null)
    {
        Folder = folder ?? Directory.CreateTempSubdirectory("stashmatch-store-").FullName;
        var services = new ServiceCollection();
        if (clock is not null)
        {
            services.AddSingleton(clock);
        }

        services.AddStore(Folder);
        services.ConfigureDbContext<StashContext>(o => o.AddInterceptors(_counter));
        if (onOpen is not null)
        {
            services.ConfigureDbContext<StashContext>(o => o.AddInterceptors(new Told(onOpen)));
        }

        if (opening is not null)
        {
            services.ConfigureDbContext<StashContext>(o => o.AddInterceptors(opening));
        }

        if (owner is not null)
        {
            services.AddSingleton(owner);
        }

        _services = services.BuildServiceProvider();
    }

    public string Folder { get; }

    public string File => Path.Combine(Folder, "stashmatch.db");

    public LeftoverStore Leftovers => _services.GetRequiredService<LeftoverStore>();

    public PlanStore Plans => _services.GetRequiredService<PlanStore>();

    public KnitterStore Knitter => _services.GetRequiredService<KnitterStore>();

    public SettingsStore Settings => _services.GetRequiredService<SettingsStore>();

    public PhoneStore Phones => _services.GetRequiredService<PhoneStore>();

    public BackupStore Backups => _services.GetRequiredService<BackupStore>();

    public LeftoverTable Table => _services.GetRequiredService<LeftoverTable>();

    public Everything Everything => _services.GetRequiredService<Everything>();

    public StoreGate Gate => _services.GetRequiredService<StoreGate>();

    public StorePlace Place => _services.GetRequiredService<StorePlace>();

    public PictureStore Pictures => _services.GetRequiredService<PictureStore>();

    public KitStore Kits => _services.GetRequiredService<KitStore>();

    public TesterStore Testers => _services.GetRequiredService<TesterStore>();

    public HatStore Hats => _services.GetRequiredService<HatStore>();

    public DemoBag Demo => _services.GetRequiredService<DemoBag>();

    public NewCodes Codes => _services.GetRequiredService<NewCodes>();

    public StoreStart Start => _services.GetRequiredService<StoreStart>();

    /// <summary>Queries run so far through this shelf.</summary>
    public int Queries => _counter.Count;

    public StashContext Open() => _services.GetRequiredService<IDbContextFactory<StashContext>>().CreateDbContext();

    public static async Task<Shelf> ReadyAsync(string? folder = null, Owner? owner = null, TimeProvider? clock = null)
    {
        var shelf = new Shelf(folder, owner, clock);
        await shelf.Start.ReadyAsync(CancellationToken.None);
        return shelf;
    }

    public static Weighing Reading(decimal grams) => new(Grams.From(grams), default, Grams.From(0.1m));

    public static NewLeftover Moss(string name = "Moss", decimal grams = 20) =>
        new(name, Reading(grams), new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed));

    /// <summary>Lets go of the file, as a program that ends.</summary>
    public async Task CloseAsync()
    {
        await using var context = Open();
        using var pooled = new SqliteConnection(context.Database.GetConnectionString());
        SqliteConnection.ClearPool(pooled);
    }

    public async ValueTask DisposeAsync()
    {
        // Its own connections alone: other tests run beside it.
        await CloseAsync();
        await _services.DisposeAsync();
        if (Directory.Exists(Folder) && !Folder.Contains("stashmatch-disk-", StringComparison.Ordinal))
        {
            Directory.Delete(Folder, recursive: true);
        }
    }

    private sealed class Counter : DbCommandInterceptor
    {
        private int _count;

        public int Count => _count;

        public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
        {
            Interlocked.Increment(ref _count);
            return base.ReaderExecutingAsync(command, eventData, result, cancellationToken);
        }
    }

    /// <summary>Tells the database something on each open, after what the program tells it.</summary>
    private sealed class Told(string what) : DbConnectionInterceptor
    {
        public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = what;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}
