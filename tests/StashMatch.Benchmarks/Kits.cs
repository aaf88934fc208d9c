using System.Diagnostics;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Benchmarks;

/// <summary>Three invented kits against every size, count and arrangement of a hat.</summary>
internal static class Kits
{
    private const int WarmUp = 40;

    private static readonly LabelRatio Label = new(100, MassUnit.Grams, 400, LengthUnit.Metres, RatioSource.Printed);

    /// <summary>Milliseconds for all cells of all three: the first time, then median and worst once the program is warm.</summary>
    public static void Row(HatDesign anyCount, int times)
    {
        Kit[] kits = [Of("five and one", [50, 20, 20, 20, 20, 20]), Of("twelve tens", [.. Enumerable.Repeat(10, 12)]), Of("big set", [100, 50, 50, .. Enumerable.Repeat(20, 9)])];
        var question = new KitQuestion(anyCount, anyCount.SizeNames, [.. Enumerable.Range(1, 24)], KitQuestion.UsualArrangements);
        var milliseconds = new List<double>();
        var (passes, covered, first) = (0, 0, 0.0);
        var before = TimeSpan.Zero;
        for (var i = -WarmUp; i < times; i++)
        {
            before = i == 0 ? Process.GetCurrentProcess().TotalProcessorTime : before;
            var watch = Stopwatch.StartNew();
            var cells = KitCheck.Of(question, kits).SelectMany(c => c).ToList();
            if (i >= 0)
            {
                milliseconds.Add(watch.Elapsed.TotalMilliseconds);
            }

            first = i == -WarmUp ? watch.Elapsed.TotalMilliseconds : first;
            (passes, covered) = (cells.Count(c => c.Passes), cells.Count(c => c.Nominal is { Short.Millimetres: 0 }));
        }

        var processor = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / times;
        milliseconds.Sort();
        Console.WriteLine($"three kits, {question.Cells} cells each: first {first:0} ms, then median {milliseconds[times / 2]:0} ms, worst {milliseconds[^1]:0} ms, {processor:0} ms of processor time; {passes} cells pass, {covered} covered");
    }

    private static Kit Of(string name, int[] grams) => new(name, [.. grams.Select((g, i) => new KitSkein($"s{i}", Grams.From(g), 1, Label)
    {
        Class = WeightClass.SuperFine,
        Colour = YarnColour.FromRgb((byte)((i * 71) % 256), (byte)((i * 137) % 256), (byte)((i * 29) % 256)),
    })]);
}
