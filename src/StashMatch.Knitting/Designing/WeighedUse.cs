using StashMatch.Knitting.Quantities;

namespace StashMatch.Knitting.Designing;

/// <summary>The most that one piece of one size took among those who knitted it as written.</summary>
/// <param name="Size">The size knitted.</param>
/// <param name="Piece">The piece weighed.</param>
/// <param name="Used">What it took, up to the millimetre.</param>
/// <param name="Source">Who weighed it.</param>
/// <param name="Who">Whose figure it is.</param>
public sealed record LargestUse(string Size, Piece Piece, Metres Used, FigureSource Source, string Who);

/// <summary>What was weighed while a hat was knitted, ready for its table.</summary>
/// <param name="Largest">For each size and piece the largest kept.</param>
public sealed record WeighedUse(IReadOnlyList<LargestUse> Largest)
{
    /// <summary>The largest use of the same knitting in a size: of the piece so named, or of one just like it; null where nobody weighed it.</summary>
    public LargestUse? Find(string size, Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return Largest.Where(l => l.Size == size && l.Piece.IsLike(piece)).MaxBy(l => l.Used);
    }
}
