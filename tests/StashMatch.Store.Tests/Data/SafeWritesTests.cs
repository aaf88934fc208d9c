using System.Data;
using System.Data.Common;
using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using StashMatch.Store.Data;
using Xunit;

namespace StashMatch.Store.Tests.Data;

/// <summary>However an opening ends, whoever came in goes out again, and the file can be swapped.</summary>
public sealed class SafeWritesTests
{
    private const int Many = 300;
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Moment.BeforeItIsAsked)]
    [InlineData(Moment.OnTheWayIn)]
    [InlineData(Moment.OnceItIsOpen)]
    public async Task Openings_given_up_by_the_hundred_do_not_hold_up_a_restore(Moment moment)
    {
        var givesUp = new GivesUp(moment);
        await using var shelf = new Shelf(opening: givesUp);
        await shelf.Start.ReadyAsync(Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        var backup = await shelf.Backups.BackUpAsync(Stop);
        await Parallel.ForAsync(0, Many, Stop, async (_, _) =>
        {
            using var leaving = new CancellationTokenSource();
            await using var context = shelf.Open();
            if (moment == Moment.BeforeItIsAsked)
            {
                await leaving.CancelAsync();
            }

            using (givesUp.With(leaving))
            {
                await Assert.ThrowsAnyAsync<OperationCanceledException>(() => context.Leftovers.ToListAsync(leaving.Token));
            }
        });
        await QuickAsync(shelf, backup);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Openings_that_fail_or_are_let_go_of_by_the_hundred_do_not_hold_up_a_restore(bool atOnce)
    {
        var elsewhere = new Elsewhere();
        await using var shelf = new Shelf(opening: elsewhere);
        await shelf.Start.ReadyAsync(Stop);
        await shelf.Leftovers.WeighAsync(Shelf.Moss(), cancel: Stop);
        var backup = await shelf.Backups.BackUpAsync(Stop);
        for (var i = 0; i < Many; i++)
        {
            var context = shelf.Open();
            elsewhere.Nowhere = i % 2 == 0;
            try
            {
                if (atOnce)
                {
                    context.Database.OpenConnection();
                }
                else
                {
                    await context.Database.OpenConnectionAsync(Stop);
                }

                Assert.False(elsewhere.Nowhere);
            }
            catch (SqliteException) when (elsewhere.Nowhere)
            {
                // The file is not there.
            }

            elsewhere.Nowhere = false;
            await context.DisposeAsync();
        }

        await QuickAsync(shelf, backup);
    }

    private static async Task QuickAsync(Shelf shelf, Backup backup)
    {
        await shelf.Leftovers.RemoveAsync("moss", Stop);
        var watch = Stopwatch.StartNew();
        await shelf.Backups.RestoreAsync(backup.Name, Stop).WaitAsync(TimeSpan.FromSeconds(2), Stop);
        Assert.Equal("Moss", Assert.Single(await shelf.Leftovers.ListAsync(Stop)).Name);
        await shelf.Everything.DeleteAsync(backupsToo: false, Stop).WaitAsync(TimeSpan.FromSeconds(2), Stop);
        Assert.Empty(await shelf.Leftovers.ListAsync(Stop));
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(4));
    }

    public enum Moment
    {
        BeforeItIsAsked,
        OnTheWayIn,
        OnceItIsOpen,
    }

    /// <summary>Gives a question up at one moment of its connection's opening.</summary>
    private sealed class GivesUp(Moment moment) : DbConnectionInterceptor
    {
        private readonly AsyncLocal<CancellationTokenSource?> _leaving = new();

        public IDisposable With(CancellationTokenSource leaving)
        {
            _leaving.Value = leaving;
            return new Done(() => _leaving.Value = null);
        }

        public override async ValueTask<InterceptionResult> ConnectionOpeningAsync(
            DbConnection connection, ConnectionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
        {
            switch (moment)
            {
                case Moment.OnTheWayIn when _leaving.Value is { } leaving:
                    await leaving.CancelAsync();
                    break;
                case Moment.OnceItIsOpen when _leaving.Value is { } leaving:
                    connection.StateChange += (_, change) =>
                    {
                        if (change.CurrentState == ConnectionState.Open)
                        {
                            leaving.Cancel();
                        }
                    };
                    break;
                default:
                    break;
            }

            return result;
        }

        private sealed class Done(Action act) : IDisposable
        {
            public void Dispose() => act();
        }
    }

    /// <summary>Sends an opening to a file that is not there.</summary>
    private sealed class Elsewhere : DbConnectionInterceptor
    {
        public bool Nowhere { get; set; }

        public override InterceptionResult ConnectionOpening(DbConnection connection, ConnectionEventData eventData, InterceptionResult result)
        {
            if (Nowhere)
            {
                connection.ConnectionString = "Data Source=/no/such/folder/at/all.db";
            }

            return result;
        }

        public override ValueTask<InterceptionResult> ConnectionOpeningAsync(
            DbConnection connection, ConnectionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default) =>
            ValueTask.FromResult(ConnectionOpening(connection, eventData, result));
    }
}
