using System.Globalization;
using CsvHelper;
using Xunit;

namespace StashMatch.Knitting.Tests;

/// <summary>A table of expected values with its source in its first line; asserts how many rows it read.</summary>
internal sealed class CheckTable
{
    private CheckTable(IReadOnlyList<Row> rows) => Rows = rows;

    public IReadOnlyList<Row> Rows { get; }

    public static CheckTable Read(string name, int rows)
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", name + ".csv"));
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { CommentPrefix = '#' });
        var list = new List<Row>();
        while (csv.Read())
        {
            list.Add(new Row(csv.Headers.ToArray().ToDictionary(h => h, h => csv.GetString(h), StringComparer.Ordinal)));
        }

        Assert.Equal(rows, list.Count);
        return new CheckTable(list);
    }

    internal sealed record Row(IReadOnlyDictionary<string, string> Fields)
    {
        public string this[string field] => Fields[field];

        public decimal Number(string field) => decimal.Parse(Fields[field], CultureInfo.InvariantCulture);

        public double Real(string field) => double.Parse(Fields[field], CultureInfo.InvariantCulture);
    }
}
