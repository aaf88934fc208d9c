using System.Text;
using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>The ids and tag codes already given, and the next free ones.</summary>
internal sealed class Tags
{
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly HashSet<string> _codes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    /// <summary>What is taken now. A leftover off the list keeps its id but gives its code free.</summary>
    public static async Task<Tags> TakenAsync(StashContext context, CancellationToken cancel)
    {
        var tags = new Tags();
        foreach (var taken in await context.Leftovers.Select(r => new { r.PublicId, r.Code, r.RemovedAt }).ToListAsync(cancel))
        {
            tags._ids.Add(taken.PublicId);
            if (taken.RemovedAt is null)
            {
                tags._codes.Add(taken.Code);
            }
        }

        return tags;
    }

    /// <summary>Whether a leftover has that id.</summary>
    public bool IsTaken(string id) => _ids.Contains(id);

    /// <summary>Gives the id wished for.</summary>
    /// <exception cref="ArgumentException">It is taken.</exception>
    public string TakeId(string wanted) => _ids.Add(wanted) ? wanted : throw new ArgumentException($"The id {wanted} is taken.", nameof(wanted));

    /// <summary>Gives an id from a name: "Hearth rug" is hearth-rug; a second one hearth-rug-2.</summary>
    public string TakeIdFrom(string name)
    {
        var slug = new StringBuilder();
        foreach (var c in name.Trim().ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        var stem = slug.ToString().Trim('-') is { Length: > 0 } s ? s : "leftover";
        var id = stem;
        var number = _numbers.GetValueOrDefault(stem, 2);
        while (!_ids.Add(id))
        {
            id = $"{stem}-{number++}";
        }

        _numbers[stem] = number;
        return id;
    }

    /// <summary>Gives a code: the one it had where that is still free, else one from the name.</summary>
    public string TakeCode(string name, string? before = null)
    {
        var code = before is not null && !_codes.Contains(before) && !TwoLetters.IsTradeWord(before) ? before : TwoLetters.For(name, _codes);
        _codes.Add(code);
        return code;
    }
}
