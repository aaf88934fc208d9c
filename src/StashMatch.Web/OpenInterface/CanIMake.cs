using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>POST /api/v1/can-i-make: stores nothing.</summary>
public static class CanIMake
{
    internal const int MostLeftovers = 10_000;
    private const int MostPairings = 500;

    public static async Task<IResult> AnswerAsync(HttpRequest request, HatReader hats, LeftoverStore leftovers, CancellationToken cancel)
    {
        var (body, refused) = await Body.ReadAsync<CanIMakeBody>(request, cancel);
        if (body is null)
        {
            return refused!;
        }

        var errors = new FieldErrors();
        var question = await ReadAsync(body, errors, hats, leftovers, cancel);
        if (question is null || errors.Any)
        {
            return errors.Problem();
        }

        if (!Matcher.TryAnswer(question, out var answer, out var why, cancel))
        {
            errors.Add(why.Field, why.Reason);
            return errors.Problem();
        }

        return Results.Json(AnswerText.Of(answer), Body.Whole);
    }

    private static async Task<Question?> ReadAsync(
        CanIMakeBody body, FieldErrors errors, HatReader hats, LeftoverStore store, CancellationToken cancel)
    {
        var hat = await hats.ReadAsync(body.Hat, errors, cancel);
        var inBag = body.Leftovers is null ? await store.ForHatsAsync(cancel) : ReadLeftovers(body.Leftovers, errors);
        inBag = Hold(body.HeldTogether, [.. inBag], errors);
        inBag = Join(body.Joined, [.. inBag], errors);
        if (string.IsNullOrWhiteSpace(body.Size))
        {
            errors.Add("size", "is missing");
        }
        else if (hat is not null && !hat.SizeNames.Contains(body.Size, StringComparer.Ordinal))
        {
            errors.Add("size", $"must be one of {string.Join(", ", hat.SizeNames)}");
        }

        if (body.Stripes is < 1 or > 24)
        {
            errors.Add("stripes", "must be a whole number from 1 to 24");
        }

        var arrangement = body.Arrangement is null ? Arrangement.OwnColours : errors.OneOf("arrangement", body.Arrangement, Names.Arrangements);
        if (body.InTurn is < 2 or > 23)
        {
            errors.Add("inTurn", "must be a whole number from 2 to stripes less one");
        }

        var allowance = errors.Number("allowancePercent", body.AllowancePercent ?? 10, 0, 100);
        var order = body.ColourOrder is null ? ColourOrder.Any : errors.OneOf("colourOrder", body.ColourOrder, Names.ColourOrders);
        var blend = body.NextDoor is null ? false : errors.OneOf("nextDoor", body.NextDoor, Names.NextDoor);
        if (hat is null || errors.Any)
        {
            return null;
        }

        var parts = PartsOf(hat, body);
        var locks = ReadPairings("locks", body.Locks, parts, inBag, errors);
        var never = ReadPairings("never", body.Never, parts, inBag, errors);
        var apart = ReadApart(body.Apart, parts, errors);
        return new Question(hat, body.Size!, inBag)
        {
            Stripes = body.Stripes,
            Arrangement = arrangement!.Value,
            InTurn = body.InTurn ?? 3,
            AllowancePercent = allowance!.Value,
            Blend = blend!.Value,
            ColourOrder = order!.Value,
            Locks = locks,
            Never = never,
            Apart = apart,
        };
    }

    internal static List<Leftover> ReadLeftovers(IReadOnlyList<LeftoverBody?> bodies, FieldErrors errors)
    {
        var list = new List<Leftover>();
        if (bodies.Count > MostLeftovers)
        {
            errors.Add("leftovers", $"must be at most {MostLeftovers}");
            return list;
        }

        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < bodies.Count; i++)
        {
            var at = $"leftovers[{i}].";
            if (bodies[i] is not { } body)
            {
                errors.Add($"leftovers[{i}]", "must be a leftover");
                continue;
            }

            if (string.IsNullOrWhiteSpace(body.Id) || body.Id.Length > 80)
            {
                errors.Add($"{at}id", "is missing, or longer than 80 characters");
            }
            else if (!ids.Add(body.Id))
            {
                errors.Add($"{at}id", "is there twice");
            }

            if (body.Read(errors, at, body.Id) is { } leftover)
            {
                list.Add(leftover);
            }
        }

        return list;
    }

    /// <summary>Puts pairs held together in the place of their leftovers; what stays of a longer one stays under its own id.</summary>
    internal static IReadOnlyList<Leftover> Hold(IReadOnlyList<HeldBody?>? pairs, List<Leftover> bag, FieldErrors errors)
    {
        if (pairs is { Count: > 100 })
        {
            errors.Add("heldTogether", "must be at most 100 pairs");
            return bag;
        }

        for (var i = 0; i < (pairs?.Count ?? 0); i++)
        {
            var (id, of) = (pairs![i]?.Id, pairs[i]?.Of);
            if (string.IsNullOrWhiteSpace(id) || id.Length > 80 || bag.Exists(l => l.Id == id))
            {
                errors.Add($"heldTogether[{i}].id", "is missing, over 80 characters, or there already");
                continue;
            }

            var found = of?.Select(o => bag.Find(l => l.Id == o)).OfType<Leftover>().ToList() ?? [];
            if (of?.Count != 2 || found.Count != 2 || found.Exists(l => l.Held.Value < 1))
            {
                errors.Add($"heldTogether[{i}].of", "must be the ids of two leftovers of a metre or more, or of one twice");
                continue;
            }

            var (together, rest) = HeldTogether.AsOne(id, found[0], found[1]);
            bag.RemoveAll(found.Contains);
            bag.Add(together);
            bag.AddRange(rest);
        }

        return bag;
    }

    /// <summary>Puts leftovers joined one after the other in the place of what they are made of.</summary>
    internal static IReadOnlyList<Leftover> Join(IReadOnlyList<HeldBody?>? joins, List<Leftover> bag, FieldErrors errors)
    {
        if (joins is { Count: > 100 })
        {
            errors.Add("joined", "must be at most 100");
            return bag;
        }

        for (var i = 0; i < (joins?.Count ?? 0); i++)
        {
            var (id, of) = (joins![i]?.Id, joins[i]?.Of);
            if (string.IsNullOrWhiteSpace(id) || id.Length > 200 || bag.Exists(l => l.Id == id))
            {
                errors.Add($"joined[{i}].id", "is missing, over 200 characters, or there already");
                continue;
            }

            var found = of?.Distinct(StringComparer.Ordinal).Select(o => bag.Find(l => l.Id == o)).OfType<Leftover>().ToList() ?? [];
            if (of is not { Count: >= 2 and <= 10 } || found.Count != of.Count || !found.TrueForAll(Joined.CanJoin)
                || found.Sum(l => l.Weighing.Net.Value) > Weighing.MostGrams)
            {
                errors.Add($"joined[{i}].of", $"must be the ids of 2 to 10 different leftovers, each longer than {Joined.Tails} m");
                continue;
            }

            bag.RemoveAll(found.Contains);
            bag.Add(Joined.AsOne(id, found));
        }

        return bag;
    }

    // Every part the hat may have in this size; a printed hat's yarn letters too.
    private static HashSet<string> PartsOf(Knitting.Hats.Hat hat, CanIMakeBody body)
    {
        IReadOnlyList<int> counts = body.Stripes is { } asked ? [asked] : hat.CountsFor(body.Size!);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var count in counts)
        {
            if (hat.TryNeeds(body.Size!, count, out var needs, out _))
            {
                names.UnionWith(needs.Parts.Select(p => p.Name));
                names.UnionWith(needs.Parts.Select(p => p.Yarn).OfType<string>());
            }
        }

        return names;
    }

    private static List<Pairing> ReadPairings(
        string field, IReadOnlyList<PairingBody?>? bodies, HashSet<string> parts, IReadOnlyList<Leftover> inBag, FieldErrors errors)
    {
        var list = new List<Pairing>();
        if (bodies is { Count: > MostPairings })
        {
            errors.Add(field, $"must be at most {MostPairings}");
            return list;
        }

        var ids = inBag.Select(l => l.Id).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < (bodies?.Count ?? 0); i++)
        {
            var (part, leftovers, held) = (bodies![i]?.Part, bodies[i]?.Leftover?.All ?? [], bodies[i]?.Held);
            if (part is null || (parts.Count > 0 && !parts.Contains(part)))
            {
                errors.Add($"{field}[{i}].part", part is null ? "is missing" : $"this hat has no part {part}");
            }

            if (held is not null && (field != "locks" || held != "double"))
            {
                errors.Add($"{field}[{i}].held", field == "locks" ? "must be double" : "is only for locks");
            }

            if (leftovers.Count == 0 || leftovers.Count > 2 || (leftovers.Count == 2 && held is null))
            {
                errors.Add($"{field}[{i}].leftover", leftovers.Count == 0 ? "is missing" : "must be one, or two held double");
            }
            else if (leftovers.FirstOrDefault(l => l is null || !ids.Contains(l)) is var unknown && !leftovers.All(l => l is not null && ids.Contains(l)))
            {
                errors.Add($"{field}[{i}].leftover", unknown is null ? "is missing" : $"no leftover {unknown} is there");
            }
            else if (part is not null)
            {
                list.AddRange(leftovers.Distinct(StringComparer.Ordinal).Select(l => new Pairing(part, l!) { HeldDouble = held is not null }));
            }
        }

        foreach (var part in list.Where(l => l.HeldDouble).GroupBy(l => l.Part, StringComparer.Ordinal).Where(g => g.DistinctBy(l => l.Leftover, StringComparer.Ordinal).Count() > 2))
        {
            errors.Add(field, $"{part.Key} is held double from more than two leftovers");
        }

        return list;
    }

    private static List<string> ReadApart(IReadOnlyList<string?>? names, HashSet<string> parts, FieldErrors errors)
    {
        if (names is { Count: > MostPairings })
        {
            errors.Add("apart", $"must be at most {MostPairings}");
            return [];
        }

        for (var i = 0; i < (names?.Count ?? 0); i++)
        {
            if (names![i] is not { } name || (parts.Count > 0 && !parts.Contains(name)))
            {
                errors.Add($"apart[{i}]", names[i] is null ? "is missing" : $"this hat has no part {names[i]}");
            }
        }

        return [.. (names ?? []).OfType<string>().Distinct(StringComparer.Ordinal)];
    }
}
