namespace StashMatch.Pictures;

/// <summary>So much of the plane; y grows downwards.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;
}

/// <summary>What an outline is filled with.</summary>
/// <param name="Hex">A colour, or null for the page's own ink.</param>
/// <param name="Opacity">0 to 1.</param>
/// <param name="Named">A tile or shade in place of a colour.</param>
internal sealed record Fill(string? Hex, double Opacity = 1, string? Named = null)
{
    public static Fill Of(string named) => new(null, 1, named);
}

/// <summary>Drawn so long, left out so long.</summary>
internal sealed record Dash(double On, double Off);

/// <summary>How a line is drawn.</summary>
/// <param name="Hex">A colour, or null for the page's own ink.</param>
/// <param name="Width">In drawing units.</param>
/// <param name="Opacity">0 to 1.</param>
/// <param name="Dash">Null for a line without gaps.</param>
/// <param name="RoundEnds">Whether its ends are round.</param>
/// <param name="RoundCorners">Whether its corners are round.</param>
internal sealed record Stroke(string? Hex, double Width, double Opacity = 1, Dash? Dash = null, bool RoundEnds = false, bool RoundCorners = false);

/// <summary>One line of a tile.</summary>
internal sealed record TileLine(string? Name, IReadOnlyList<Point> Points, Stroke Stroke, Point Shift = default);

/// <summary>A pattern that repeats from the plane's middle on, turned by an eighth or not.</summary>
internal sealed record Tile(string Name, double Width, double Height, IReadOnlyList<TileLine> Lines, bool Turned = false);

/// <summary>A place in a shade, 0 to 1, and how much of its colour lies there.</summary>
internal readonly record struct Stop(double At, double Opacity);

/// <summary>Light or shadow that thins out: to the right or left, or round a point.</summary>
/// <param name="Name">What fills call it.</param>
/// <param name="Hex">Its colour.</param>
/// <param name="From">Where it begins; round: its middle.</param>
/// <param name="Reach">How far it goes to the right; round: its radius.</param>
/// <param name="Round">Whether it lies round a point.</param>
/// <param name="Stops">From the beginning on, one after the other.</param>
internal sealed record Shade(string Name, string Hex, Point From, double Reach, bool Round, IReadOnlyList<Stop> Stops);
