using System.Globalization;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Components.Server.Circuits;
using StashMatch.Store;

namespace StashMatch.Web;

/// <summary>What the knitter prefers, known wherever a figure is shown or a field is first filled.</summary>
public sealed class Habits(SettingsStore store)
{
    private static readonly AsyncLocal<Habits?> Here = new();
    private static readonly Settings Usual = new();

    private volatile Settings? _known;
    private volatile bool _demoHere;

    /// <summary>The preferences of whoever this page or circuit serves; the usual ones where nobody is served.</summary>
    public static Settings Now => Here.Value?._known ?? Usual;

    /// <summary>Whether any demo leftover was there when the page was asked for.</summary>
    public bool DemoHere => _demoHere;

    /// <summary>Their scale's step as a field is first filled with it.</summary>
    public static string StepText => Now.ScaleStep.Value.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>Their allowance as a field is first filled with it.</summary>
    public static string AllowanceText => Now.AllowancePercent.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>From here on, as far as the caller's work flows, these are the habits.</summary>
    public void Enter() => Here.Value = this;

    /// <summary>Reads them as they stand in the store.</summary>
    public async Task<Settings> ReadAsync(CancellationToken cancel = default)
    {
        (var known, _demoHere) = await store.ReadWithDemoAsync(cancel);
        return _known = known;
    }

    /// <summary>Reads them unless they are known.</summary>
    public async ValueTask<Settings> KnowAsync(CancellationToken cancel = default) => _known ?? await ReadAsync(cancel);

    /// <summary>Saves them; they hold at once, on every page that is open.</summary>
    public async Task SaveAsync(Settings settings, CancellationToken cancel = default)
    {
        await store.SaveAsync(settings, cancel);
        _known = settings;
    }
}

/// <summary>Makes the habits known to pages and circuits.</summary>
public static class HabitsRegistration
{
    public static void AddHabits(this IServiceCollection services)
    {
        services.AddSingleton<Habits>();
        services.AddScoped<CircuitHandler, InCircuit>();
    }

    /// <summary>Stands after routing: pages alone ask for them.</summary>
    public static void UseHabits(this IApplicationBuilder app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var habits = app.ApplicationServices.GetRequiredService<Habits>();
        app.Use(async (context, next) =>
        {
            if (context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null)
            {
                habits.Enter();
                await habits.ReadAsync(context.RequestAborted);
            }

            await next(context);
        });
    }

    private sealed class InCircuit(Habits habits) : CircuitHandler
    {
        public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(Func<CircuitInboundActivityContext, Task> next) => async context =>
        {
            habits.Enter();
            await habits.KnowAsync();
            await next(context);
        };
    }
}
