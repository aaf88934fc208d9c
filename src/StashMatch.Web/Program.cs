using Microsoft.AspNetCore.Connections;
using StashMatch.Store.Data;
using StashMatch.Web;

var builder = WebApplication.CreateBuilder(args);
if (Home.Refusal(builder.Configuration) is { } refusal)
{
    await Console.Error.WriteLineAsync(refusal);
    return 1;
}

// What stops the program from starting is told below, in one sentence; what happens later is logged.
var started = false;
builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", level => started && level >= LogLevel.Warning);
builder.AddStashMatch();
var app = builder.Build();
app.UseStashMatch();
try
{
    await app.ReadyAsync();
}
catch (StoreRefusedException e)
{
    await Console.Error.WriteLineAsync(e.Message);
    return 1;
}

app.Lifetime.ApplicationStarted.Register(() => started = true);
try
{
    await app.RunAsync();
}
catch (IOException e) when (!started && e.InnerException is AddressInUseException)
{
    await Console.Error.WriteLineAsync(Home.PortTaken(builder.Configuration));
    return 1;
}

return 0;

/// <summary>The program, named so that tests can start it whole.</summary>
public partial class Program;
