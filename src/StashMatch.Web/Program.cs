using StashMatch.Store.Data;
using StashMatch.Web;

var builder = WebApplication.CreateBuilder(args);
if (Home.Refusal(builder.Configuration) is { } refusal)
{
    await Console.Error.WriteLineAsync(refusal);
    return 1;
}

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

await app.RunAsync();
return 0;

/// <summary>The program, named so that tests can start it whole.</summary>
public partial class Program;
