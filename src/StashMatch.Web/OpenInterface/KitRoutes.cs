using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.OpenInterface;

/// <summary>POST /api/v1/kits/check: stores nothing.</summary>
public static class KitRoutes
{
    private const int MostCells = 2_000;
    private const int MostSizesOfSkein = 8;

    public static async Task<IResult> CheckAsync(HttpRequest request, HatReader hats, CancellationToken cancel)
    {
        var (body, refused) = await Body.ReadAsync<KitCheckBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var hat = await hats.ReadAsync(body.Hat, errors, cancel);
        var question = ReadQuestion(body, hat, errors);
        var kit = new Kit("kit", ReadSkeins(body.Skeins, errors));
        var from = ReadSizes(body.SmallestFrom, errors);
        if (body.Skeins is null && body.SmallestFrom is null)
        {
            errors.Add("skeins", "is missing");
        }

        if (question is null || errors.Any)
        {
            return errors.Problem();
        }

        var cells = body.Skeins is null ? [] : KitCheck.Of(question, [kit], cancel)[0];
        var smallest = from.Count == 0 ? null : SmallestKits.Find(
            body.Arrangements is null ? question with { Arrangements = [Arrangement.OwnColours] } : question, from, cancel);
        return Results.Json(
            new KitCheckAnswer(question.AllowancePercent, [.. cells.Select(ToBody)], from.Count == 0 ? null : ToBody(smallest, body.SmallestFrom!), [.. KitCheck.LeftOut(kit, hat!).Select(s => s.Skein.Name)]),
            Body.Whole);
    }

    private static KitQuestion? ReadQuestion(KitCheckBody body, Hat? hat, FieldErrors errors)
    {
        var allowance = errors.Number("allowancePercent", body.AllowancePercent ?? 10, 0, 100);
        var lightest = body.LightestPercent is null ? null : errors.Number("lightestPercent", body.LightestPercent, 0, 90);
        var counts = body.StripeCounts;
        for (var i = 0; i < (counts?.Count ?? 0) && i < 100; i++)
        {
            if (counts![i] is < 1 or > 24 || counts.Take(i).Contains(counts[i]))
            {
                errors.Add($"stripeCounts[{i}]", "must be a whole number from 1 to 24, each once");
            }
        }

        if (counts is { Count: > 24 })
        {
            errors.Add("stripeCounts", "must be at most 24");
        }

        var sizes = body.Sizes?.Take(100).ToList();
        for (var i = 0; hat is not null && i < (sizes?.Count ?? 0); i++)
        {
            if (!hat.SizeNames.Contains(sizes![i], StringComparer.Ordinal) || sizes.IndexOf(sizes[i]) < i)
            {
                errors.Add($"sizes[{i}]", $"must be one of {string.Join(", ", hat.SizeNames)}, each once");
            }
        }

        if (body.Sizes is { Count: > 100 })
        {
            errors.Add("sizes", "must be at most 100");
        }

        var arrangements = new List<Arrangement>();
        for (var i = 0; i < Math.Min(body.Arrangements?.Count ?? 0, 10); i++)
        {
            if (errors.OneOf($"arrangements[{i}]", body.Arrangements![i], Names.All<Arrangement>()) is { } named)
            {
                arrangements.Add(named);
            }
        }

        if (body.Arrangements is { Count: > 10 } || arrangements.Distinct().Count() != arrangements.Count)
        {
            errors.Add("arrangements", "must name each arrangement once");
        }

        if (hat is null || errors.Any)
        {
            return null;
        }

        var question = new KitQuestion(hat, sizes?.OfType<string>().ToList() ?? hat.SizeNames, counts, body.Arrangements is null ? KitQuestion.UsualArrangements : arrangements)
        {
            AllowancePercent = allowance!.Value,
            LightestPercent = lightest,
        };
        if (question.Cells > MostCells)
        {
            errors.Add("sizes", $"times stripe counts and arrangements come to {question.Cells} cells; ask for at most {MostCells} at once");
        }

        return question;
    }

    private static List<KitSkein> ReadSkeins(IReadOnlyList<KitSkeinBody?>? bodies, FieldErrors errors)
    {
        var skeins = new List<KitSkein>();
        if (bodies is { Count: > KitDescriptionReader.MostRows })
        {
            errors.Add("skeins", $"must be at most {KitDescriptionReader.MostRows}");
            return skeins;
        }

        for (var i = 0; i < (bodies?.Count ?? 0); i++)
        {
            var at = $"skeins[{i}].";
            if (bodies![i] is not { } body)
            {
                errors.Add($"skeins[{i}]", "must be a skein");
                continue;
            }

            if (body.Count is not (null or (>= 1 and <= KitDescriptionReader.MostAlike)))
            {
                errors.Add($"{at}count", $"must be a whole number from 1 to {KitDescriptionReader.MostAlike}");
            }

            var name = string.IsNullOrWhiteSpace(body.Name) ? $"skein {i + 1}" : body.Name;
            if (name.Length > 60)
            {
                errors.Add($"{at}name", "must be at most 60 characters");
            }

            var read = new LeftoverBody { Grams = body.Grams, ScaleStepGrams = 0.001, Label = body.Label, Colour = body.Colour, Fibre = body.Fibre, WeightClass = body.WeightClass };
            if (read.Read(errors, at, name) is { } skein)
            {
                skeins.Add(new KitSkein(name, skein.Weighing.Net, body.Count is >= 1 and <= KitDescriptionReader.MostAlike and var n ? n : 1, skein.Ratio)
                {
                    Colour = skein.Colour,
                    Fibre = skein.Fibre,
                    Class = skein.Class,
                });
            }
        }

        KitDescriptionReader.Check(skeins, errors, "");
        return skeins;
    }

    private static List<SkeinSize> ReadSizes(IReadOnlyList<SkeinSizeBody?>? bodies, FieldErrors errors)
    {
        var sizes = new List<SkeinSize>();
        if (bodies is not null and not { Count: >= 1 and <= MostSizesOfSkein })
        {
            errors.Add("smallestFrom", $"must be 1 to {MostSizesOfSkein} sizes of skein");
            return sizes;
        }

        for (var i = 0; i < (bodies?.Count ?? 0); i++)
        {
            var at = $"smallestFrom[{i}].";
            if (bodies![i] is not { } body)
            {
                errors.Add($"smallestFrom[{i}]", "must be a size of skein");
                continue;
            }

            if (new LeftoverBody { Grams = body.Grams, ScaleStepGrams = 0.001, Label = body.Label, Fibre = body.Fibre }.Read(errors, at, "size") is { } read)
            {
                sizes.Add(new SkeinSize(read.Weighing.Net, read.Ratio) { Fibre = read.Fibre });
            }
        }

        return sizes;
    }

    private static KitCellBody ToBody(KitCell cell) => new(
        cell.Size,
        cell.Stripes,
        Names.Of(cell.Arrangement),
        cell.Passes,
        cell.Cannot is null ? null : "cannot-be-knitted",
        cell.Cannot?.Reason,
        cell.Nominal?.ShortForAllowance.Value,
        ToBody(cell.Nominal),
        ToBody(cell.Lightest),
        cell.Nominal is null ? null : Math.Round(cell.Nominal.ChanceOfEnough, 4));

    private static KitSideBody? ToBody(KitSide? side) => side is null ? null : new(
        Names.Of(side.Verdict), side.MarginPercent, side.WeakestPart, side.WeakestSkein, side.Short.Value, side.ShortForAllowance.Value, side.Exact)
    {
        Why = Names.Of(side.Why),
        Sureness = Math.Round(side.Sureness, 2),
        Reach = Math.Round(side.Reach, 2),
    };

    private static SmallestBody ToBody(SmallestKit? smallest, IReadOnlyList<SkeinSizeBody?> from) => smallest switch
    {
        null => new([], null, true, SmallestWords.NoneCanBeKnitted),
        { TooLong: var (part, planned) } => new([], null, true, SmallestWords.TooLong(part, planned)),
        { IsThere: false } => new([], null, false, SmallestWords.NoneFound),
        _ => new(
            [.. smallest.Counts.Select((count, i) => (count, i)).Where(c => c.count > 0).Select(c => new SmallestSkeinBody(from[c.i]!.Grams!.Value, from[c.i]!.Label!, c.count, from[c.i]!.Fibre))],
            smallest.Total.Value,
            smallest.Proven,
            Words.OfBrim(smallest.Brim),
            smallest.Brim switch { BrimYarn.KeepsShape => "keeps-shape", BrimYarn.Relaxes => "relaxes", BrimYarn.Unknown => "unknown", BrimYarn.Stretches => "stretches", _ => null }),
    };
}
