using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Pictures;

namespace StashMatch.Web.Pieces;

/// <summary>
/// Hats painted as wool, each once: what was painted is kept by what is seen on it, and painting begins while the page's words are already on their way.
/// </summary>
public sealed class HatPictures
{
    private const int MostKept = 300;
    private readonly ConcurrentDictionary<string, (Lazy<Task<byte[]>> Png, long Asked)> kept = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, WoolPlaces> places = new(StringComparer.Ordinal);
    private long asked;

    /// <summary>What a hat's parts are knitted in.</summary>
    public static WoolHat HatOf(HatNeeds hat, IReadOnlyList<PartAnswer> parts, IReadOnlyDictionary<string, Knitting.Yarns.Leftover> byId)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(byId);
        return WoolHat.Of(hat, parts.ToDictionary(
            p => p.Part.Name,
            p => p.From is { } from
                ? new PartWool(
                    YarnLook.Of(byId[from.Leftover]), p.Need.Millimetres == 0 ? 1 : 1 - ((double)p.Short.Millimetres / p.Need.Millimetres),
                    Words: $"{p.Part.Name}, {byId[from.Leftover].Name}")
                : new PartWool(null, p.Short.Millimetres > 0 ? 0 : 1),
            StringComparer.Ordinal));
    }

    /// <summary>From where a hat is looked at.</summary>
    /// <param name="view">"head" or "above".</param>
    /// <param name="turn">Sixths of a turn.</param>
    /// <param name="width">Pixels.</param>
    public static WoolView ViewOf(string view, int turn, int width) =>
        new(width, WoolView.Turned + (turn * Math.PI / 3), view == "above" ? WoolView.Above : WoolView.Front);

    /// <summary>What a picture is known by: all that is seen on it.</summary>
    public static string KeyOf(WoolHat hat, WoolView view)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(view);
        var seen = string.Create(CultureInfo.InvariantCulture, $"{hat.Json} {view.Width} {view.Yaw:0.###} {view.Tilt:0.###}");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(seen)))[..16];
    }

    /// <summary>Begins to paint a hat unless it is painted, and gives what it is known by.</summary>
    public string Begin(WoolHat hat, WoolView view)
    {
        var key = KeyOf(hat, view);
        _ = Painting(key, hat, view).Value;
        return key;
    }

    /// <summary>The picture known by a key; null where it is not kept any more.</summary>
    public async Task<byte[]?> FindAsync(string? key) => key is not null && kept.TryGetValue(key, out var found) ? await found.Png.Value : null;

    /// <summary>The picture of a hat, painted now unless it is kept.</summary>
    public Task<byte[]> PngAsync(WoolHat hat, WoolView view) => Painting(KeyOf(hat, view), hat, view).Value;

    /// <summary>Where its parts are on a picture. They are the same for every yarn, so they are looked for once a form of hat.</summary>
    public WoolPlaces PlacesOf(HatNeeds hat, WoolView view)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(view);
        var form = WoolHat.Of(hat, hat.Parts.ToDictionary(p => p.Name, _ => new PartWool(null, Code: "Xx"), StringComparer.Ordinal));
        if (places.Count > MostKept)
        {
            places.Clear();
        }

        return places.GetOrAdd(KeyOf(form, view), _ => WoolPlaces.Of(form, view));
    }

    private Lazy<Task<byte[]>> Painting(string key, WoolHat hat, WoolView view)
    {
        var found = kept.AddOrUpdate(
            key,
            _ => (new(() => Task.Run(() => WoolPicture.Png(hat, view))), Interlocked.Increment(ref asked)),
            (_, old) => (old.Png, Interlocked.Increment(ref asked)));
        if (kept.Count > MostKept)
        {
            foreach (var old in kept.OrderBy(k => k.Value.Asked).Take(MostKept / 4).Select(k => k.Key).ToList())
            {
                kept.TryRemove(old, out _);
            }
        }

        return found.Png;
    }
}
