using System.Security.Cryptography;
using System.Text;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover to be logged.</summary>
/// <param name="Name">1 to 80 characters.</param>
/// <param name="Weighing">The reading.</param>
/// <param name="Ratio">The label, or null for a crumb.</param>
public sealed record NewLeftover(string Name, Weighing Weighing, LabelRatio? Ratio) : LeftoverDetails(Name, Ratio)
{
    /// <summary>What the open interface shall know it by, 1 to 80 characters; null for one made from the name.</summary>
    public string? Id { get; init; }

    /// <summary>Nothing is left of it by now.</summary>
    public bool KnittedUp { get; init; }

    internal bool IsDemo { get; init; }

    /// <summary>Details and what they weigh.</summary>
    public static NewLeftover Of(LeftoverDetails details, Weighing weighing)
    {
        ArgumentNullException.ThrowIfNull(details);
        return new NewLeftover(details.Name, weighing, details.Ratio)
        {
            Code = details.Code,
            Class = details.Class,
            Fibre = details.Fibre,
            Superwash = details.Superwash,
            Make = details.Make,
            Colour = details.Colour,
            Care = details.Care,
            Lot = details.Lot,
            Bag = details.Bag,
            KeptIn = details.KeptIn,
            KeptBackFor = details.KeptBackFor,
            NotForHats = details.NotForHats,
            Crumb = details.Crumb,
            Note = details.Note,
        };
    }

    /// <inheritdoc/>
    public override void Check(FieldErrors errors, string at = "")
    {
        base.Check(errors, at);
        if (Id is not null && string.IsNullOrWhiteSpace(Id))
        {
            errors.Add($"{at}id", "is empty");
        }

        CheckText(errors, $"{at}id", Id, 80);
        if (Id is "." or ".." || Id?.AsSpan().ContainsAny('/', '\\') == true)
        {
            errors.Add($"{at}id", "must be without / and \\, and not a dot alone, so that it can stand in an address");
        }
    }

    /// <summary>A mark of all of it: the same for the same, another for another.</summary>
    internal string Mark()
    {
        var weighed = FormattableString.Invariant($"{Weighing.Gross.Milligrams} {Weighing.Tare.Milligrams} {Weighing.ScaleStep.Milligrams}");
        var all = LeftoverText.Fields.Select(f => LeftoverText.Of(this, f)).Concat([Id ?? "", weighed, LeftoverText.YesNo(KnittedUp)]);
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\0', all))));
    }

    internal LeftoverRow ToRow(Tags tags, DateTimeOffset at)
    {
        var row = new LeftoverRow
        {
            Id = Guid.NewGuid(),
            PublicId = Id is null ? tags.TakeIdFrom(Name) : tags.TakeId(Id),
            Name = Name,
            Code = tags.TakeCode(Name, Code),
            Fibre = "",
            IsDemo = IsDemo,
            LoggedAt = at,
        };
        To(row);
        row.Entries.Add(EntryRow.Of(Weighing, row.Id, at));
        if (KnittedUp)
        {
            row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.KnittedUp, At = at });
        }

        return row;
    }
}
