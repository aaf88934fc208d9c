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
        services.AddSingleton<StoreGate>();
        services.AddDbContextFactory<StashContext>((provider, options) => options
            .UseSqlite($"Data Source={provider.GetRequiredService<StorePlace>().File};Default Timeout=10")
            .UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking)
            .AddInterceptors(new SafeWrites(provider.GetRequiredService<StoreGate>(), provider.GetRequiredService<StorePlace>())));
        services.AddSingleton<StoreStart>();
        services.AddSingleton<LeftoverStore>();
        services.AddSingleton<PlanStore>();
        services.AddSingleton<PictureStore>();
        services.AddSingleton<KnitterStore>();
        services.AddSingleton<SettingsStore>();
        services.AddSingleton<PhoneStore>();
        services.AddSingleton<Restore>();
        services.AddSingleton<BackupStore>();
        services.AddSingleton<HatStore>();
        services.AddSingleton<KitStore>();
        services.AddSingleton<TesterStore>();
        services.AddSingleton<LeftoverTable>();
        services.AddSingleton<Everything>();
        services.AddSingleton<DemoBag>();
        services.AddSingleton<NewCodes>();
        return services;
    }
}
