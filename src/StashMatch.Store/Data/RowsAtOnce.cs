using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace StashMatch.Store.Data;

/// <summary>Writes thousands of new rows of one's own in the step under way: one statement a table, made ready once.</summary>
internal static class RowsAtOnce
{
    public static async Task AddAtOnceAsync<T>(this StashContext context, IEnumerable<T> rows, CancellationToken cancel)
        where T : class, IOwned
    {
        var type = context.Model.FindEntityType(typeof(T))!;
        var table = StoreObjectIdentifier.Create(type, StoreObjectType.Table)!.Value;
        List<IProperty> properties = [.. type.GetProperties().Where(p => !(p.IsPrimaryKey() && p.ClrType == typeof(long)))];
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction!.GetDbTransaction();
        var names = properties.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"$p{i}")).ToList();
        command.CommandText = $"INSERT INTO \"{table.Name}\" ({string.Join(", ", properties.Select(p => $"\"{p.GetColumnName(table)}\""))}) VALUES ({string.Join(", ", names)})";
        foreach (var name in names)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            command.Parameters.Add(parameter);
        }

        foreach (var row in rows)
        {
            // What the context sees to where it saves a row itself.
            row.OwnerId = context.OwnerId;
            if (row is IRaced raced)
            {
                raced.Version = Guid.NewGuid();
            }

            for (var i = 0; i < properties.Count; i++)
            {
                var value = properties[i].GetGetter().GetClrValue(row);
                command.Parameters[i].Value = (properties[i].GetTypeMapping().Converter is { } converter ? converter.ConvertToProvider(value) : value) ?? DBNull.Value;
            }

            await command.ExecuteNonQueryAsync(cancel);
        }
    }
}
