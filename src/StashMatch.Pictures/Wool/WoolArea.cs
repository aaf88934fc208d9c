namespace StashMatch.Pictures;

/// <summary>What is knitted in an area.</summary>
internal enum WoolFabric
{
    /// <summary>Stockinette.</summary>
    Knit,

    /// <summary>Garter: a ridge of purl bumps every second row.</summary>
    Garter,

    /// <summary>A braid: its set-up row, then two rows of crossed strands.</summary>
    Braid,

    /// <summary>The ribbed brim.</summary>
    Rib,

    /// <summary>Seam and gathering thread.</summary>
    Seam,

    /// <summary>A pom-pom.</summary>
    PomPom,
}

/// <summary>One area of the hat that a person can point at: a stripe, a braid with both its strands, the brim, the crown, the seam, a pom-pom.</summary>
/// <param name="Name">Its name: the part's, or "braid 1" for both strands.</param>
/// <param name="Parts">The parts in it.</param>
/// <param name="Fabric">What is knitted.</param>
/// <param name="Rows">Its rows in the body; 0 outside it.</param>
/// <param name="Yarn">Its yarn's place among the hat's yarns.</param>
/// <param name="Second">The second strand's yarn; the same where there is one.</param>
/// <param name="Knitted">How much of it there is yarn for, 0 to 1.</param>
/// <param name="Code">Its label; null for none.</param>
/// <param name="Words">Part and yarn in words.</param>
internal sealed record WoolArea(
    string Name, IReadOnlyList<string> Parts, WoolFabric Fabric, int Rows, int Yarn, int Second, double Knitted, string? Code, string Words);

/// <summary>The brim's measures.</summary>
/// <param name="Area">Its area.</param>
/// <param name="Depth">How deep it is seen, cm.</param>
/// <param name="Folded">Whether it is turned up.</param>
/// <param name="Ribs">Knit ribs round it.</param>
/// <param name="Wales">Knit stitches in a rib, 1 or 2.</param>
/// <param name="Rounds">Rounds to 1 cm.</param>
/// <param name="Rounded">Whether its edge is tubular.</param>
/// <param name="First">Whether it is knitted first.</param>
internal sealed record WoolBrim(int Area, double Depth, bool Folded, int Ribs, int Wales, double Rounds, bool Rounded, bool First);
