using System.Globalization;
using StashMatch.Knitting.Designing;
using StashMatch.Knitting.Hats;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.TesterResults;

/// <summary>A sheet for a tester of one size and stripe count: what to weigh before and after, in knitting order.</summary>
public sealed record Sheet(string HatId, Hat Hat, string Size, int Stripes, IReadOnlyList<Piece> Pieces, HatNeeds Needs, WrittenGauge Written)
{
    /// <summary>The sheet asked for, or null with messages.</summary>
    public static Sheet? Of(string hatId, Hat? hat, string size, string stripes, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (hat is null)
        {
            errors.Add("hat", "is not one of the hats here");
            return null;
        }

        var counts = hat.CountsFor(size);
        if (counts.Count == 0)
        {
            errors.Add("size", $"must be one of {string.Join(", ", hat.SizeNames)}");
            return null;
        }

        var count = counts[0];
        if (!string.IsNullOrEmpty(stripes) && !int.TryParse(stripes, NumberStyles.None, CultureInfo.InvariantCulture, out count))
        {
            errors.Add("stripes", "must be a whole number from 1 to 24");
            return null;
        }

        if (!hat.TryNeeds(size, count, out var needs, out var why))
        {
            errors.Add(why.Field, $"cannot be knitted: {why.Reason}");
            return null;
        }

        return new Sheet(hatId, hat, size, count, Piece.Of(needs), needs, WrittenGauge.Of(hat));
    }

    /// <summary>What a piece is made of, where it is more than its name says: "brim, crown".</summary>
    public string? Inside(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var names = piece.Parts.Select(i => Needs.Parts[i].Name).ToList();
        return names is [var only] && only == piece.Name ? null : string.Join(", ", names.Select(Words.Part));
    }
}
