using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.Logging;
using StashMatch.Benchmarks;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Tests.Oracle;
using StashMatch.Store;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var isShort = args.Contains("--short");

// Raced, the solver gets more time than in the tests, and is not asked twice.
(CompactModel.Limit, CompactModel.Patient) = (isShort ? 3 : 40, false);
var folder = Directory.CreateTempSubdirectory("stashmatch-bench-").FullName;
await using var app = new WebApplicationFactory<StashMatch.Web.Pieces.Words>().WithWebHostBuilder(b => b.UseContentRoot(AppContext.BaseDirectory).UseSetting("Data:Folder", folder).UseSetting("Data:Demo", "false").ConfigureLogging(l => l.ClearProviders()));
var client = app.CreateClient(new() { BaseAddress = new Uri("http://127.0.0.1") });
var hats = (HatStore)app.Services.GetService(typeof(HatStore))!;
var hat = (HatDesign)(await hats.FindAsync("side-to-side-sample"))!;
if (args.Contains("--kits"))
{
    Kits.Row(hat with { StripeCounts = null }, 12);
    return;
}

Console.WriteLine($"{Table.Today()}, {Environment.ProcessorCount} processors, {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes >> 30} GiB, {(isShort ? "short" : "long")} run, seeded; milliseconds unless said (on a busy machine the lesser of time and processor time)");
if (args.Contains("--unproven"))
{
    MatchingTables.ProvenShare(isShort, list: true);
    return;
}

if (args.Contains("--bags"))
{
    BagTables.Cells(hat, isShort);
    BagTables.WholeBags(hat, isShort);
    return;
}

if (args.Contains("--wool"))
{
    WoolTables.Pictures(hat, isShort ? 5 : 20);
    return;
}

if (args.Contains("--colours"))
{
    MatchingTables.Colours(isShort);
    return;
}

if (!args.Contains("--ours"))
{
    MatchingTables.AgainstTheSolver(isShort);
}

MatchingTables.ProvenShare(isShort, list: false);
MatchingTables.Growth(isShort);
MatchingTables.Colours(isShort);
MatchingTables.Memory();
AnsweringTables.WithRepairs(hat, isShort ? 6 : 60);
await AnsweringTables.OverHttpAsync(client, isShort ? 60 : 400);
AnsweringTables.RowPlans(hat);
WoolTables.Pictures(hat, isShort ? 5 : 20);
BagTables.Cells(hat, isShort);
BagTables.WholeBags(hat, isShort);
Kits.Row(hat with { StripeCounts = null }, isShort ? 6 : 20);
Directory.Delete(folder, recursive: true);
