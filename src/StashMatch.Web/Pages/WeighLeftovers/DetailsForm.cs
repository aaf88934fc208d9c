using StashMatch.Knitting.Yarns;
using StashMatch.Store;

namespace StashMatch.Web.Pages.WeighLeftovers;

/// <summary>Everything about a leftover but what it weighs, as typed, by the names of <see cref="LeftoverFields"/>.</summary>
public class DetailsForm
{
    private readonly Dictionary<string, string> _typed = new(StringComparer.Ordinal);
    private Said _was = Said.Nothing;

    /// <summary>What is typed for a field; empty where nothing is.</summary>
    public string this[string field]
    {
        get => _typed.GetValueOrDefault(field, "");
        set => _typed[field] = value;
    }

    public string Name { get => this["name"]; set => this["name"] = value; }

    public string Label { get => this["label"]; set => this["label"] = value; }

    public RatioSource From
    {
        get => Names.All<RatioSource>().GetValueOrDefault(this["ratioFrom"]);
        set => this["ratioFrom"] = Names.Of(value);
    }

    public string Class { get => this["weightClass"]; set => this["weightClass"] = value; }

    public string Fibre { get => this["fibre"]; set => this["fibre"] = value; }

    public string Colour { get => this["colour"]; set => this["colour"] = value; }

    public string Care { get => this["care"]; set => this["care"] = value; }

    public YarnMake Make
    {
        get => Names.All<YarnMake>().GetValueOrDefault(this["make"]);
        set => this["make"] = Names.Of(value);
    }

    public bool Singles
    {
        get => Make == YarnMake.Singles;
        set => Make = value ? YarnMake.Singles : YarnMake.Plied;
    }

    public bool Superwash
    {
        get => this["superwash"] == "yes";
        set => this["superwash"] = value ? "yes" : "no";
    }

    /// <summary>Which bag it goes in.</summary>
    public string Bag { get => this["bag"]; set => this["bag"] = value; }

    /// <summary>A logged leftover as it would have been typed.</summary>
    public static DetailsForm Of(LoggedLeftover logged)
    {
        ArgumentNullException.ThrowIfNull(logged);
        var said = LeftoverFields.Say(logged);
        var form = new DetailsForm();
        foreach (var field in LeftoverFields.Kept.Where(f => f.Field.Inside.Count == 0))
        {
            form[field.Field.Name] = said[field.Field].Words ?? "";
        }

        (form.Label, form.From) = (logged.Ratio?.ToString() ?? "", logged.Ratio?.Source ?? RatioSource.Printed);
        form.Fibre = logged.Fibre.IsUnknown ? "" : form.Fibre;
        form.Class = logged.Class is { } c ? Pieces.Terms.Short(c) : "";
        form._was = form.Said;
        return form;
    }

    /// <summary>What is typed.</summary>
    protected Said Said => Said.Of(LeftoverFields.Kept.Where(f => !string.IsNullOrWhiteSpace(this[f.Field.Name])).Select(f => (f.Field, TypedIn(f.Field.Name))));

    // A weight class is typed by its name, or by its number.
    private Said TypedIn(string field) => field == "weightClass" && WeightClasses.TryRead(this[field], out var weightClass)
        ? Said.Typed(((int)weightClass).ToString(System.Globalization.CultureInfo.InvariantCulture))
        : Said.Typed(this[field].Trim());

    /// <summary>What was typed, or null with a message for each field that cannot be read.</summary>
    public LeftoverDetails? ReadDetails(FieldErrors errors) => LeftoverFields.Read(new Reading(Said, errors));

    /// <summary>The change to make: what was typed over, and nothing else, so that what another browser changed meanwhile stays.</summary>
    public Func<LeftoverDetails, LeftoverDetails>? ReadChange(FieldErrors errors)
    {
        if (ReadDetails(errors) is null)
        {
            return null;
        }

        var now = Said;
        var over = LeftoverFields.Kept.Select(f => f.Field).Where(f => now[f].Words != _was[f].Words).ToHashSet();
        if (over.Contains(LeftoverFields.Label))
        {
            over.Add(LeftoverFields.RatioFrom);
        }

        var change = Said.Of(over.Select(f => (f, now[f])));
        return d => LeftoverFields.Change(d, new Reading(change, new FieldErrors()));
    }

    /// <summary>The label as typed, or null with a message.</summary>
    protected LabelRatio? ReadLabel(FieldErrors errors) => LabelReading.Read(new Reading(Said, errors), LeftoverFields.Label, From);
}
