using System.Diagnostics.CodeAnalysis;

namespace StashMatch.Knitting.Hats;

/// <summary>Compiles a hat design, a size and a stripe count into its row plan. The one place where rows and metres are reckoned.</summary>
public static class RowPlanner
{
    /// <summary>Compiles one hat.</summary>
    /// <param name="design">The hat.</param>
    /// <param name="size">One of its sizes.</param>
    /// <param name="stripes">A stripe count within the hat's range.</param>
    /// <param name="plan">The row plan, when the answer is true.</param>
    /// <param name="why">Why it cannot be knitted, when the answer is false.</param>
    public static bool TryCompile(
        HatDesign design, string size, int stripes, [NotNullWhen(true)] out RowPlan? plan, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        ArgumentNullException.ThrowIfNull(design);
        (plan, why) = (null, null);
        if (design.Sizes.FirstOrDefault(s => s.Size == size) is not { } wanted)
        {
            why = new CannotBeKnitted("size", $"The hat has no size {size}.");
            return false;
        }

        var counts = design.StripeCounts ?? StripeCounts.Any;
        if (stripes < counts.Least || stripes > counts.Most)
        {
            why = new CannotBeKnitted("stripes", $"The hat has {counts.Least} to {counts.Most} stripes.", stripes > counts.Most ? counts.Most : null);
            return false;
        }

        if (design.Stripes is { } own && own.Values.Count != stripes)
        {
            why = new CannotBeKnitted("stripes", $"The hat gives depths for {own.Values.Count} stripes.", own.Values.Count);
            return false;
        }

        if (design.Brim is { } brim && brim.Depth >= wanted.Height)
        {
            why = new CannotBeKnitted("brim.depthCm", $"A brim of {brim.Depth} is too deep for a hat {wanted.Height} high.");
            return false;
        }

        return design.Construction switch
        {
            Construction.SideToSide => SideToSide.TryCompile(design, wanted, stripes, out plan, out why),
            _ => BrimUp.TryCompile(design, wanted, stripes, out plan, out why),
        };
    }
}
