using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Quantities;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>How a yarn comes into a step.</summary>
public enum Joining
{
    /// <summary>It begins here.</summary>
    Join,

    /// <summary>It was on the needles in the step before.</summary>
    GoOn,

    /// <summary>It was cut and is joined again.</summary>
    Again,

    /// <summary>It was not cut and is carried along.</summary>
    Carried,
}

/// <summary>A yarn of a step.</summary>
/// <param name="Ball">The leftover's id; null once it is gone for good.</param>
/// <param name="Code">Its two letters; empty where it has none.</param>
/// <param name="Name">Its name.</param>
/// <param name="Hex">Its colour; null where that is not known.</param>
/// <param name="Strand">The braid's strand, or null.</param>
/// <param name="Length">What goes in.</param>
/// <param name="Grams">The same on the scale, unrounded; null without a label.</param>
/// <param name="Step">The step of the scale it was weighed on.</param>
/// <param name="Joining">How it comes in.</param>
/// <param name="Cut">Whether it is cut afterwards.</param>
/// <param name="StopAt">What must be left on it before this step, yarn alone, what is put by wound off; null where that is not known, or all of it was put by.</param>
/// <param name="PutBy">Whether yarn is put by for it at the beginning.</param>
/// <param name="Core">What the core or bowl weighs on top.</param>
public sealed record SheetYarn(string? Ball, string Code, string Name, string? Hex, char? Strand, Metres Length, decimal? Grams, Grams Step, Joining Joining, bool Cut, Grams? StopAt, bool PutBy, Grams Core);

/// <summary>One box of the sheet: a part, or a braid with both its strands.</summary>
/// <param name="Key">What it is called: "stripe 3", "braid 1".</param>
/// <param name="Parts">The parts ticked with it.</param>
/// <param name="Numbers">Their numbers in knitting order.</param>
/// <param name="Rows">Rows or rounds; 0 where not known.</param>
/// <param name="Depth">Its depth; 0 where not known.</param>
/// <param name="How">What is knitted, in sentences.</param>
/// <param name="Yarns">What it is knitted with.</param>
/// <param name="Lacking">What no leftover gives of it, part by part; none once it is ticked off.</param>
/// <param name="Done">Whether it is ticked off.</param>
public sealed record SheetStep(string Key, IReadOnlyList<string> Parts, string Numbers, int Rows, Centimetres Depth, IReadOnlyList<string> How, IReadOnlyList<SheetYarn> Yarns, IReadOnlyList<PartLacking> Lacking, bool Done)
{
    /// <summary>Its place in the page's address.</summary>
    public string Anchor => "step-" + Key.Replace(' ', '-');
}
