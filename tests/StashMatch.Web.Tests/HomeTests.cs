using Microsoft.Extensions.Configuration;
using Xunit;

namespace StashMatch.Web.Tests;

public sealed class HomeTests
{
    [Theory]
    [InlineData("http://127.0.0.1:5170")]
    [InlineData("http://localhost:5170")]
    [InlineData("http://[::1]:5170;https://127.0.0.1:5171")]
    [InlineData("")]
    public void This_machine_alone_may_come_in(string urls) => Assert.Null(Home.Refusal(With(("urls", urls))));

    [Theory]
    [InlineData("http://0.0.0.0:5170")]
    [InlineData("http://*:5170")]
    [InlineData("http://+:5170")]
    [InlineData("http://[::]:5170")]
    [InlineData("http://192.168.1.20:5170")]
    [InlineData("http://127.0.0.1:5170; http://example.org")]
    [InlineData("nonsense")]
    public void Any_other_address_is_refused_and_the_refusal_says_how(string urls)
    {
        var refusal = Home.Refusal(With(("urls", urls)));
        Assert.Contains("Home:Contained=true", refusal, StringComparison.Ordinal);
        Assert.Contains("http://127.0.0.1:5170", refusal, StringComparison.Ordinal);
        Assert.Null(Home.Refusal(With(("urls", urls), ("Home:Contained", "true"))));
    }

    [Fact]
    public void Ports_and_endpoints_set_by_other_names_are_looked_at_too()
    {
        Assert.NotNull(Home.Refusal(With(("HTTP_PORTS", "8080"))));
        Assert.NotNull(Home.Refusal(With(("Kestrel:Endpoints:Open:Url", "http://0.0.0.0:80"))));
        Assert.Null(Home.Refusal(With(("Kestrel:Endpoints:Near:Url", "http://127.0.0.1:80"))));
    }

    private static IConfiguration With(params (string Key, string Value)[] settings) =>
        new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => s.Key, s => (string?)s.Value, StringComparer.Ordinal)).Build();
}
