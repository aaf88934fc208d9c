using System.Text.Json;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>A change to what a leftover is. A field that is not there stays as it is; null clears it.</summary>
public sealed record LeftoverChangeBody
{
    public string? Name { get; init; }

    /// <summary>The two letters on its tag; null for a pair made from the name.</summary>
    public string? Code { get; init; }

    public LabelBody? Label { get; init; }

    public string? RatioFrom { get; init; }

    public int? WeightClass { get; init; }

    public string? Fibre { get; init; }

    public string? Colour { get; init; }

    public bool? Singles { get; init; }

    public bool? Superwash { get; init; }

    public string? Lot { get; init; }

    public string? Care { get; init; }

    public string? Bag { get; init; }

    public string? KeptIn { get; init; }

    public string? KeptBackFor { get; init; }

    public bool? NotForHats { get; init; }

    public bool? Crumb { get; init; }

    public string? Note { get; init; }

    /// <summary>The version that was read: if it is another by now, nothing is changed. Left out: whatever it is by now.</summary>
    public Guid? Version { get; init; }
}

/// <summary>PATCH /api/v1/leftovers/{id}.</summary>
public static class LeftoverChange
{
    private static readonly string[] Weighed = ["grams", "tareGrams", "scaleStepGrams"];

    public static async Task<IResult> ChangeAsync(string id, HttpRequest request, LeftoverStore store, CancellationToken cancel)
    {
        var (document, unread) = await Body.ReadAsync<JsonDocument>(request, cancel);
        if (document is null)
        {
            return unread!;
        }

        using var said = document;
        var errors = new FieldErrors();
        foreach (var weighed in Weighed.Where(w => said.RootElement.TryGetProperty(w, out _)))
        {
            errors.Add(weighed, "is not changed: weigh it again, with POST to …/weighings");
        }

        if (errors.Any)
        {
            return errors.Problem();
        }

        var (body, refused) = Body.Read<LeftoverChangeBody>(said.RootElement);
        if (body is null)
        {
            return refused!;
        }

        if (await store.FindAsync(id, cancel) is not { } logged)
        {
            return LeftoverRoutes.NotThere();
        }

        var named = said.RootElement.EnumerateObject().Select(p => p.Name).ToHashSet(StringComparer.Ordinal);
        var change = Read(body, named, logged, errors);
        if (!errors.Any)
        {
            change(logged.ToDetails()).Check(errors);
        }

        if (errors.Any)
        {
            return errors.Problem();
        }

        var wrong = await store.EditAsync(id, change, body.Version, cancel);
        return wrong.ByField switch
        {
            { Count: 0 } => await LeftoverRoutes.ShowAsync(store, id, StatusCodes.Status200OK, cancel),
            var fields when fields.ContainsKey("id") => LeftoverRoutes.NotThere(),
            var fields when fields.ContainsKey("version") => wrong.Conflict("The leftover was changed meanwhile: read it again."),
            var fields when fields.ContainsKey("code") => wrong.Conflict("Another tag has those two letters."),
            _ => wrong.Problem(),
        };
    }

    private static Func<LeftoverDetails, LeftoverDetails> Read(LeftoverChangeBody body, HashSet<string> named, LoggedLeftover logged, FieldErrors errors)
    {
        var source = body.RatioFrom is null ? null : errors.OneOf("ratioFrom", body.RatioFrom, LeftoverBody.Sources);
        var ratio = body.Label is null ? null : LeftoverBody.ReadLabel(errors, "", body.Label, source ?? RatioSource.Printed);
        if (named.Contains("ratioFrom") && (named.Contains("label") ? body.Label : (object?)logged.Ratio) is null && body.RatioFrom is not null)
        {
            errors.Add("ratioFrom", "needs a label, and there is none");
        }

        if (body.WeightClass is < 0 or > 7)
        {
            errors.Add("weightClass", "must be a whole number from 0 to 7");
        }

        if (!FibreBlend.TryParse(body.Fibre, out var fibre, out var wrong))
        {
            errors.Add("fibre", wrong);
        }

        YarnColour? colour = null;
        if (body.Colour is not null)
        {
            if (NamedColour.TryRead(body.Colour, out var read, out wrong))
            {
                colour = read;
            }
            else
            {
                errors.Add("colour", wrong);
            }
        }

        Care? care = null;
        if (body.Care is not null && !Care.TryParse(body.Care, out care, out wrong))
        {
            errors.Add("care", wrong);
        }

        T Or<T>(string field, T now, T before) => named.Contains(field) ? now : before;
        return d => d with
        {
            Name = Or("name", body.Name ?? "", d.Name),
            Code = Or("code", body.Code, d.Code),
            Ratio = named.Contains("label") ? ratio : source is { } from && d.Ratio is { } r ? new LabelRatio(r.Mass, r.MassUnit, r.Length, r.LengthUnit, from) : d.Ratio,
            Class = Or("weightClass", (WeightClass?)body.WeightClass, d.Class),
            Fibre = Or("fibre", fibre ?? FibreBlend.Unknown, d.Fibre),
            Colour = Or("colour", colour, d.Colour),
            Make = Or("singles", body.Singles == true ? YarnMake.Singles : YarnMake.Plied, d.Make),
            Superwash = Or("superwash", body.Superwash == true, d.Superwash),
            Lot = Or("lot", body.Lot, d.Lot),
            Care = Or("care", care, d.Care),
            Bag = Or("bag", body.Bag, d.Bag),
            KeptIn = Or("keptIn", body.KeptIn, d.KeptIn),
            KeptBackFor = Or("keptBackFor", body.KeptBackFor, d.KeptBackFor),
            NotForHats = Or("notForHats", body.NotForHats == true, d.NotForHats),
            Crumb = Or("crumb", body.Crumb == true, d.Crumb),
            Note = Or("note", body.Note, d.Note),
        };
    }
}
