namespace StashMatch.Pictures;

/// <summary>A yarn of a portrait or a keepsake.</summary>
/// <param name="Code">Its code, such as "Ro".</param>
/// <param name="Name">Its name.</param>
/// <param name="Amount">How much of it is in the hat, in words, such as "7.1 g, 25 m".</param>
/// <param name="Look">How it looks.</param>
public sealed record PortraitYarn(string Code, string Name, string Amount, YarnLook Look);

/// <summary>What is said beside a hat's portrait, and on a keepsake.</summary>
/// <param name="Title">The hat in words, such as "Side to side, size F, six stripes".</param>
/// <param name="Yarns">Its yarns, in knitting order.</param>
/// <param name="Foot">A last line, small; empty for none.</param>
public sealed record PortraitWords(string Title, IReadOnlyList<PortraitYarn> Yarns, string Foot = "");

/// <summary>The portrait's shape.</summary>
public enum PortraitShape
{
    /// <summary>1,200 pixels wide, as high as hat and yarns need.</summary>
    Tall,

    /// <summary>1,200 pixels each way.</summary>
    Square,
}
