using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>What the address asks of the tables; values as typed, so that nothing is lost where one cannot be read.</summary>
public sealed record TableForm
{
    public string Hat { get; init; } = "side-to-side-sample";

    /// <summary>Sizes asked for; none for all.</summary>
    public IReadOnlyList<string> Sizes { get; init; } = [];

    public string From { get; init; } = "";

    public string To { get; init; } = "";

    public string Allowance { get; init; } = "10";

    /// <summary>A label to weigh by; empty for the usual one of the hat's weight class.</summary>
    public string Label { get; init; } = "";

    public string Form { get; init; } = "one";

    /// <summary>The cell whose working is followed: size, a tilde, stripes.</summary>
    public string Working { get; init; } = "";

    public static TableForm Of(IQueryCollection query)
    {
        ArgumentNullException.ThrowIfNull(query);
        string Text(string name, string otherwise) => (string?)query[name] is { } value ? value : otherwise;
        IEnumerable<string> All(Field field) => query.Pairs().Where(p => field.Is(p.Name)).Select(p => p.Value);
        var blank = new TableForm();
        return new TableForm
        {
            Hat = Text("hat", blank.Hat),
            Sizes = [.. All(HatGrid.SizesAsked).Take(40)],
            From = Text("from", ""),
            To = Text("to", ""),
            Allowance = All(MatchQuestion.AllowancePercent).FirstOrDefault(blank.Allowance),
            Label = Text("label", ""),
            Form = Text("form", blank.Form),
            Working = Text("working", ""),
        };
    }

    /// <summary>The address that asks the same of <paramref name="path"/>, changed.</summary>
    public string Address(Func<TableForm, TableForm>? change = null, string path = "/tables")
    {
        var form = change is null ? this : change(this);
        var pairs = new List<(string Name, string Value)> { ("hat", form.Hat), ("from", form.From), ("to", form.To), (MatchQuestion.AllowancePercent.Name, form.Allowance), ("label", form.Label), ("form", form.Form), ("working", form.Working) };
        pairs.AddRange(form.Sizes.Select(s => (HatGrid.SizesAsked.Name, s)));
        return SaidInAddress.Of(path, pairs);
    }

    /// <summary>The view asked for, or null with a message for each field that cannot be read.</summary>
    public TableView? Read(Hat? hat, Knitting.Designing.TesterJudgement? judged, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (hat is null)
        {
            errors.Add("hat", "is not one of the hats here");
            return null;
        }

        var counts = hat.CountsFor(hat.SizeNames[0]);
        var (from, to) = (Count("from", From, counts[0], errors), Count("to", To, counts[^1], errors));
        if (from > to)
        {
            errors.Add("to", "must not be less than “from”");
        }

        // One size there is, of several that are asked for, is answered.
        var sizes = Sizes.Any(s => hat.SizeNames.Contains(s, StringComparer.Ordinal)) ? hat.SizeNames.Where(s => Sizes.Contains(s, StringComparer.Ordinal)) : Sizes;
        var asked = Said.Of((MatchQuestion.AllowancePercent, Said.Typed(Allowance)), (HatGrid.SizesAsked, Sizes.Count == 0 ? Said.Nothing : Said.Several(sizes)));
        var grid = Questions.TableQuestion.Read(new Reading(asked, errors), hat);
        var label = new LabelRatio(100, MassUnit.Grams, WeightClasses.TypicalMetresPer100Grams(hat.WeightClass), LengthUnit.Metres, RatioSource.Printed);
        if (Label.Length > 0)
        {
            if (LabelText.TryParse(Label, RatioSource.Printed, out var typed, out var message))
            {
                label = typed;
            }
            else
            {
                errors.Add("label", $"cannot be read: {message}");
            }
        }

        if (!TableWords.Forms.ContainsKey(Form))
        {
            errors.Add("form", $"must be one of {string.Join(", ", TableWords.Forms.Keys)}");
        }

        return errors.Any || grid is null ? null : new TableView(
            hat, grid.Sizes, hat is PrintedHat ? null : [.. Enumerable.Range(from, to - from + 1)], grid.AllowancePercent, label, Label.Length > 0, judged);
    }

    private static int Count(string field, string typed, int otherwise, FieldErrors errors)
    {
        if (typed.Length == 0)
        {
            return otherwise;
        }

        if (int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= 24)
        {
            return count;
        }

        errors.Add(field, "must be a whole number from 1 to 24");
        return otherwise;
    }
}
