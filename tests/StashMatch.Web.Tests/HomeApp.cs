using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace StashMatch.Web.Tests;

/// <summary>The real app with a database of its own, by default without the demo.</summary>
public class HomeApp : WebApplicationFactory<Program>
{
    private readonly string _folder = Directory.CreateTempSubdirectory("stashmatch-web-").FullName;

    protected string Folder => _folder;

    public HttpClient Client => CreateClient(new() { BaseAddress = new Uri("http://127.0.0.1"), AllowAutoRedirect = false });

    protected virtual bool Demo => false;

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Data:Folder", _folder);
        builder.UseSetting("Data:Demo", Demo ? "true" : "false");
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing && Directory.Exists(_folder))
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(_folder, recursive: true);
        }
    }
}

/// <summary>The same with the demo bag in it.</summary>
public sealed class DemoApp : HomeApp
{
    protected override bool Demo => true;
}
