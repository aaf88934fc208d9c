using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Xunit;

namespace StashMatch.Web.Tests;

/// <summary>What taste would lose: the rules of the house.</summary>
public sealed partial class HouseRulesTests
{
    private static readonly string[] TopLevel =
        ["README.md", "DEVELOPERS.md", "StashMatch.sln", "src", "tests", "seed-data", "wwwroot-assets", "docker-compose.yml", "global.json", "Directory.Build.props", "Directory.Packages.props"];

    private static readonly string[] NoSuchFolders = ["Helpers", "Utils", "Utilities", "Services", "Common", "Shared", "Managers", "Core", "Domain", "Application", "Infrastructure"];

    private static readonly string[] SourceEndings = [".cs", ".razor", ".css", ".js"];

    [Fact]
    public void Knitting_knows_nothing_but_the_system()
    {
        foreach (var name in typeof(Knitting.Quantities.Metres).Assembly.GetReferencedAssemblies())
        {
            Assert.True(name.Name!.StartsWith("System.", StringComparison.Ordinal) || name.Name is "System" or "netstandard", name.Name);
        }
    }

    [Fact]
    public void No_part_of_the_program_calls_a_reader_of_pictures()
    {
        foreach (var ours in new[] { typeof(Program), typeof(Store.LeftoverStore), typeof(Pictures.PixelBlock), typeof(Knitting.Quantities.Metres) })
        {
            Assert.NotEmpty(Pictures.Tests.CalledMembers.In(ours.Assembly.Location));
            Assert.Empty(Pictures.Tests.CalledMembers.OfPictureReaders(ours.Assembly.Location));
        }
    }

    [Fact]
    public void The_house_has_the_rooms_it_should_and_no_others()
    {
        var strangers = Directory.GetFileSystemEntries(Root()).Select(Path.GetFileName).OfType<string>()
            .Where(n => n[0] != '.' && !TopLevel.Contains(n, StringComparer.Ordinal) && n is not ("artifacts" or "TestResults"));
        Assert.Empty(strangers);
        Assert.DoesNotContain(
            Files("*").Select(f => Path.GetRelativePath(Root(), f)),
            f => f.Split(Path.DirectorySeparatorChar).SkipLast(1).Any(p => NoSuchFolders.Contains(p, StringComparer.Ordinal)));
    }

    [Fact]
    public void No_file_is_longer_than_400_lines()
    {
        var files = Files("*").Where(f => SourceEndings.Contains(Path.GetExtension(f), StringComparer.Ordinal)).ToList();
        Assert.True(files.Count > 80);
        Assert.DoesNotContain(files, f => !f.Contains("Migrations", StringComparison.Ordinal) && File.ReadLines(f).Count() > 400);
    }

    [Fact]
    public void Every_row_of_the_seed_data_has_a_source()
    {
        var rows = 0;
        foreach (var file in Directory.GetFiles(Path.Combine(Root(), "seed-data"), "*.json"))
        {
            using var json = System.Text.Json.JsonDocument.Parse(File.ReadAllText(file));
            foreach (var row in json.RootElement.EnumerateArray())
            {
                Assert.NotEqual("", row.GetProperty("source").GetString());
                rows++;
            }
        }

        foreach (var line in File.ReadLines(Path.Combine(Root(), "seed-data", "demo-leftovers.csv")).Skip(1))
        {
            Assert.EndsWith(",invented", line, StringComparison.Ordinal);
            rows++;
        }

        Assert.True(rows > 60);
    }

    [Fact]
    public void No_screen_speaks_the_language_of_a_back_office()
    {
        var readme = File.ReadAllText(Path.Combine(Root(), "README.md")).Replace("--project", "", StringComparison.Ordinal);
        foreach (var text in Files("*.razor").Select(File.ReadAllText).Append(readme))
        {
            Assert.DoesNotMatch(BackOffice(), text);
        }
    }

    [Fact]
    public void A_page_folder_never_uses_another()
    {
        var pages = Directory.GetDirectories(Path.Combine(Root(), "src", "StashMatch.Web", "Pages"));
        Assert.NotEmpty(pages);
        foreach (var page in pages)
        {
            var others = pages.Where(p => p != page).Select(p => "StashMatch.Web.Pages." + Path.GetFileName(p)).ToList();
            foreach (var file in Directory.GetFiles(page))
            {
                var text = File.ReadAllText(file);
                Assert.DoesNotContain(others, o => text.Contains(o, StringComparison.Ordinal));
            }
        }
    }

    private static IEnumerable<string> Files(string pattern) => new[] { "src", "tests", "seed-data", "wwwroot-assets" }
        .SelectMany(d => Directory.EnumerateFiles(Path.Combine(Root(), d), pattern, SearchOption.AllDirectories))
        .Where(f => !Ignored().IsMatch(f));

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));

    [GeneratedRegex(@"[\\/](?:bin|obj|App_Data|wwwroot|TestResults)[\\/]", RegexOptions.None, 1000)]
    private static partial Regex Ignored();

    [GeneratedRegex(@"\b(?:inventory|sku|allocat\w*|solv\w*|optimi[sz]\w*|fade|project)\b", RegexOptions.IgnoreCase, 1000)]
    private static partial Regex BackOffice();
}
