using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Registers the store.</summary>
public static class StoreRegistration
{
    /// <summary>The store on embedded SQLite in <paramref name="folder"/>, for the one owner at home.</summary>
    public static IServiceCollection AddStore(this IServiceCollection services, string folder)
    {
        ArgumentNullException.ThrowIfNull(services);
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(Owner.Home);
        services.AddSingleton(new StorePlace(Path.GetFullPath(folder)));
        services.AddDbContextFactory<StashContext>((provider, options) => options
            .UseSqlite($"Data Source={provider.GetRequiredService<StorePlace>().File};Default Timeout=10")
            .UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking)
            .AddInterceptors(new SafeWrites()));
        services.AddSingleton<StoreStart>();
        services.AddSingleton<LeftoverStore>();
        services.AddSingleton<KnitterStore>();
        services.AddSingleton<HatStore>();
        services.AddSingleton<KitStore>();
        services.AddSingleton<TesterStore>();
        services.AddSingleton<DemoBag>();
        return services;
    }
}
