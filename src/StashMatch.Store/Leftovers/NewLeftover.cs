using System.Security.Cryptography;
using System.Text;
using StashMatch.Knitting.Yarns;
using StashMatch.Store.Data;

namespace StashMatch.Store;

/// <summary>A leftover to be logged.</summary>
public sealed record NewLeftover : LeftoverDetails
{
    /// <summary>A leftover of which its name and label are known; null for a crumb's label.</summary>
    public NewLeftover(string name, Weighing weighing, LabelRatio? ratio)
        : base(name, ratio) => Weighing = weighing;

    /// <summary>Details and what they weigh.</summary>
    public NewLeftover(LeftoverDetails details, Weighing weighing)
        : base(details) => Weighing = weighing;

    /// <summary>The reading.</summary>
    public Weighing Weighing { get; init; }

    /// <summary>What the open interface shall know it by, 1 to 80 characters; null for one made from the name.</summary>
    public string? Id { get; init; }

    /// <summary>Nothing is left of it by now.</summary>
    public bool KnittedUp { get; init; }

    internal bool IsDemo { get; init; }

    /// <inheritdoc/>
    public override void Check(FieldErrors errors, string at = "")
    {
        ArgumentNullException.ThrowIfNull(errors);
        base.Check(errors, at);
        if (Id is not null && string.IsNullOrWhiteSpace(Id))
        {
            errors.Add($"{at}id", "is empty");
        }

        errors.CheckText($"{at}id", Id, 80);
        if (Id is "." or ".." || Id?.AsSpan().ContainsAny('/', '\\') == true)
        {
            errors.Add($"{at}id", "must be without / and \\, and not a dot alone, so that it can stand in an address");
        }
    }

    /// <summary>A mark of all of it: the same for the same, another for another.</summary>
    internal string Mark()
    {
        var weighed = FormattableString.Invariant($"{Weighing.Gross.Milligrams} {Weighing.Tare.Milligrams} {Weighing.ScaleStep.Milligrams}");
        var details = SaidInJson.Write(LeftoverFields.Say(this), LeftoverFields.Fields).ToJsonString();
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\0', details, Id, weighed, KnittedUp))));
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
        row.Take(this);
        row.Entries.Add(EntryRow.Of(Weighing, row.Id, at));
        if (KnittedUp)
        {
            row.Entries.Add(new EntryRow { LeftoverId = row.Id, Kind = EntryKind.KnittedUp, At = at });
        }

        return row;
    }
}
