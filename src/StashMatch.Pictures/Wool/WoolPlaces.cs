namespace StashMatch.Pictures;

/// <summary>Where an area of a hat is seen on its picture. All in pixels of the picture, from its upper left corner.</summary>
/// <param name="Area">The area's name, such as "stripe 3", "braid 1" or "brim".</param>
/// <param name="Parts">The parts in it: a braid's both strands.</param>
/// <param name="Code">Its code; null for none.</param>
/// <param name="Words">Part and yarn in words.</param>
/// <param name="HasLabel">Whether its code is to be shown: braids and the seam have none, nor has the least seen where labels would not fit.</param>
/// <param name="X">The middle of the label where it stands in the wool, else the point its leader goes to.</param>
/// <param name="Y">The same, downwards.</param>
/// <param name="Inside">Whether the label has room in the wool.</param>
/// <param name="Left">Whether a label outside stands on the left.</param>
/// <param name="LabelY">The middle of a label outside: no two on a side stand over each other.</param>
/// <param name="Outline">What is seen of it, as an SVG path: for taps, and to light it.</param>
/// <param name="Pixels">How many pixels of it are seen.</param>
public sealed record WoolPlace(
    string Area, IReadOnlyList<string> Parts, string? Code, string Words, bool HasLabel, double X, double Y, bool Inside, bool Left, double LabelY,
        string Outline, double Pixels);

/// <summary>Where everything is on a hat's picture.</summary>
public sealed class WoolPlaces
{
    /// <summary>How wide a part must be for its label to stand in the wool, in pixels.</summary>
    public const double LabelRoom = 46;

    /// <summary>How high.</summary>
    public const double LabelHeight = 22;

    private const int MapWidth = 260;

    private readonly WoolHat hat;
    private readonly byte[] map;
    private readonly int across;
    private readonly int down;
    private readonly double scale;

    private WoolPlaces(WoolHat hat, byte[] map, int across, int down, WoolFrame frame)
    {
        (this.hat, this.map, this.across, this.down, Width, Height) = (hat, map, across, down, frame.Width, frame.Height);
        scale = (double)frame.Width / across;
        Places = Spread([.. Enumerable.Range(0, hat.Areas.Length).Select(Find).OfType<WoolPlace>()]);
    }

    /// <summary>The picture's width.</summary>
    public int Width { get; }

    /// <summary>The picture's height.</summary>
    public int Height { get; }

    /// <summary>The areas that are seen, in knitting order.</summary>
    public IReadOnlyList<WoolPlace> Places { get; }

    /// <summary>Looks where everything is on the picture <see cref="WoolPicture.Png"/> paints of the same hat and view.</summary>
    public static WoolPlaces Of(WoolHat hat, WoolView view)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(view);
        view.Check();
        var form = new WoolForm(hat);
        var share = (double)Math.Min(view.Width, MapWidth) / view.Width;
        var small = view with
        {
            Width = Math.Min(view.Width, MapWidth),
            PerCm = view.PerCm * share,
            Height = view.Height is { } high ? (int)Math.Round(high * share) : null,
        };
        var rough = WoolPicture.Rough(form, small);
        var meshes = WoolMesh.Of(form, hat, rough);
        var frame = WoolFrame.Of(meshes, small);
        var samples = new WoolSamples(meshes, small, frame, 1);
        var spot = new WoolSpot(hat, form);
        var areas = new byte[samples.Surface.Length];
        for (var i = 0; i < areas.Length; i++)
        {
            areas[i] = WoolSheet.Nothing;
            if (samples.Surface[i] != 0)
            {
                var surface = (WoolSurface)samples.Surface[i];
                spot.Look(surface, samples.Angle[i], samples.Along[i], form.Of(surface).Radius(samples.Along[i]));
                areas[i] = (byte)spot.Area;
            }
        }

        return new(hat, areas, frame.Width, frame.Height, WoolFrame.Of(WoolMesh.Of(form, hat, WoolPicture.Rough(form, view)), view));
    }

    /// <summary>The area at a place of the picture; null where no wool is.</summary>
    public string? AreaAt(double x, double y)
    {
        var (i, j) = ((int)Math.Floor(x / scale), (int)Math.Floor(y / scale));
        return i < 0 || j < 0 || i >= across || j >= down || map[(j * across) + i] == WoolSheet.Nothing ? null : hat.Areas[map[(j * across) + i]].Name;
    }

    private WoolPlace? Find(int id)
    {
        var (n, sumX, sumY) = (0, 0.0, 0.0);
        for (var i = 0; i < map.Length; i++)
        {
            if (map[i] == id)
            {
                (n, sumX, sumY) = (n + 1, sumX + (i % across), sumY + (i / across));
            }
        }

        if (n < 4)
        {
            return null;
        }

        var area = hat.Areas[id];
        var (midX, midY) = (sumX / n, sumY / n);
        var (x, y, inside) = Middle(id, midY + (hat.Sideways && area.Fabric == WoolFabric.Knit ? down * 0.08 : 0));
        var left = midX < across / 2.0;
        if (!inside)
        {
            // A band all round is pointed at from the side it is numbered to, others from the nearer side.
            left = !hat.Sideways && Math.Abs(midX - (across / 2.0)) < across * 0.1 ? id % 2 == 0 : left;
            (x, y) = hat.Sideways || area.Fabric == WoolFabric.PomPom ? Nearest(id, midX, midY) : AtSide(id, left, midY);
        }

        return new(
            area.Name, area.Parts, area.Code, area.Words, area.Code is not null && area.Fabric is not (WoolFabric.Braid or WoolFabric.Seam),
                (x + 0.5) * scale, (y + 0.5) * scale, inside, left, (y + 0.5) * scale,
            WoolOutline.Path(map, across, down, (byte)id, scale), n * scale * scale);
    }

    // The widest place near a height where a label has room above and below it too.
    private (double X, double Y, bool Inside) Middle(int id, double wanted)
    {
        var (half, room) = ((int)Math.Ceiling(LabelHeight / 2 / scale), LabelRoom / scale);
        var (best, x, y, widest) = (double.MinValue, 0.0, 0.0, 0.0);
        for (var j = half; j < down - half; j++)
        {
            for (var i = 0; i < across; i++)
            {
                var end = RunEnd(id, i, j);
                if (end > i)
                {
                    var middle = (i + end - 1) / 2;
                    var wide = Math.Min(end - i, Math.Min(RunAround(id, middle, j - half), RunAround(id, middle, j + half)));
                    var score = Math.Min(wide, room * 1.5) - (Math.Abs(j - wanted) * 0.25);
                    if (wide > 0 && score > best)
                    {
                        (best, x, y, widest) = (score, middle, j, wide);
                    }

                    i = end;
                }
            }
        }

        return (x, y, widest >= room);
    }

    private int RunEnd(int id, int i, int j)
    {
        var end = i;
        while (end < across && map[(j * across) + end] == id)
        {
            end++;
        }

        return end;
    }

    // Twice the way to the nearer end of the run: as wide as a label in the middle could be.
    private int RunAround(int id, int i, int j)
    {
        if (map[(j * across) + i] != id)
        {
            return 0;
        }

        var from = i;
        while (from > 0 && map[(j * across) + from - 1] == id)
        {
            from--;
        }

        return 2 * Math.Min(i - from, RunEnd(id, i, j) - i);
    }

    private (double X, double Y) Nearest(int id, double x, double y)
    {
        var (best, at) = (double.MaxValue, 0);
        for (var i = 0; i < map.Length; i++)
        {
            if (map[i] == id && Math.Pow((i % across) - x, 2) + Math.Pow((i / across) - y, 2) is var far && far < best)
            {
                (best, at) = (far, i);
            }
        }

        return (at % across, at / across);
    }

    // A point a little in from the left or right end of a band, in the middle of its depth there.
    private (double X, double Y) AtSide(int id, bool left, double midY)
    {
        var columns = Enumerable.Range(0, map.Length).Where(i => map[i] == id).Select(i => i % across).Order().ToList();
        var x = columns[(int)(columns.Count * (left ? 0.08 : 0.92))];
        var rows = Enumerable.Range(0, down).Where(j => map[(j * across) + x] == id).ToList();
        var nearest = rows.MinBy(j => Math.Abs(j - midY));
        var run = rows.Where(j => Enumerable.Range(Math.Min(j, nearest), Math.Abs(j - nearest) + 1).All(k => map[(k * across) + x] == id)).ToList();
        return (x, run.Average());
    }

    // Labels outside keep their order and stand at least a label's height apart.
    private List<WoolPlace> Spread(List<WoolPlace> places)
    {
        foreach (var left in new[] { true, false })
        {
            var some = places.Where(p => p.HasLabel && !p.Inside && p.Left == left).OrderBy(p => p.Y).ToList();
            while (some.Count * LabelHeight > Height)
            {
                var least = some.MinBy(p => p.Pixels)!;
                some.Remove(least);
                places[places.IndexOf(least)] = least with { HasLabel = false };
            }

            var (at, y) = (new double[some.Count], LabelHeight / 2);
            for (var i = 0; i < some.Count; i++)
            {
                at[i] = Math.Max(some[i].Y, y);
                y = at[i] + LabelHeight;
            }

            for (var (i, low) = (some.Count - 1, Height - (LabelHeight / 2)); i >= 0 && at[i] > low; i--, low -= LabelHeight)
            {
                at[i] = low;
            }

            for (var i = 0; i < some.Count; i++)
            {
                places[places.IndexOf(some[i])] = some[i] with { LabelY = at[i] };
            }
        }

        return places;
    }
}
