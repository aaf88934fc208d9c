namespace StashMatch.Pictures;

/// <summary>Where a patch of a picture is widest: the pixel farthest from anything that is not of it, counted king's moves.</summary>
internal static class Widest
{
    /// <summary>The place, 0 to 1 across and down; of several as wide, the first row by row. The picture's edge is not of the patch.</summary>
    public static (double Across, double Down) In(int width, int height, Func<int, bool> isOf)
    {
        var room = new int[width * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                room[(y * width) + x] = isOf((y * width) + x) ? 1 + Math.Min(Math.Min(At(x - 1, y), At(x, y - 1)), Math.Min(At(x - 1, y - 1), At(x + 1, y - 1))) : 0;
            }
        }

        var best = 0;
        for (var y = height - 1; y >= 0; y--)
        {
            for (var x = width - 1; x >= 0; x--)
            {
                var here = (y * width) + x;
                room[here] = Math.Min(room[here], 1 + Math.Min(Math.Min(At(x + 1, y), At(x, y + 1)), Math.Min(At(x + 1, y + 1), At(x - 1, y + 1))));
                best = room[here] >= room[best] ? here : best;
            }
        }

        return (((best % width) + 0.5) / width, ((best / width) + 0.5) / height);
        int At(int x, int y) => x < 0 || y < 0 || x >= width || y >= height ? 0 : room[(y * width) + x];
    }
}
