using System.Globalization;
using System.Net;
using System.Text;

namespace StashMatch.Pictures;

/// <summary>Writes SVG: shapes grouped by part, every text escaped.</summary>
internal sealed class Pen(string id, string title, double left, double top, double width, double height)
{
    private readonly StringBuilder _body = new();

    public string Id => id;

    /// <summary>Opens a part's group, which lights up with its tape and table row.</summary>
    public void Open(string part, string label) =>
        _body.Append("<g class=\"part\" data-part=\"").Append(Safe(part)).Append("\"><title>").Append(Safe(label)).Append("</title>");

    public void Close() => _body.Append("</g>");

    public void Raw(string svg) => _body.Append(svg);

    public void Shape(IEnumerable<Spot> outline, string attributes) =>
        _body.Append("<path d=\"").Append(Path(outline)).Append("Z\" ").Append(attributes).Append("/>");

    public void Line(IEnumerable<Spot> points, string attributes) =>
        _body.Append("<path fill=\"none\" d=\"").Append(Path(points)).Append("\" ").Append(attributes).Append("/>");

    public void Circle(Spot at, double radius, string attributes) =>
        _body.Append("<circle cx=\"").Append(N(at.X)).Append("\" cy=\"").Append(N(at.Y)).Append("\" r=\"").Append(N(radius)).Append("\" ").Append(attributes).Append("/>");

    public void Text(Spot at, string text, string attributes) =>
        _body.Append("<text x=\"").Append(N(at.X)).Append("\" y=\"").Append(N(at.Y)).Append("\" ").Append(attributes).Append('>').Append(Safe(text)).Append("</text>");

    /// <summary>The whole drawing.</summary>
    public string Finish(string definitions) => string.Create(
        CultureInfo.InvariantCulture,
        $"<svg class=\"hat\" role=\"img\" aria-labelledby=\"{Safe(id)}-title\" viewBox=\"{N(left)} {N(top)} {N(width)} {N(height)}\" xmlns=\"http://www.w3.org/2000/svg\"><title id=\"{Safe(id)}-title\">{Safe(title)}</title><defs>{definitions}</defs>{_body}</svg>");

    public static string N(double number) => Math.Round(number, 2).ToString(CultureInfo.InvariantCulture);

    public static string Safe(string text) => WebUtility.HtmlEncode(text);

    private static string Path(IEnumerable<Spot> points)
    {
        var path = new StringBuilder();
        foreach (var point in points)
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(N(point.X)).Append(' ').Append(N(point.Y));
        }

        return path.ToString();
    }
}
