using Microsoft.EntityFrameworkCore;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>Keeps a small picture of a leftover.</summary>
public sealed class PictureStore(IDbContextFactory<StashContext> contexts)
{
    /// <summary>The largest picture, bytes.</summary>
    public const int MostBytes = 16 * 1024;

    /// <summary>Whether bytes begin as a PNG does and are few enough.</summary>
    public static bool CanKeep(ReadOnlySpan<byte> png) => png.Length <= MostBytes && png.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);

    /// <summary>Keeps a picture in place of the one before; null takes it off. False where there is no such leftover.</summary>
    /// <exception cref="ArgumentException">No PNG, or over 16 KB.</exception>
    public Task<bool> KeepAsync(string id, byte[]? png, CancellationToken cancel = default)
    {
        if (png is not null && !CanKeep(png))
        {
            throw new ArgumentException("A picture is a PNG of at most 16 KB.", nameof(png));
        }

        return contexts.WriteAsync(
            async context =>
            {
                if (await context.Leftovers.AsTracking().Include(r => r.Picture).FirstOrDefaultAsync(r => r.PublicId == id && r.RemovedAt == null, cancel) is not { } row)
                {
                    return false;
                }

                if (row.Picture is not null && png is not null)
                {
                    row.Picture.Png = png;
                }
                else
                {
                    row.Picture = png is null ? null : new PictureRow { Png = png };
                }

                return true;
            },
            cancel);
    }

    /// <summary>A leftover's picture; null where there is none.</summary>
    public async Task<byte[]?> FindAsync(string id, CancellationToken cancel = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context.Leftovers.Where(r => r.PublicId == id).Select(r => r.Picture == null ? null : r.Picture.Png).FirstOrDefaultAsync(cancel);
    }
}
