using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Gathers everything one person has, in an order that is always the same.</summary>
internal static class EverythingWriter
{
    public static async Task<EverythingJson> GatherAsync(StashContext context, CancellationToken cancel)
    {
        var settings = await context.Settings.FirstOrDefaultAsync(cancel);
        var lines = (await context.Ledger.OrderBy(e => e.Id).ToListAsync(cancel)).ToLookup(e => e.LeftoverId);
        var leftovers = await context.Leftovers.Include(r => r.Picture).OrderBy(r => r.LoggedAt).ThenBy(r => r.PublicId).ToListAsync(cancel);
        var ids = leftovers.ToDictionary(r => r.Id, r => r.PublicId);
        return new EverythingJson
        {
            StashMatch = EverythingJson.Newest,
            Settings = settings is null ? null : new SettingsJson(settings.FirstUnit, Grams.FromMilligrams(settings.ScaleStepMilligrams).Value, Short(settings.AllowancePercent)),
            Calibrations = (await context.Calibrations.OrderBy(c => c.Id).ToListAsync(cancel)).ConvertAll(c => new CalibrationJson(c.From, c.Factor, c.MeasureSpread, c.SwitchedOff, c.At, c.HatId)),
            Hats = (await context.Hats.OrderBy(h => h.SavedAt).ThenBy(h => h.PublicId).ToListAsync(cancel)).ConvertAll(h => new HatJson(h.PublicId, h.SavedAt, Json(HatStore.Describe(h), HatFields.All))),
            Leftovers = leftovers.ConvertAll(r => Write(r, [.. lines[r.Id]])),
            Plans = (await context.Plans.Include(p => p.Promises.OrderBy(r => r.Id)).OrderBy(p => p.SavedAt).ThenBy(p => p.PublicId).ToListAsync(cancel)).ConvertAll(p => Write(p, ids)),
            Kits = (await context.Kits.OrderBy(k => k.SavedAt).ThenBy(k => k.PublicId).ToListAsync(cancel)).ConvertAll(k => new KitJson(k.PublicId, k.SavedAt, Json(KitStore.Describe(k), KitText.Fields))),
            Testers = (await context.Testers.OrderBy(t => t.SavedAt).ThenBy(t => t.PublicId).ToListAsync(cancel)).ConvertAll(t => new TesterJson(t.PublicId, t.HatId, t.SavedAt, TesterStore.Describe(t))),
            Marks = await context.Marks.OrderBy(m => m.Id).Select(m => m.Name).ToListAsync(cancel),
        };
    }

    private static LeftoverJson Write(LeftoverRow row, List<EntryRow> lines) => new()
    {
        Id = row.PublicId,
        Details = SaidInJson.Write(LeftoverFields.Say(row.ToDetails()), LeftoverFields.Fields).ToDictionary(d => d.Key, d => JsonSerializer.SerializeToElement(d.Value), StringComparer.Ordinal),
        Demo = row.IsDemo,
        LoggedAt = row.LoggedAt,
        Picture = row.Picture?.Png,
        Ledger = lines.ConvertAll(l => new EntryJson
        {
            Kind = l.Kind,
            At = l.At,
            Grams = l.Kind switch
            {
                EntryKind.Weighed => Grams.FromMilligrams(l.GrossMilligrams).Value,
                EntryKind.Used => Grams.FromMilligrams(l.UsedMilligrams).Value,
                _ => null,
            },
            TareGrams = l.Kind == EntryKind.Weighed ? Grams.FromMilligrams(l.TareMilligrams).Value : null,
            ScaleStepGrams = l.Kind == EntryKind.Weighed ? Grams.FromMilligrams(l.StepMilligrams).Value : null,
            For = l.For,
            Changes = l.Changes is null ? null : EditedFields.Read(l.Changes),
            Undoes = l.Undoes is { } id ? lines.FindIndex(u => u.Id == id) : null,
        }),
    };

    private static PlanJson Write(PlanRow row, Dictionary<Guid, string> ids) => new()
    {
        Id = row.PublicId,
        Name = row.Name,
        Hat = row.Hat,
        Size = row.Size,
        Stripes = row.Stripes,
        Arrangement = row.Arrangement,
        Question = row.Question,
        Sheet = row.Sheet,
        Reserves = row.Reserves,
        SavedAt = row.SavedAt,
        FinishedAt = row.FinishedAt,
        Parts = [.. row.Promises.Select(p => new PromiseJson(p.LeftoverId is { } id ? ids.GetValueOrDefault(id) : null, p.LeftoverName, p.Part, p.Millimetres))],
    };

    private static JsonElement Json(Said said, IReadOnlyList<Field> fields) => JsonSerializer.SerializeToElement(SaidInJson.Write(said, fields));

    // 1.50 and 1.5 are one number; it is written one way.
    private static decimal Short(decimal value) => value / 1.0000000000000000000000000000m;
}
