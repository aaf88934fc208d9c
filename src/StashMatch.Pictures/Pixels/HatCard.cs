using StashMatch.Knitting.Hats;

namespace StashMatch.Pictures;

/// <summary>A line of the card's table.</summary>
/// <param name="Part">The part's name.</param>
/// <param name="Number">Its number in knitting order.</param>
/// <param name="Name">What goes in, its name; "nothing" where nothing does.</param>
/// <param name="Rows">How many rows, in words; "–" where not known.</param>
/// <param name="First">What it needs, in the knitter's own first unit.</param>
/// <param name="Second">The same in the other unit.</param>
public sealed record CardRow(string Part, int Number, string Name, string Rows, string First, string Second);

/// <summary>What a card says beside its drawing.</summary>
/// <param name="Title">The hat, size and stripes in words.</param>
/// <param name="Verdict">The verdict's word.</param>
/// <param name="Thread">How the thread under it runs: 2 unbroken, 1 thin, 0 broken.</param>
/// <param name="Lines">A sentence or two.</param>
/// <param name="Rows">A line for each part, in knitting order.</param>
public sealed record CardWords(string Title, string Verdict, int Thread, IReadOnlyList<string> Lines, IReadOnlyList<CardRow> Rows);

/// <summary>The hat, its verdict and its parts on one sheet, as a PNG.</summary>
public static class HatCard
{
    /// <summary>How wide a card is, in pixels.</summary>
    public const int Width = 1200;

    /// <summary>The most parts a card has lines for; the rest are counted.</summary>
    public const int MostRows = 120;

    /// <summary>The card of a hat with a row plan, or of one known by its printed lengths where there is none.</summary>
    public static byte[] Png(CardWords words, RowPlan? plan, IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Draw(words, plan, parts, paint).Png();
    }

    internal static Canvas Draw(CardWords words, RowPlan? plan, IReadOnlyList<HatPart> parts, IReadOnlyDictionary<string, PartPaint> paint)
    {
        var flat = plan is null ? null : Flat.Lay(plan);
        var worn = plan is null ? WornHat.Of(parts) : WornHat.Of(plan);
        var palette = new Palette(plan is null ? paint : HatDrawing.Whole(parts, paint));
        var view = WornDrawing.View(worn, palette);
        var sheet = flat is null ? new CardSheet(words, (view.Width, view.Height)) : new CardSheet(words, (flat.Width, flat.Height), (view.Width, view.Height));
        var canvas = new Canvas(Width, sheet.Height, Ink.Of(Palette.Paper));
        sheet.Write(canvas, palette);
        if (flat is null)
        {
            Put(sheet.Whole, view.Width, view.Height, pen => WornDrawing.Draw(worn, palette, pen, words.Title));
        }
        else
        {
            Put(sheet.Left, flat.Width, flat.Height, pen => FlatDrawing.Draw(flat, palette, pen, words.Title));
            Put(sheet.Right, view.Width, view.Height, pen => WornDrawing.Draw(worn, palette, pen, words.Title));
        }

        return canvas;

        // As large as there is room for, standing on the foot of it.
        void Put(Box room, double width, double height, Action<PixelPen> draw)
        {
            var scale = Math.Min(room.Width / width, room.Height / height);
            draw(new(canvas, new(room.Left + ((room.Width - (width * scale)) / 2), room.Bottom - (height * scale)), scale, Palette.Graphite));
        }
    }
}
