using System.Collections.Concurrent;
using System.Data;
using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace StashMatch.Store.Data;

/// <summary>Through the gate, then on each open: write-ahead log, full synchronous, foreign keys, five seconds' patience. Where the disk cannot be written, the file is opened as one nobody changes.</summary>
public sealed class SafeWrites(StoreGate gate, StorePlace place) : DbConnectionInterceptor
{
    private const string Pragmas = "PRAGMA busy_timeout=5000; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;";
    private readonly ConcurrentDictionary<DbConnection, StateChangeEventHandler> _inside = new();

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

    public override void ConnectionFailed(DbConnection connection, ConnectionErrorEventData eventData) => Left(connection);

    public override Task ConnectionFailedAsync(DbConnection connection, ConnectionErrorEventData eventData, CancellationToken cancellationToken = default)
    {
        Left(connection);
        return Task.CompletedTask;
    }

    private InterceptionResult Entered(DbConnection connection, InterceptionResult result)
    {
        if (place.ReadingOnly)
        {
            connection.ConnectionString = StoreFile.Unchanging(place.File);
        }

        void Changed(object? sender, StateChangeEventArgs change)
        {
            if (change.CurrentState == ConnectionState.Closed)
            {
                Left(connection);
            }
        }

        _inside[connection] = Changed;
        connection.StateChange += Changed;
        return result;
    }

    private void Left(DbConnection connection)
    {
        if (_inside.TryRemove(connection, out var changed))
        {
            connection.StateChange -= changed;
            gate.Leave();
        }
    }
}
