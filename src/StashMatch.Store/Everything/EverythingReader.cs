using System.Text.Json;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Reads everything back: rows ready to be added to an empty store, or what is wrong, by field.</summary>
internal sealed class EverythingReader(FieldErrors errors, LedgerReader ledgers)
{
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Guid> _leftovers = new(StringComparer.Ordinal);

    /// <summary>The rows, leftovers with their ledgers and plans with their promises; what is wrong goes to the errors.</summary>
    public IEnumerable<object> Read(EverythingJson all)
    {
        if (all.StashMatch is not EverythingJson.Newest)
        {
            errors.Add("stashMatch", all.StashMatch > EverythingJson.Newest ? "is a newer version's file" : $"must be {EverythingJson.Newest}");
            yield break;
        }

        if (all.Settings is { } settings && Read(settings) is { } settingsRow)
        {
            yield return settingsRow;
        }

        foreach (var row in Each("calibrations", all.Calibrations, Read).Concat<object>(Each("hats", all.Hats, Read))
            .Concat(Each("leftovers", all.Leftovers, Read)).Concat(Each("plans", all.Plans, Read))
            .Concat(Each("kits", all.Kits, Read)).Concat(Each("testers", all.Testers, Read))
            .Concat(Each("marks", all.Marks, (m, at) => Unique("mark", at, "", m) ? new MarkRow { Name = m } : null)))
        {
            yield return row;
        }
    }

    // A file with a great many faults is told of the first ones.
    private IEnumerable<TRow> Each<TJson, TRow>(string field, IReadOnlyList<TJson?>? list, Func<TJson, string, TRow?> read)
        where TJson : class
        where TRow : class
    {
        for (var i = 0; i < (list?.Count ?? 0) && errors.ByField.Count < 50; i++)
        {
            if (list![i] is not { } json)
            {
                errors.Add($"{field}[{i}]", "is missing");
            }
            else if (read(json, $"{field}[{i}].") is { } row)
            {
                yield return row;
            }
        }
    }

    private bool Unique(string kind, string at, string field, string? id)
    {
        var name = (at + field).TrimEnd('.');
        var before = errors.Any;
        errors.CheckText(name, id, 80);
        if (string.IsNullOrWhiteSpace(id))
        {
            errors.Add(name, "is missing");
        }
        else if (!_ids.Add($"{kind} {id}"))
        {
            errors.Add(name, "is there twice");
        }

        return before || !errors.Any;
    }

    private DateTimeOffset Time(string field, DateTimeOffset? at)
    {
        if (at is null)
        {
            errors.Add(field, "is missing");
        }

        return at ?? default;
    }

    private SettingsRow? Read(SettingsJson json)
    {
        if (json.ScaleStepGrams is not (>= 0.001m and <= 100) || json.AllowancePercent is not (>= 0 and <= 100) || json.FirstUnit is null)
        {
            errors.Add("settings", "must have firstUnit, scaleStepGrams from 0.001 to 100 and allowancePercent from 0 to 100");
            return null;
        }

        return new SettingsRow { FirstUnit = json.FirstUnit.Value, ScaleStepMilligrams = Grams.From(json.ScaleStepGrams.Value).Milligrams, AllowancePercent = json.AllowancePercent.Value };
    }

    private CalibrationRow Read(CalibrationJson json, string at)
    {
        errors.CheckText($"{at}from", json.From, 200);
        if (string.IsNullOrWhiteSpace(json.From))
        {
            errors.Add($"{at}from", "is missing");
        }

        errors.Number($"{at}factor", json.Factor, 0, 1_000, leastItself: false);
        errors.Number($"{at}measureSpread", json.MeasureSpread, 0, 1_000);
        if (json.Hat is not null)
        {
            Unique("calibration of hat", at, "hat", json.Hat);
        }

        return new CalibrationRow { From = json.From ?? "", HatId = json.Hat, Factor = json.Factor ?? 1, MeasureSpread = json.MeasureSpread ?? 0, SwitchedOff = json.SwitchedOff ?? false, At = Time($"{at}at", json.At) };
    }

    private HatRow? Read(HatJson json, string at)
    {
        Unique("hat", at, "id", json.Id);
        if (Described(json.Hat, HatFields.All, $"{at}hat") is { } hat && HatText.Read(hat) is { } read)
        {
            return HatStore.ToRow(json.Id ?? "", read, hat.Said, Time($"{at}savedAt", json.SavedAt));
        }

        return null;
    }

    private KitRow? Read(KitJson json, string at)
    {
        Unique("kit", at, "id", json.Id);
        if (Described(json.Kit, KitText.Fields, $"{at}kit") is { } kit && KitText.Read(kit) is { } read)
        {
            return KitStore.ToRow(json.Id ?? "", read.Name, kit.Said, Time($"{at}savedAt", json.SavedAt));
        }

        return null;
    }

    private Reading? Described(JsonElement? json, IReadOnlyList<Field> fields, string at)
    {
        if (json is { } described)
        {
            return new Reading(SaidInJson.Read(described, fields, errors, $"{at}."), errors, $"{at}.");
        }

        errors.Add(at, "is missing");
        return null;
    }

    // A sheet is read against its hat when it is used; here only its size is bounded.
    private TesterRow? Read(TesterJson json, string at)
    {
        Unique("tester", at, "id", json.Id);
        if (json.Hat is null || json.Sheet is not { Parts.Count: <= 200 } sheet)
        {
            errors.Add($"{at}{(json.Hat is null ? "hat" : "sheet")}", "is missing, or has over 200 parts");
            return null;
        }

        foreach (var (field, text) in new[] { ("tester", sheet.Tester), ("size", sheet.Size), ("label", sheet.Label), ("changes", sheet.Changes) }.Concat(sheet.Parts.Select(p => ("part", p?.Part))))
        {
            errors.CheckText($"{at}sheet.{field}", text, 500);
        }

        return TesterStore.ToRow(json.Id ?? "", json.Hat, sheet, Time($"{at}savedAt", json.SavedAt));
    }

    private LeftoverRow? Read(LeftoverJson json, string at)
    {
        Unique("leftover", at, "id", json.Id);
        var said = SaidInJson.Read(JsonSerializer.SerializeToElement(json.Details ?? new Dictionary<string, JsonElement>(StringComparer.Ordinal)), LeftoverFields.Fields, errors, at);
        var details = LeftoverFields.Read(new Reading(said, errors, at));
        if (details is { Code: null })
        {
            errors.Add($"{at}code", "is missing");
        }

        if (details?.Code is null || json.Id is null)
        {
            return null;
        }

        if (json.Picture is { } png && !PictureStore.CanKeep(png))
        {
            errors.Add($"{at}picture", "must be a PNG of at most 16 KB");
        }

        var row = new LeftoverRow
        {
            Id = Guid.NewGuid(),
            PublicId = json.Id,
            Name = "",
            Code = details.Code,
            Fibre = "",
            IsDemo = json.Demo ?? false,
            LoggedAt = Time($"{at}loggedAt", json.LoggedAt),
            Picture = json.Picture is null ? null : new PictureRow { Png = json.Picture },
        };
        row.Take(details);
        _leftovers[json.Id] = row.Id;
        return ledgers.ReadInto(row, json.Ledger, $"{at}ledger") ? row : null;
    }

    private PlanRow? Read(PlanJson json, string at)
    {
        Unique("plan", at, "id", json.Id);
        Unique("plan name", at, "name", json.Name?.Trim());
        var parts = json.Parts ?? [];
        var wrong = new FieldErrors();
        new NewPlan(json.Name ?? "", json.Hat ?? "", json.Size ?? "", json.Stripes ?? -1, json.Arrangement ?? "", [.. parts.Select(p => new PlannedPart(p?.Leftover ?? "gone", p?.Part ?? "", p?.Millimetres ?? 0))])
        {
            Question = json.Question,
        }.Check(wrong);
        wrong.CheckText("sheet", json.Sheet, NewPlan.MostJson);
        for (var i = 0; i < parts.Count; i++)
        {
            wrong.CheckText($"parts[{i}].name", parts[i]?.Name, 80);
            if (parts[i]?.Name is null || (parts[i]?.Leftover is { } id && !_leftovers.ContainsKey(id)))
            {
                wrong.Add($"parts[{i}].leftover", "is none of the leftovers");
            }
        }

        foreach (var (field, messages) in wrong.ByField)
        {
            errors.Add(at + field, messages[0]);
        }

        if (wrong.Any)
        {
            return null;
        }

        var row = new PlanRow
        {
            Id = Guid.NewGuid(),
            PublicId = json.Id ?? "",
            Name = json.Name!.Trim(),
            Hat = json.Hat!,
            Size = json.Size!,
            Stripes = json.Stripes!.Value,
            Arrangement = json.Arrangement!,
            Question = json.Question,
            Sheet = json.Sheet,
            Reserves = json.Reserves ?? false,
            SavedAt = Time($"{at}savedAt", json.SavedAt),
            FinishedAt = json.FinishedAt,
        };
        foreach (var part in parts)
        {
            row.Promises.Add(new PromiseRow { PlanId = row.Id, LeftoverId = part!.Leftover is { } id ? _leftovers[id] : null, LeftoverName = part.Name!, Part = part.Part!, Millimetres = part.Millimetres!.Value });
        }

        return row;
    }
}
