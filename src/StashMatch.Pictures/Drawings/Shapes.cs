namespace StashMatch.Pictures;

/// <summary>A place in the drawing; y grows downwards.</summary>
internal readonly record struct Point(double X, double Y);

/// <summary>What a line in a drawing stands for.</summary>
internal enum LineKind
{
    /// <summary>A cast-on or bound-off edge.</summary>
    Edge,

    /// <summary>Where the brim is folded.</summary>
    Fold,

    /// <summary>A purl rib that lies in the shade; an outline, not a line.</summary>
    Valley,

    /// <summary>The light along a knit rib.</summary>
    Ridge,

    /// <summary>A knit stitch.</summary>
    Stitch,

    /// <summary>A line of decreases.</summary>
    Gore,

    /// <summary>A pleat of a gathered top.</summary>
    Pleat,

    /// <summary>A sewing thread, in its own colour.</summary>
    Thread,

    /// <summary>From a tag to its band.</summary>
    Leader,

    /// <summary>A shadow under a turned edge.</summary>
    Shadow,
}

/// <summary>The way a part grows on the drawing as it is knitted.</summary>
internal enum Way
{
    /// <summary>To the right.</summary>
    Right,

    /// <summary>Upwards.</summary>
    Up,

    /// <summary>Downwards.</summary>
    Down,
}

/// <summary>A line of a drawing.</summary>
internal sealed record Line(LineKind Kind, IReadOnlyList<Point> Points);

/// <summary>One part of a hat as it lies in a drawing.</summary>
internal sealed record Piece(string Part, IReadOnlyList<IReadOnlyList<Point>> Outlines, IReadOnlyList<Line> Lines)
{
    public double Area => Outlines.Sum(Polygon.Area);
}

/// <summary>Where the number of a part (or the numbers of a braid's two strands) stands; x, y is the middle.</summary>
internal sealed record Tag(string Part, string? Partner, double X, double Y, double Width, double Height)
{
    public bool Overlaps(Tag other) =>
        Math.Abs(X - other.X) * 2 < Width + other.Width && Math.Abs(Y - other.Y) * 2 < Height + other.Height;
}

/// <summary>A leftover's code on a slip of paper; x, y is the middle, the size that of its letters.</summary>
internal sealed record Slip(string Part, double X, double Y, double Size);

/// <summary>A word beside the drawing.</summary>
internal sealed record Note(string Text, double X, double Y, bool Upright = false);

/// <summary>The running yarn of one part; a knot stands at its first point where a new leftover joins.</summary>
internal sealed record YarnRun(string Part, bool Strand, bool Joins, IReadOnlyList<Point> Points);

/// <summary>A hat as it comes off the needles.</summary>
internal sealed record FlatHat(
    double Width,
    double Height,
    IReadOnlyList<Piece> Pieces,
    IReadOnlyList<Line> Over,
    IReadOnlyList<YarnRun> Yarn,
    IReadOnlyList<Tag> Tags,
    IReadOnlyList<Slip> Slips,
    IReadOnlyList<Note> Notes,
    double TileWidth,
    double TileHeight,
    bool Sideways)
{
    /// <summary>Each part's number in knitting order.</summary>
    public IReadOnlyDictionary<string, int> Numbers { get; init; } = new Dictionary<string, int>(StringComparer.Ordinal);
}
