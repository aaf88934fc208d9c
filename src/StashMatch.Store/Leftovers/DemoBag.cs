using System.Globalization;
using CsvHelper;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>The invented demo bag: loaded once into an empty store, gone for good when removed.</summary>
public sealed class DemoBag(IDbContextFactory<StashContext> contexts, TimeProvider clock)
{
    /// <summary>What the bag is called.</summary>
    public const string Name = "The bread bin";

    private const string Loaded = "demo loaded";

    /// <summary>Loads the demo, all of it or nothing, unless it was loaded before or something else is logged already.</summary>
    public async Task LoadOnceAsync(CancellationToken cancel = default)
    {
        // Looked up first: a start with nothing to load writes nothing.
        await using (var context = await contexts.CreateDbContextAsync(cancel))
        {
            if (await IsDoneAsync(context, cancel))
            {
                return;
            }
        }

        await contexts.WriteAsync(
            async context =>
            {
                if (await IsDoneAsync(context, cancel))
                {
                    return false;
                }

                // Newest first is the order of the table: the last row is logged first, a tick apart.
                var (tags, at) = (new Tags(), clock.GetUtcNow());
                context.Leftovers.AddRange(Read().Reverse().Select((leftover, i) => leftover.ToRow(tags, at.AddTicks(i))));
                context.Marks.Add(new MarkRow { Name = Loaded });
                return true;
            },
            cancel);
    }

    /// <summary>Loads the demo leftovers that are not there, however often they were removed.</summary>
    public Task LoadAgainAsync(CancellationToken cancel = default) => contexts.WriteAsync(
        async context =>
        {
            var (tags, at) = (await Tags.TakenAsync(context, cancel), clock.GetUtcNow());
            foreach (var gone in await context.Leftovers.Where(r => r.IsDemo && r.RemovedAt != null).ToListAsync(cancel))
            {
                (gone.RemovedAt, gone.Code) = (null, tags.TakeCode(gone.Name, gone.Code));
            }

            context.Leftovers.AddRange(Read().Where(l => !tags.IsTaken(l.Id!)).Reverse().Select((leftover, i) => leftover.ToRow(tags, at.AddTicks(i))));
            return true;
        },
        cancel);

    /// <summary>Removes every demo leftover; returns how many there were.</summary>
    public Task<int> RemoveAsync(CancellationToken cancel = default) =>
        contexts.WriteAsync(context => context.Leftovers.Where(r => r.IsDemo).ExecuteDeleteAsync(cancel), cancel);

    /// <summary>Whether any demo leftover is there.</summary>
    public async Task<bool> IsHereAsync(CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context.Leftovers.AnyAsync(r => r.IsDemo && r.RemovedAt == null, cancel);
    }

    /// <summary>The demo leftovers in the order of their table.</summary>
    public static IEnumerable<NewLeftover> Read()
    {
        using var stream = typeof(DemoBag).Assembly.GetManifestResourceStream("demo-leftovers.csv")
            ?? throw new InvalidOperationException("The demo bag is not built in.");
        using var text = new StreamReader(stream);
        using var csv = CsvReader.FromText(text.ReadToEnd(), new CsvReaderOptions());
        var list = new List<NewLeftover>();
        while (csv.Read())
        {
            decimal Number(string column) => decimal.Parse(csv.GetString(column), CultureInfo.InvariantCulture);
            string? Text(string column) => csv.GetString(column) is { Length: > 0 } value ? value : null;
            var source = Enum.TryParse<RatioSource>(Text("ratio_from"), ignoreCase: true, out var from) ? from : RatioSource.Printed;
            list.Add(new NewLeftover(
                csv.GetString("name"),
                new Weighing(Grams.From(Number("weighed_g")), Grams.From(Number("empty_g")), Grams.From(Number("scale_step_g"))),
                LabelText.TryParse(Text("label"), source, out var ratio, out _) ? ratio : null)
            {
                Id = csv.GetString("id"),
                Class = Text("weight_class") is { } number ? (WeightClass)int.Parse(number, CultureInfo.InvariantCulture) : null,
                Fibre = FibreBlend.TryParse(Text("fibre"), out var fibre, out var wrong) ? fibre : throw new InvalidOperationException(wrong),
                Colour = YarnColour.TryParse(Text("colour"), out var colour, out _) ? colour : null,
                Make = Text("singles") == "yes" ? YarnMake.Singles : YarnMake.Plied,
                Lot = Text("set"),
                KeptIn = Text("kept_in"),
                Note = Text("note"),
                Bag = Name,
                IsDemo = true,
            });
        }

        return list;
    }

    private static async Task<bool> IsDoneAsync(StashContext context, CancellationToken cancel) =>
        await context.Marks.AnyAsync(m => m.Name == Loaded, cancel) || await context.Leftovers.AnyAsync(cancel);
}
