namespace StashMatch.Pictures;

/// <summary>What a hat is drawn with. The hat is told once, in drawing units; one pen writes it as SVG, another lays it down as pixels.</summary>
internal interface IPen
{
    /// <summary>Begins a drawing that shows so much of the plane.</summary>
    void Begin(Box view, string title);

    /// <summary>The patterns and shades that fills name.</summary>
    void Have(IReadOnlyList<Tile> tiles, IReadOnlyList<Shade> shades);

    /// <summary>What follows, up to <see cref="Close"/>, is one part.</summary>
    void OpenPart(string part, string kind, string title);

    /// <summary>What follows, up to <see cref="Close"/>, is nothing to be told or pointed at.</summary>
    void OpenAside(bool untouched);

    /// <summary>Ends a part, what lies aside, or the drawing.</summary>
    void Close();

    /// <summary>Outlines filled, lines drawn, or both.</summary>
    void Shape(string? name, IReadOnlyList<IReadOnlyList<Point>> lines, bool close, Fill? fill, Stroke? stroke, Point shift = default, bool untouched = false);

    /// <summary>The same outlines under one fill after another.</summary>
    void Layers(string name, IReadOnlyList<IReadOnlyList<Point>> outlines, params IReadOnlyList<Fill> fills);

    void Ellipse(string? name, Point middle, double across, double down, Fill? fill, Stroke? stroke);

    /// <summary>Words about a point on their baseline.</summary>
    void Text(string? name, string words, Point middle, double size, Fill fill, bool bold = false, bool upright = false);

    /// <summary>What is drawn shows only within the box.</summary>
    void Within(string name, Box box, Action draw);
}
