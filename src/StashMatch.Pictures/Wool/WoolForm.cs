using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>The surfaces of a hat.</summary>
internal enum WoolSurface
{
    /// <summary>The body, with a brim that is not folded.</summary>
    Body = 1,

    /// <summary>A folded brim, or the curled edge of a hat without one.</summary>
    Cuff = 2,

    /// <summary>A pom-pom.</summary>
    PomPom = 3,
}

/// <summary>A hat as a form, in cm: how far round the head and how high the fabric lies at an angle and a length along it.</summary>
internal sealed class WoolForm
{
    /// <summary>How much of a rib and its furrow is knit.</summary>
    public const double Rib = 0.66;

    // A head is a ninth or so larger round than the hat that clings to it.
    private const double Stretch = 1.1;
    private const double BallRadius = 2.5;

    // Which way the top leans, and how far.
    private const double LeansTo = 1.15;
    private const double Lean = 0.5;

    private readonly WoolHat hat;
    private readonly double depth;
    private readonly bool ribbedBody;
    private readonly WoolLift lift;

    public WoolForm(WoolHat hat)
    {
        this.hat = hat;
        depth = hat.Brim?.Depth ?? 0;
        Radius = hat.Around * Stretch / Grain.Round;
        ribbedBody = hat.Brim is { Folded: false };
        Below = ribbedBody ? depth : hat.Brim is null ? 0 : 1.2;
        Body = new(Sides(), 220, -Below);
        CrownFrom = hat.CrownRows > 0 ? Body.End * (1 - ((double)hat.CrownRows / hat.Rows)) : Body.End;
        Cuff = hat.Brim is { Folded: true } ? Folded() : hat.Brim is null && !hat.Sideways ? Curled() : null;
        PomPom = hat.PomPomArea >= 0 ? Ball() : null;
        lift = new(hat, this);
    }

    /// <summary>Of the body where it is widest.</summary>
    public double Radius { get; }

    /// <summary>How much of the body lies below where its rows begin.</summary>
    public double Below { get; }

    /// <summary>Where the crown's decreases begin, along the body.</summary>
    public double CrownFrom { get; }

    public WoolProfile Body { get; }

    public WoolProfile? Cuff { get; }

    public WoolProfile? PomPom { get; }

    public WoolProfile Of(WoolSurface surface) => surface switch { WoolSurface.Cuff => Cuff!, WoolSurface.PomPom => PomPom!, _ => Body };

    /// <summary>How far a rib strays from its place, as an angle.</summary>
    public double Sway(double angle, double s)
    {
        var each = Grain.Round / hat.Brim!.Ribs;
        return each * ((0.15 * Along(angle / each * 0.43, 15) * Smooth(0, 0.3, Math.PI - Math.Abs(angle)))
            + (0.13 * Over(Math.Cos(angle) * 5, (Math.Sin(angle) * 5) + (s * 0.35), 16)));
    }

    /// <summary>Where a piece of fabric lies, and how deep in a fold, 0 to 1. The front is towards z.</summary>
    public (double X, double Y, double Z, double Dip) At(WoolSurface surface, double angle, double s)
    {
        var (sin, cos) = (Math.Sin(angle), Math.Cos(angle));
        var (r, y, outward, up) = Of(surface).At(s);
        var (d, dip, drop) = surface switch
        {
            WoolSurface.Body => OnBody(angle, sin, cos, s, r),
            WoolSurface.Cuff => OnCuff(angle, sin, cos, s),
            _ => (0.22 * Over((sin * 4) + 5, (cos * 4) + (s * 1.5), 91), 0, 0),
        };
        (r, y) = (r + (d * up), y - (d * outward) + drop);
        var (x, z) = (r * sin, r * cos);

        // The top leans to one side, and on that side the body sinks a little.
        var high = Smooth(1, Body.Top, y);
        var towards = ((x * Math.Sin(LeansTo)) + (z * Math.Cos(LeansTo))) / Radius;
        y -= 0.22 * high * (0.4 + (0.6 * towards));
        return (x + (Lean * high * Math.Sin(LeansTo)), y, z + (Lean * high * Math.Cos(LeansTo)), dip);
    }

    private (double Out, double Dip, double Drop) OnBody(double angle, double sin, double cos, double s, double r)
    {
        var (d, dip) = lift.Of(angle, sin, cos, s, r);
        if (ribbedBody && s < 0.5)
        {
            var edge = Mix(0.4, 1, Smooth(-depth, -depth + 0.7, s));
            d += (0.085 * Wave(angle + Sway(angle, s)) * (1 - Smooth(-0.7, 0.5, s)) * edge) + (0.05 * Along(cos * 3, 21));
        }

        var hem = s < 1 - Below ? 0.10 * Along((cos * 2.6) + sin, 36) * (1 - Smooth(-Below, 1 - Below, s)) : 0;
        return (d, dip, hem);
    }

    private (double Out, double Dip, double Drop) OnCuff(double angle, double sin, double cos, double s)
    {
        var q = s / Cuff!.Length;
        if (hat.Brim is null)
        {
            return ((0.13 * Over(cos * 3, (sin * 3) + q, 31)) + (0.05 * Along((cos * 7) + sin, 33)), 0, 0.16 * Along((cos * 3.3) + (sin * 2), 35));
        }

        var d = (0.095 * Wave(angle + Sway(angle, s)) * Mix(0.30, 1, Smooth(0.10, 0.22, q)) * (1 - (0.5 * Smooth(0.93, 1, q))))
            + (0.11 * Over(cos * 1.8, (sin * 1.8) + (q * 1.2), 31))
            + (0.06 * Along((cos * 4.1) + sin, 33) * Smooth(0.6, 1, q));
        var drop = (0.13 * Along((cos * 2.3) + (sin * 2), 35) * Smooth(0.4, 1, q)) + (0.10 * Along((sin * 2.6) + cos, 36) * (1 - Smooth(0, 0.4, q)));
        return (d, 0, drop);
    }

    // Ribs are round, furrows sharp.
    private double Wave(double angle)
    {
        var p = angle * hat.Brim!.Ribs / Grain.Round;
        var f = p - Math.Floor(p);
        return f < Rib ? Math.Pow(Math.Sin(Math.PI * f / Rib), 0.6) : -0.9 * Math.Sin(Math.PI * (f - Rib) / (1 - Rib));
    }

    private List<(double, double)> Sides()
    {
        var (length, dome) = (hat.Above, 0.86 * Radius);
        while (Arc(dome) > length * 0.95)
        {
            dome *= 0.96;
        }

        var straight = length - Arc(dome);
        var points = new List<(double Radius, double Height)>();
        for (var i = 0; i <= 40; i++)
        {
            var s = -Below + ((straight + Below) * i / 40);
            var t = Clamp(s / straight, 0, 1);

            // Wool sits down on the brim and bulges a little over it; a ribbed edge draws in and hugs the head.
            var r = ribbedBody
                ? 0.94 + (0.06 * Smooth(-1.2, 2.6, s)) + (0.012 * Math.Sin(Math.PI * Clamp((s + depth) / Math.Max(1, depth - 1), 0, 1)))
                    - (0.004 * Smooth(-depth + 0.6, -depth, s))
                : 1 + (0.012 * Math.Sin(Math.PI * t)) - (0.012 * (1 - t) * (1 - t));
            points.Add((Radius * (r + (0.012 * Hump(s, 2.2, 1.6))), s));
        }

        if (hat.Brim is not { Folded: true })
        {
            // The lower edge is rolled in.
            var low = points[0].Radius;
            points[0] = (low - 0.20, -Below + 0.05);
            points.Insert(1, (low - 0.10, -Below - 0.05));
            points.Insert(2, (low - 0.03, -Below - 0.01));
        }

        for (var i = 1; i <= 120; i++)
        {
            var (r, z) = Dome(i / 120.0, dome);
            points.Add((r, z + straight));
        }

        return points;
    }

    private double Arc(double dome)
    {
        var (sum, last) = (0.0, Dome(0, dome));
        for (var i = 1; i <= 90; i++)
        {
            var next = Dome(i / 90.0, dome);
            sum += WoolProfile.Far(last, next);
            last = next;
        }

        return sum;
    }

    private (double Radius, double Height) Dome(double t, double dome)
    {
        var a = t * Math.PI / 2;
        var sunk = Smooth(0.80, 1, t);
        return (
            t >= 1 ? 0 : Radius * Math.Pow(Math.Cos(a), hat.Sideways ? 0.80 : 0.86),
            (dome * Math.Pow(Math.Sin(a), 0.92)) - (hat.Sideways ? 0.35 * sunk * sunk : 0));
    }

    // In at the bottom, round the turned edge, up, and over the bound-off edge.
    private WoolProfile Folded()
    {
        const double half = 0.36;
        var points = new List<(double Radius, double Height)>();
        for (var i = 0; i <= 10; i++)
        {
            var a = Math.PI * (1 - (i / 10.0));
            points.Add(((Radius * 0.955) + half + (half * Math.Cos(a)), -depth + half - (half * 0.9 * Math.Sin(a))));
        }

        for (var i = 1; i <= 24; i++)
        {
            var q = i / 24.0;
            points.Add((
                (Radius * Mix(0.955, 0.978, q)) + (2 * half) - (0.10 * q) + (0.16 * Math.Sin(Math.PI * q)),
                -depth + half + ((depth - half - 0.22) * q)));
        }

        var (r, z) = points[^1];
        for (var i = 1; i <= 8; i++)
        {
            var a = Math.PI * i / 8;
            points.Add((r - 0.40 + (0.40 * Math.Cos(a)), z + (0.20 * Math.Sin(a))));
        }

        return new(points, 90, 0);
    }

    // Stockinette without a brim rolls up by itself and shows its purl side.
    private WoolProfile Curled()
    {
        const double half = 0.46;
        var points = new List<(double, double)>();
        for (var i = 0; i <= 30; i++)
        {
            var a = Math.PI * (1.1 - (1.9 * i / 30.0));
            points.Add((Radius - 0.02 + half + (half * Math.Cos(a)), half - (half * Math.Sin(a))));
        }

        return new(points, 60, 0);
    }

    private WoolProfile Ball()
    {
        var points = new List<(double, double)>();
        for (var i = 0; i <= 40; i++)
        {
            var a = Math.PI * ((i / 40.0) - 0.5);
            points.Add((BallRadius * Math.Cos(a), Body.Top + (BallRadius * (0.75 + (0.92 * Math.Sin(a))))));
        }

        return new(points, 60, 0);
    }
}
