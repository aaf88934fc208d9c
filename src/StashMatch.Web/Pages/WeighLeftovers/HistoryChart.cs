using System.Globalization;
using System.Text;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>What was left of a leftover, step by step: strands on one tape, metres above and yards below, oldest first.</summary>
public static class HistoryChart
{
    /// <summary>The most steps drawn.</summary>
    public const int Most = 30;

    private const int Left = 110;
    private const int Wide = 530;
    private const int Step = 22;

    /// <summary>The steps that count: weighed, knitted from, knitted up, and not undone.</summary>
    public static IReadOnlyList<HistoryEntry> Steps(IEnumerable<HistoryEntry> history) =>
        [.. history.Where(h => !h.IsUndone && h.Kind is EntryKind.Weighed or EntryKind.Used or EntryKind.KnittedUp).TakeLast(Most)];

    /// <summary>What an undo would undo, in words; null where there is nothing but the first weighing.</summary>
    public static string? LastStep(IReadOnlyList<HistoryEntry> history) =>
        history.Skip(1).LastOrDefault(h => !h.IsUndone && h.Kind != EntryKind.Undone) is { } last ? DetailsWords.Step(last.Kind) : null;

    /// <summary>The drawing as SVG; null where there is but one step, or no label to work out metres by.</summary>
    /// <param name="history">Oldest first.</param>
    /// <param name="ratio">The label; null where there is none.</param>
    /// <param name="colour">The yarn's colour; null where nobody said.</param>
    public static string? Svg(IReadOnlyList<HistoryEntry> history, LabelRatio? ratio, Knitting.Colours.YarnColour? colour)
    {
        var steps = Steps(history);
        if (steps.Count < 2 || ratio is null)
        {
            return null;
        }

        var scale = TapeScale.For(steps.Select(s => Metres.Held(ratio.MetresIn(s.Left.Value))));
        var foot = 26 + (Step * steps.Count);
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"history\" viewBox=\"0 0 640 {foot + 18}\" role=\"img\" aria-label=\"{DetailsWords.Chart}\">");
        Edge(svg, scale.MetreMarks, "m", 20, 15, 12);
        foreach (var (step, i) in steps.Select((s, i) => (s, i)))
        {
            var (top, metres) = (26 + (Step * i), ratio.MetresIn(step.Left.Value));
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left - 6}\" y=\"{top + 12}\" class=\"day\">{Day(step.At)}</text>");
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Left}\" y=\"{top}\" height=\"15\" width=\"{Shown.Css(Math.Max(1, Wide * metres / scale.FullMetres))}\" rx=\"5\" class=\"{(colour is null ? "unknown" : "known")}\"");
            svg.Append(colour is { } c ? $" style=\"fill:{c.Hex}\"/>" : "/>");
        }

        Edge(svg, scale.YardMarks, "yd", foot, foot + 5, foot + 16);
        return svg.Append("</svg>").ToString();
    }

    /// <summary>A day in words.</summary>
    public static string Day(DateTimeOffset at) => at.ToLocalTime().ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private static void Edge(StringBuilder svg, IEnumerable<(string At, string Text)> marks, string unit, int line, int tick, int text)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{Left}\" x2=\"640\" y1=\"{line}\" y2=\"{line}\"/><text x=\"636\" y=\"{text}\" class=\"unit\">{unit}</text>");
        foreach (var (at, number) in marks)
        {
            var x = Shown.Css(Left + (Wide * decimal.Parse(at.TrimEnd('%'), CultureInfo.InvariantCulture) / 100));
            svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{x}\" x2=\"{x}\" y1=\"{line}\" y2=\"{tick}\"/><text x=\"{x}\" y=\"{text}\">{number}</text>");
        }
    }
}
