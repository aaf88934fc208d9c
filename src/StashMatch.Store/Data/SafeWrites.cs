using System.Collections.Concurrent;
using System.Data;
using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace StashMatch.Store.Data;

/// <summary>Through the gate, then on each open: write-ahead log, full synchronous, foreign keys, five seconds' patience. Where the disk cannot be written, the file is opened as one nobody changes.</summary>
public sealed class SafeWrites(StoreGate gate, StorePlace place) : DbConnectionInterceptor
{
    private const string Pragmas = "PRAGMA busy_timeout=5000; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;";
    private readonly ConcurrentDictionary<DbConnection, bool> _inside = new();

    public override InterceptionResult ConnectionOpening(DbConnection connection, ConnectionEventData eventData, InterceptionResult result)
    {
        gate.EnterAsync(CancellationToken.None).GetAwaiter().GetResult();
        return Entered(connection, result);
    }

    public override async ValueTask<InterceptionResult> ConnectionOpeningAsync(
        DbConnection connection, ConnectionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
    {
        await gate.EnterAsync(cancellationToken);
        return Entered(connection, result);
    }

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        ArgumentNullException.ThrowIfNull(connection);
        if (!place.ReadingOnly)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            command.ExecuteNonQuery();
        }
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(connection);
        if (!place.ReadingOnly)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }

    public override void ConnectionFailed(DbConnection connection, ConnectionErrorEventData eventData) => GivenUp(connection);

    public override Task ConnectionFailedAsync(DbConnection connection, ConnectionErrorEventData eventData, CancellationToken cancellationToken = default)
    {
        GivenUp(connection);
        return Task.CompletedTask;
    }

    public override void ConnectionCanceled(DbConnection connection, ConnectionEndEventData eventData) => GivenUp(connection);

    public override Task ConnectionCanceledAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        GivenUp(connection);
        return Task.CompletedTask;
    }

    private InterceptionResult Entered(DbConnection connection, InterceptionResult result)
    {
        if (_inside.TryAdd(connection, true))
        {
            connection.StateChange += Changed;
            connection.Disposed += Disposed;
        }
        else
        {
            // It never went out after an earlier opening: one stay is enough.
            gate.Leave();
        }

        if (place.ReadingOnly)
        {
            connection.ConnectionString = StoreFile.Unchanging(place.File);
        }

        return result;
    }

    private void Changed(object? sender, StateChangeEventArgs change)
    {
        if (change.CurrentState == ConnectionState.Closed)
        {
            Left((DbConnection)sender!);
        }
    }

    private void Disposed(object? sender, EventArgs e) => Left((DbConnection)sender!);

    // Given up or failed after the file was open, it is still open: nobody may be at the file who is not in.
    private void GivenUp(DbConnection connection)
    {
        connection.Close();
        Left(connection);
    }

    private void Left(DbConnection connection)
    {
        if (_inside.TryRemove(connection, out _))
        {
            connection.StateChange -= Changed;
            connection.Disposed -= Disposed;
            gate.Leave();
        }
    }
}
