namespace StashMatch.Web.Pages.Help;

/// <summary>A word of the trade, and the word this house has for the thing.</summary>
/// <param name="Other">What people also call it.</param>
/// <param name="Ours">What it is called here.</param>
/// <param name="Means">What it is.</param>
public sealed record OtherWord(string Other, string Ours, string Means)
{
    /// <summary>Where the entry stands in the page's address.</summary>
    public string Anchor => string.Concat(Other.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-'));
}

/// <summary>What the help page says: the trade's other words, and how words are used here.</summary>
public static class HelpWords
{
    public const string Title = "Help with words";
    public const string Lead = "You may know a thing by another word. Look it up here.";
    public const string Find = "find a word";
    public const string FindHint = "tension";
    public const string OtherWords = "Other words";
    public const string HowUsed = "How words are used here";
    public const string NotFound = "That word is not here. Try another, or";
    public const string SeeAll = "see all words";

    // What people also call a thing, with commas between.
    private static readonly OtherWord[] Listed =
    [
        new("2-ply, cobweb", "lace", "A weight class: over 33 stitches to 10 cm."),
        new("4-ply, 3-ply, sock yarn, baby yarn", "fingering (4-ply)", "A weight class: about 27 to 32 stitches to 10 cm."),
        new("5-ply", "sport", "A weight class: about 23 to 26 stitches to 10 cm."),
        new("allocation, goes in", "yarn", "The yarn a part is knitted with: stripe 3, Moss."),
        new("allowance, buffer, spare, margin", "reserve", "What you want over and above the need. Without a reserve, any slip leaves you short."),
        new("aran, 10-ply, afghan", "worsted (aran)", "A weight class: about 16 to 20 stitches to 10 cm."),
        new("ball band, put-up", "label", "What the maker prints: grams and length, such as 100 g / 400 m."),
        new("band, welt, cuff, turn-up", "brim", "The ribbed edge of the hat, single or folded."),
        new("bobble", "pom-pom", "Wool wound, tied and cut, and sewn to the top."),
        new("cast off", "bind off", "To end an edge so that no stitch runs."),
        new("chunky, 12-ply", "bulky", "A weight class: about 12 to 15 stitches to 10 cm."),
        new("darn in, sew in", "weave in", "To hide the ends of the yarn on the wrong side."),
        new("double knitting, 8-ply, light worsted", "DK", "A weight class: about 21 to 24 stitches to 10 cm."),
        new("doubled, two strands together", "held double", "Two yarns knitted as if they were one."),
        new("dye batch, batch", "dye lot", "Balls dyed together. Two lots of one colour may differ."),
        new("fix, remedy", "way to make it work", "A change that turns a no, or an only just, into a yes."),
        new("girth, around", "circumference", "How far it is round the hat or the head."),
        new("gradient, ombré", "gradual", "A colour order in small steps from one stripe to the next."),
        new("hank, cake", "ball", "Yarn as you weigh it, however it is wound."),
        new("heap, stash, hoard", "bag", "All your leftovers, or one lot of them."),
        new("invisible cast-on, rolled edge", "tubular", "A rounded, stretchy edge of a rib."),
        new("K1 P1, single rib", "1×1 rib", "Knit one, purl one, in turn."),
        new("K2 P2, double rib", "2×2 rib", "Knit two, purl two, in turn."),
        new("Latvian braid, vikkel braid", "braid", "Three rows in two colours that look like a plait."),
        new("mini, mini-ball", "mini-skein", "A small skein, often 10 or 20 g, sold in sets."),
        new("one-ply, roving yarn, unplied", "singles", "Yarn of one strand. It pills and breaks more easily."),
        new("scale step, division", "my scale shows every … g", "The smallest step your scale can show."),
        new("scrap, oddment, part-ball, remnant", "leftover", "What is left of a ball."),
        new("set, pack", "kit", "Mini-skeins a designer sells together."),
        new("shaping", "decreases", "Rounds with fewer stitches, which draw the crown in."),
        new("stocking stitch", "stockinette", "Knit on the right side, purl on the wrong side. In the round, knit."),
        new("strand a, strand b", "first colour, second colour", "The two yarns of a braid."),
        new("tail", "end", "The length left where a yarn joins or is cut."),
        new("tare, packaging", "weight of core or bowl", "What lies on the scale but is not yarn. It is taken off."),
        new("tension", "gauge", "Stitches and rows to 10 cm / 4 in."),
        new("test knitter", "tester", "Somebody who knits a pattern before it is sold, and weighs what it takes."),
        new("thickness, yarn weight, ply", "weight class", "How thick a yarn is: lace, fingering, sport, DK, worsted, bulky."),
        new("used up, gone", "knitted up", "A leftover with nothing left."),
        new("verdict", "yes, only just, no", "The answer to: can I make it?"),
        new("work in progress, on the needles", "Knitting now", "Hats you have begun, each with its sheet."),
        new("yardage, meterage", "length", "How long the yarn is, in metres and yards."),
    ];

    /// <summary>What you may call it, and what it is called here, one entry for each other word.</summary>
    public static IReadOnlyList<OtherWord> Others { get; } =
        [.. Listed.SelectMany(o => o.Other.Split(", ").Select(word => o with { Other = word })).OrderBy(o => o.Other, StringComparer.OrdinalIgnoreCase)];

    /// <summary>Words that mean one thing here.</summary>
    public static IReadOnlyList<(string Word, string Means)> Used { get; } =
    [
        ("yes", "There is enough yarn, with your reserve, and it will very likely last."),
        ("only just", "There is enough yarn, but the reserve is small or knitters differ."),
        ("no", "Some part is short of yarn. The page says which, and what would help."),
        ("chance that the yarn lasts", "How often no ball runs out, if many knitters made this hat from these balls."),
        ("reserve", "What you want over and above. You set it in Settings; most use 10 %."),
        ("left", "What will be on the ball at the end."),
        ("short by", "How much yarn is missing."),
        ("length from label", "The label tells grams and length, and your scale tells the rest."),
        ("length measured", "You measured off some yarn and weighed it."),
        ("length a guess", "Nobody knows the yarn. The length may be a quarter out."),
        ("every stripe different", "Each stripe has a leftover of its own."),
        ("one main colour", "All stripes are one colour; braids and brim are others."),
        ("one colour through braids and brim", "One yarn runs through all braids and the brim."),
        ("repeat 3 colours", "Three leftovers take the stripes in turn."),
        ("whatever fits", "Any yarn may go anywhere."),
        ("kept for", "Yarn kept for a hat is not offered to another hat."),
        ("too small to use", "A ball so small that no hat is offered it."),
        ("side to side", "The hat is knitted flat from seam to seam. The stripes run up and down."),
        ("brim up", "The hat is knitted from the brim to the crown. The stripes run round."),
        ("two letters", "The code on a leftover’s tag, such as Mo for Moss."),
    ];

    /// <summary>The entries of a word, or of its parts; all of them where none is looked for.</summary>
    public static IReadOnlyList<OtherWord> Found(string? word) => [.. Others.Where(o => Has(o.Other, word) || Has(o.Ours, word))];

    /// <summary>The same of the words used here.</summary>
    public static IReadOnlyList<(string Word, string Means)> Explained(string? word) => [.. Used.Where(u => Has(u.Word, word))];

    private static bool Has(string text, string? word) => text.Contains((word ?? "").Trim(), StringComparison.OrdinalIgnoreCase);
}
