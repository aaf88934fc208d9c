using System.Diagnostics.CodeAnalysis;

namespace StashMatch.Knitting.Hats;

/// <summary>Puts stripes of so many rows each into a hat of one size.</summary>
public static class OwnRows
{
    /// <summary>The hat with these rows in its stripes, and with this size alone, since they fill the body of no other.</summary>
    /// <param name="design">The hat.</param>
    /// <param name="size">One of its sizes.</param>
    /// <param name="rows">Rows or rounds of each stripe from the cast-on or brim, each over 0.</param>
    /// <param name="own">The hat, when the answer is true.</param>
    /// <param name="why">Why it does not fit, when the answer is false.</param>
    public static bool TryPut(
        HatDesign design, string size, IReadOnlyList<int> rows, [NotNullWhen(true)] out HatDesign? own, [NotNullWhen(false)] out CannotBeKnitted? why)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(rows);
        own = null;
        if (!RowPlanner.TryCompile(design with { Stripes = null }, size, rows.Count, out var usual, out why))
        {
            return false;
        }

        var made = design with
        {
            Stripes = new StripeDepths([.. rows.Select(r => r / design.Gauge.RowsPerCm)], InCentimetres: true),
            Sizes = [design.Sizes.First(s => s.Size == size)],
        };
        if (!RowPlanner.TryCompile(made, size, rows.Count, out var plan, out why))
        {
            return false;
        }

        var worked = plan.Parts.Where(p => p.Kind == PartKind.Stripe).Select(p => p.Rows).ToList();
        if (!worked.SequenceEqual(rows))
        {
            why = new CannotBeKnitted("depths", $"Knitted flat, colours change on the right side. The nearest depths are {string.Join(", ", worked)} rows.");
            return false;
        }

        if (plan.BodyRows != usual.BodyRows)
        {
            why = new CannotBeKnitted("depths", $"With the braids they make {plan.BodyRows} rows, but size {size} has {usual.BodyRows}.");
            return false;
        }

        own = made;
        return true;
    }
}
