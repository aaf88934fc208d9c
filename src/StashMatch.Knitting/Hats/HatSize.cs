using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Hats;

/// <summary>One size of a hat described by measurements.</summary>
/// <param name="Size">Its letter or name.</param>
/// <param name="Circumference">The finished body circumference, over 0.</param>
/// <param name="Height">The worn height, visible brim and crown included, over 0.</param>
/// <param name="Head">The head it is for, where known.</param>
/// <param name="Stitches">The body's stitches (side to side: the panel row's) where fixed by hand.</param>
public sealed record HatSize(string Size, Centimetres Circumference, Centimetres Height, Centimetres? Head = null, int? Stitches = null)
{
    /// <summary>Finished body circumference as a share of the head: 10 % negative ease [source: several tutorials; 5-15 % is usual].</summary>
    public const decimal CircumferenceOfHead = 0.90m;

    /// <summary>Worn height as a share of the head [source: several tutorials].</summary>
    public const decimal HeightOfHead = 0.40m;

    /// <summary>A size worked out from the head alone.</summary>
    public static HatSize ForHead(string size, Centimetres head) => new(
        size,
        Centimetres.From(head.Value * CircumferenceOfHead),
        Centimetres.From(head.Value * HeightOfHead),
        head);
}
