using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace StashMatch.Web.Tests.PlainWords;

/// <summary>All that a source file can say: its texts, every choice of words tried, each fact in a gap said as one word.</summary>
internal static partial class Sayable
{
    /// <summary>Stands for a fact that is filled in.</summary>
    public const string Gap = "Moss";

    // So many variants of one text are looked at; the longest of them are among the first.
    private const int Most = 400;

    /// <summary>The texts of a file, each with the line it stands in.</summary>
    public static IEnumerable<(int Line, string Text)> In(string source)
    {
        var root = CSharpSyntaxTree.ParseText(source).GetRoot();
        foreach (var whole in root.DescendantNodes().OfType<ExpressionSyntax>().Where(IsText).Select(Whole).Distinct())
        {
            var line = whole.GetLocation().GetLineSpan().StartLinePosition.Line + 1;
            foreach (var text in Variants(whole).Distinct(StringComparer.Ordinal))
            {
                yield return (line, text);
            }
        }
    }

    /// <summary>A text's sentences.</summary>
    public static IEnumerable<string> Sentences(string text) => SentenceEnd().Split(text).Where(s => s.Length > 0);

    /// <summary>How many words a sentence has; a figure with its unit, in one or both units, is one.</summary>
    public static int WordsIn(string sentence) =>
        Measure().Replace(sentence, "1").Split(' ', StringSplitOptions.RemoveEmptyEntries).Count(w => w.Any(char.IsLetterOrDigit));

    private static bool IsText(ExpressionSyntax e) => e.IsKind(SyntaxKind.StringLiteralExpression) || e is InterpolatedStringExpressionSyntax;

    // Climbs from a piece to the text it is a piece of.
    private static ExpressionSyntax Whole(ExpressionSyntax piece)
    {
        SyntaxNode at = piece;
        while (true)
        {
            var above = at.Parent switch
            {
                ParenthesizedExpressionSyntax p => p,
                ConditionalExpressionSyntax c when c.Condition != at => c,
                BinaryExpressionSyntax b when b.IsKind(SyntaxKind.AddExpression) || b.IsKind(SyntaxKind.CoalesceExpression) => b,
                SwitchExpressionArmSyntax { Parent: SwitchExpressionSyntax s } arm when arm.Expression == at => s,
                InterpolationSyntax { Parent: InterpolatedStringExpressionSyntax i } => i,
                _ => (SyntaxNode?)null,
            };
            if (above is null)
            {
                return (ExpressionSyntax)at;
            }

            at = above;
        }
    }

    private static IReadOnlyList<string> Variants(ExpressionSyntax e) => e switch
    {
        LiteralExpressionSyntax { Token.Value: string text } => [text],
        ParenthesizedExpressionSyntax p => Variants(p.Expression),
        ConditionalExpressionSyntax c => [.. Variants(c.WhenTrue), .. Variants(c.WhenFalse)],
        SwitchExpressionSyntax s => [.. s.Arms.SelectMany(a => Variants(a.Expression))],
        BinaryExpressionSyntax b when b.IsKind(SyntaxKind.AddExpression) => Cross(Variants(b.Left), Variants(b.Right)),
        BinaryExpressionSyntax b when b.IsKind(SyntaxKind.CoalesceExpression) => [.. Variants(b.Left), .. Variants(b.Right)],
        InterpolatedStringExpressionSyntax i =>
            i.Contents.Aggregate<InterpolatedStringContentSyntax, IReadOnlyList<string>>([""], (so, next) => Cross(so, next switch
            {
                InterpolatedStringTextSyntax t => [t.TextToken.ValueText],
                InterpolationSyntax n => Variants(n.Expression),
                _ => [""],
            })),
        _ => [Gap],
    };

    private static IReadOnlyList<string> Cross(IReadOnlyList<string> before, IReadOnlyList<string> after) =>
        [.. before.SelectMany(b => after.Select(a => b + a)).Distinct(StringComparer.Ordinal).OrderByDescending(t => t.Length).Take(Most)];

    [GeneratedRegex(@"(?<=[.?!])\s+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@"\b[\d.,]+[  ]?(%|g|m|yd|cm|in|MB|KB)( / [\d.,]+[  ]?(m|yd|cm|in))?(?=\W|$)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Measure();
}
