using System.Globalization;
using System.Text;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>Makes a question that fails as small as it goes, and writes it as C# to paste into a test.</summary>
internal static class Written
{
    /// <summary>Takes away whatever can be taken away while <paramref name="fails"/> still holds.</summary>
    public static Question Smallest(Question question, Func<Question, bool> fails)
    {
        bool Still(Question q)
        {
            try
            {
                return fails(q);
            }
            catch (ArgumentException)
            {
                return false;
            }
        }

        foreach (var simpler in new[] { question with { Blend = true }, question with { AllowancePercent = 0 }, question with { Never = [] },
            question with { Locks = [] }, question with { Like = [] } })
        {
            question = Still(simpler) ? simpler with { } : question;
        }

        for (var i = question.Leftovers.Count - 1; i >= 0; i--)
        {
            var gone = question.Leftovers[i].Id;
            var fewer = question with
            {
                Leftovers = [.. question.Leftovers.Where(l => l.Id != gone)],
                Locks = [.. question.Locks.Where(l => l.Leftover != gone)],
                Never = [.. question.Never.Where(l => l.Leftover != gone)],
                Like = [.. question.Like.Where(l => l.Leftover != gone)],
            };
            question = Still(fewer) ? fewer : question;
        }

        return question;
    }

    public static string AsCode(Question q)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"var hat = {HatCode(q.Hat)};");
        text.AppendLine("Leftover[] bag =");
        text.AppendLine("[");
        foreach (var l in q.Leftovers)
        {
            var colour = l.Colour is { } c ? $"YarnColour.FromRgb({c.Red}, {c.Green}, {c.Blue})" : "null";
            text.AppendLine(CultureInfo.InvariantCulture, $"    new(\"{l.Id}\", \"\", new Weighing({Code(l.Weighing.Gross)}, {Code(l.Weighing.Tare)}, {Code(l.Weighing.ScaleStep)}), {Code(l.Ratio)}) {{ Colour = {colour}, Class = WeightClass.{l.Class}, Fibre = Fibre(\"{l.Fibre}\") }},");
        }

        text.AppendLine("];");
        var pins = (string name, IReadOnlyList<Pairing> all) => all.Count == 0 ? ""
            : $", {name} = [{string.Join(", ", all.Select(p => $"new(\"{p.Part}\", \"{p.Leftover}\"){(p.HeldDouble ? " { HeldDouble = true }" : "")}"))}]";
        text.AppendLine(CultureInfo.InvariantCulture, $"var question = new Question(hat, \"{q.Size}\", bag) {{ Stripes = {q.Stripes}, Arrangement = Arrangement.{q.Arrangement}, InTurn = {q.InTurn}, AllowancePercent = {q.AllowancePercent}m, Target = {q.Target}, Blend = {(q.Blend ? "true" : "false")}{pins("Locks", q.Locks)}{pins("Never", q.Never)}{pins("Like", q.Like)} }};");
        return text.ToString();
    }

    private static string Code(Grams grams) => string.Create(CultureInfo.InvariantCulture, $"Grams.From({grams.Value}m)");

    private static string Code(LabelRatio ratio) => string.Create(
        CultureInfo.InvariantCulture,
            $"new LabelRatio({ratio.Mass}m, MassUnit.{ratio.MassUnit}, {ratio.Length}m, LengthUnit.{ratio.LengthUnit}, RatioSource.{ratio.Source})");

    private static string HatCode(Hat hat) => hat switch
    {
        HatDesign d => string.Create(CultureInfo.InvariantCulture,
            $"Samples.SideToSide with {{ Construction = Construction.{d.Construction}, Brim = {(d.Brim is { } b ? $"new Brim(Centimetres.From({b.Depth.Value}), {(b.Folded ? "true" : "false")}, BindOff: EdgeKind.{b.BindOff})" : "null")}, Braids = new Braids(BraidPlaces.{d.Braids.Where}, StrandSource.{d.Braids.Strands}, {d.Braids.StrandCount}), Crown = new Crown(8, CrownYarn.{d.Crown.Yarn}), StripeCounts = null, Stripes = {(d.Stripes is { } s ? $"new StripeDepths([{string.Join(", ", s.Values.Select(v => $"{v}m"))}], false)" : "null")}, PomPom = {(d.PomPom is { } p ? $"Metres.Held({p.Value}m)" : "null")}, Usage = new Usage({d.Usage.Factor}, {d.Usage.Spread}) }}"),
        PrintedHat p => string.Create(CultureInfo.InvariantCulture,
            $"new PrintedHat {{ Name = \"printed\", WeightClass = WeightClass.{p.WeightClass}, AllowanceIncluded = {(p.AllowanceIncluded ? "true" : "false")}, Sizes = [new PrintedSize(\"X\", null, [{string.Join(", ", p.Sizes[0].Lines.Select(l => $"new({(l.Part is null ? "null" : $"\"{l.Part}\"")}, \"{l.Yarn}\", {l.Length}m)"))}])] }}"),
        _ => hat.Name,
    };
}
