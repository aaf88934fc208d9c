using System.Data.Common;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

public sealed class FewQueriesTests : IDisposable
{
    private readonly CountingApp _app = new();

    [Fact]
    public async Task The_list_asks_the_store_three_times_at_most_however_long_it_is()
    {
        using var client = _app.Client;
        var store = _app.Services.GetRequiredService<LeftoverStore>();
        foreach (var more in new[] { 2, 60 })
        {
            for (var i = 0; i < more; i++)
            {
                await store.WeighAsync(new NewLeftover($"Ball {i}", new Weighing(Grams.From(20), default, Grams.From(1)), null), cancel: TestContext.Current.CancellationToken);
            }

            _app.Queries = 0;
            var page = await client.GetStringAsync("/leftovers", TestContext.Current.CancellationToken);
            Assert.Contains("Ball", page, StringComparison.Ordinal);
            Assert.InRange(_app.Queries, 1, 3);
        }
    }

    public void Dispose() => _app.Dispose();

    private sealed class CountingApp : HomeApp
    {
        private readonly Counter _counter = new();

        public int Queries
        {
            get => _counter.Count;
            set => _counter.Count = value;
        }

        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.ConfigureTestServices(s => s.ConfigureDbContext<StashContext>(o => o.AddInterceptors(_counter)));
        }
    }

    private sealed class Counter : DbCommandInterceptor
    {
        public int Count { get; set; }

        public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
        {
            Count++;
            return base.ReaderExecutingAsync(command, eventData, result, cancellationToken);
        }
    }
}
