using StashMatch.Knitting.Halfway;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.KnittingSheet;

/// <summary>What is typed on the sheet: a ball weighed again, and what is left at the end.</summary>
public static class FinishForm
{
    /// <summary>What the forecast leaves on a ball now, to the milligram.</summary>
    public static Grams LeftOf(BallAhead ball)
    {
        ArgumentNullException.ThrowIfNull(ball);
        return Grams.From(ball.Ball.Start.Ratio.GramsOf(ball.Left));
    }

    /// <summary>Reads a ball weighed again; null with messages.</summary>
    public static (string Ball, Weighing Reading)? ReadWeighing(SheetView view, Func<string, string> field, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(errors);
        if (view.Balls.FirstOrDefault(b => b.Start.Id == field("ball")) is not { } ball)
        {
            errors.Add("ball", "must be one of this plan's");
            return null;
        }

        var gross = errors.Typed("grams", field("grams"), 0.001m, Weighing.MostGrams);
        var core = string.IsNullOrWhiteSpace(field("core")) ? 0 : errors.Typed("core or bowl", field("core"), 0, Weighing.MostGrams);
        var step = errors.Typed("scale step", field("step"), 0.001m, 100);
        if (gross is null || core is null || step is null)
        {
            return null;
        }

        if (core >= gross)
        {
            errors.Add("core or bowl", "must be less than what the scale shows");
        }
        else if (Grams.From(gross.Value - core.Value) >= ball.Start.Weighing.Net)
        {
            errors.Add("grams", $"must be less than the {ball.Start.Weighing.Net} it weighed at the start: is a core or bowl on the scale?");
        }
        else if (!ball.Uses.Any(u => view.State.Done.Contains(u.Part, StringComparer.Ordinal)))
        {
            errors.Add("ball", $"has no part ticked off yet. Finish and tick off {Words.The(ball.Uses[0].Part)} first");
        }

        return errors.Any ? null : (ball.Start.Id, new Weighing(Grams.From(gross!.Value), Grams.From(core!.Value), Grams.From(step!.Value)));
    }

    /// <summary>Reads what is left at the end: typed grams by ball, and what is to be booked of each; null with messages.</summary>
    public static (IReadOnlyDictionary<string, decimal> Left, IReadOnlyDictionary<string, Grams> Used)? ReadFinish(SheetView view, Func<string, string> field, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(errors);
        var typed = new Dictionary<string, decimal>(StringComparer.Ordinal);
        var used = new Dictionary<string, Grams>(StringComparer.Ordinal);
        for (var i = 0; i < view.Ahead.Balls.Count; i++)
        {
            var ball = view.Ahead.Balls[i];
            var (id, left) = (ball.Ball.Start.Id, LeftOf(ball));
            if (!string.IsNullOrWhiteSpace(field($"left-{i}")))
            {
                if (errors.Typed(ball.Ball.Start.Name, field($"left-{i}"), 0, Weighing.MostGrams) is not { } grams)
                {
                    continue;
                }

                if (grams > ball.Ball.Start.Weighing.Net.Value)
                {
                    errors.Add(ball.Ball.Start.Name, $"cannot be more than the {ball.Ball.Start.Weighing.Net} it weighed at the start");
                }

                (left, typed[id]) = (Grams.From(grams), grams);
            }

            // The bag may know the ball lighter already: only what it does not know yet is booked.
            var known = view.Logged(id)!.Left;
            used[id] = known > left ? known - left : default;
        }

        return errors.Any ? null : (typed, used);
    }
}
