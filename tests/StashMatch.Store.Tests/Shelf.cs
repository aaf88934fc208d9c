using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store.Tests;

/// <summary>A real store on a file of its own.</summary>
internal sealed class Shelf : IAsyncDisposable
{
    private readonly ServiceProvider _services;

    private Shelf(string folder, Owner? owner)
    {
        Folder = folder;
        var services = new ServiceCollection();
        services.AddStore(folder);
        if (owner is not null)
        {
            services.AddSingleton(owner);
        }

        _services = services.BuildServiceProvider();
    }

    public string Folder { get; }

    public LeftoverStore Leftovers => _services.GetRequiredService<LeftoverStore>();

    public HatStore Hats => _services.GetRequiredService<HatStore>();

    public DemoBag Demo => _services.GetRequiredService<DemoBag>();

    public StoreStart Start => _services.GetRequiredService<StoreStart>();

    public StashContext Open() => _services.GetRequiredService<IDbContextFactory<StashContext>>().CreateDbContext();

    public static async Task<Shelf> ReadyAsync(string? folder = null, Owner? owner = null)
    {
        var shelf = new Shelf(folder ?? Directory.CreateTempSubdirectory("stashmatch-store-").FullName, owner);
        await shelf.Start.ReadyAsync(CancellationToken.None);
        return shelf;
    }

    public static NewLeftover Moss(string name = "Moss", decimal grams = 20) =>
        new(name, new Weighing(Grams.From(grams), default, Grams.From(0.1m)), new LabelRatio(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed));

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }
    }
}
