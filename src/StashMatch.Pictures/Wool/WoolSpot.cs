using static StashMatch.Pictures.Grain;

namespace StashMatch.Pictures;

/// <summary>What lies at a place of the fabric: which loop, of which yarn, how light its colour is there. One for each thread.</summary>
internal sealed class WoolSpot(WoolHat hat, WoolForm form)
{
    private const double GatherRadius = 0.34;

    // Rows of a braid before its strands cross.
    private const int SetUp = 1;

    public WoolLoops Loops { get; } = new();

    /// <summary>Of the angle looked at.</summary>
    public double Sin { get; private set; }

    /// <summary>Of the angle looked at.</summary>
    public double Cos { get; private set; }

    /// <summary>Slope round the head.</summary>
    public double SlopeRound { get; private set; }

    /// <summary>Slope up the fabric.</summary>
    public double SlopeUp { get; private set; }

    /// <summary>The area, by its place among the hat's areas.</summary>
    public int Area { get; private set; }

    public WoolYarn Yarn { get; private set; } = hat.Yarns[0];

    public WoolInk Ink { get; private set; } = hat.Yarns[0].Inks[0];

    /// <summary>Which of the hat's colours it is, all its yarns' colours counted through.</summary>
    public int Dyed { get; private set; }

    /// <summary>How much lighter or darker the yarn is here.</summary>
    public double Tone { get; private set; }

    /// <summary>How much light gets in: 1, less in furrows.</summary>
    public double Shade { get; private set; }

    /// <summary>How soft the stitches look, 0 to 1: ribs and furrows are drawn in and blur.</summary>
    public double Soft { get; private set; }

    /// <summary>Whether there is no yarn left for this place.</summary>
    public bool Ghost { get; private set; }

    /// <summary>Looks at a place; <paramref name="r"/> is the form's radius there.</summary>
    public void Look(WoolSurface surface, double angle, double s, double r)
    {
        Loops.Clear();
        (Tone, Shade, Soft, Ghost) = (0, 1, 0, false);
        var (sin, cos) = Math.SinCos(angle);
        (Sin, Cos) = (sin, cos);
        if (surface == WoolSurface.PomPom)
        {
            LookAtPomPom(angle, s, sin, cos);
        }
        else if (surface == WoolSurface.Cuff && hat.Brim is null)
        {
            Curl(angle, s);
        }
        else if (surface == WoolSurface.Cuff || s < Joins(angle))
        {
            Rib(surface, angle, s);
        }
        else if (hat.Sideways)
        {
            Sideways(angle, s, r, sin, cos);
        }
        else
        {
            Upwards(angle, s, r, sin, cos);
        }
    }

    // Where a brim that is not folded meets the body: by its last knit row brim up, at each picked-up stitch side to side.
    private double Joins(double angle) => hat.Brim is not { Folded: false } brim ? 0
        : hat.Sideways ? -0.11 * Math.Abs(Math.Sin(angle * brim.Ribs * brim.Wales)) : -0.7 * form.Body.End / hat.Rows;

    private void Rib(WoolSurface surface, double angle, double s)
    {
        var brim = hat.Brim!;
        var up = surface == WoolSurface.Cuff ? s : s + form.Below;
        var length = surface == WoolSurface.Cuff ? form.Cuff!.Length : form.Below;
        var (high, wide) = (9 / brim.Rounds, Grain.Round * form.Radius * 10 / brim.Ribs);
        var c = up * 10 / high;
        var p = (angle + form.Sway(angle, s)) * brim.Ribs / Grain.Round;
        var j = (int)Math.Floor(p);
        var (f, furrow) = (p - j, 1 - WoolForm.Rib);

        // The cast-on or bound-off edge lies along the upper end of a folded brim, else along the lower end.
        var edge = surface == WoolSurface.Cuff ? length - 0.22 - up : up - 0.10;
        if (!brim.Rounded && edge < 0.20 && edge > -0.20)
        {
            Edge((edge + 0.20) / 0.40, angle * form.Radius * 10 / 3.4, brim.First);
        }
        else if (f < WoolForm.Rib)
        {
            Loops.Knit((j * brim.Wales) + (f / WoolForm.Rib * brim.Wales), c, wide * WoolForm.Rib / brim.Wales, high, 41);
            (SlopeRound, SlopeUp, Soft) = (Loops.SlopeWale, Loops.SlopeCourse, 0.30);
        }
        else
        {
            Loops.Purl((j * brim.Wales) + ((f - WoolForm.Rib) / furrow * brim.Wales), c, wide * furrow / brim.Wales, high, 43);
            (SlopeRound, SlopeUp, Soft) = (Loops.SlopeWale, Loops.SlopeCourse * 0.55, 0.55);
            Shade = Mix(1, 0.42, Math.Sin(Math.PI * (f - WoolForm.Rib) / furrow));
        }

        var row = up / Math.Max(0.1, length);
        row = (brim.Folded, brim.First) switch { (true, false) => 0.5 + (0.5 * row), (true, true) => 0.5 - (0.5 * row), (false, false) => 1 - row, _ => row };
        Dye(brim.Area, hat.Areas[brim.Area].Yarn, (int)Math.Floor(c), p * 2);
        Ghost = IsOut(brim.Area, row + (0.02 * (Hash(j, 3, 47) - 0.5)));
    }

    // A chain of stitches that lie along the edge; a cast-on shows a row of bumps.
    private void Edge(double across, double along, bool castOn)
    {
        if (castOn)
        {
            Loops.Purl(along, across, 3.4, 4, 63, 0.8);
            (SlopeRound, SlopeUp) = (Loops.SlopeWale, Loops.SlopeCourse);
            return;
        }

        Loops.Knit(across, along, 4.2, 3.4, 61);
        (SlopeRound, SlopeUp) = (Loops.SlopeCourse, Loops.SlopeWale);
    }

    // The purl side, where an edge rolls up.
    private void Curl(double angle, double s)
    {
        var (wide, high) = (Grain.Round * form.Radius * 10 / hat.Stitches, form.Body.End * 10 / hat.Rows);
        var (w, c) = (angle * form.Radius * 10 / wide, s * 10 / high);
        Loops.Garter(w, 2 * c, wide, high / 2, 45);
        (SlopeRound, SlopeUp) = (Loops.SlopeWale, Loops.SlopeCourse);
        Dye(hat.RowAreas[0], hat.Areas[hat.RowAreas[0]].Yarn, (int)Math.Floor(c), w);
        Ghost = IsOut(Area, 0);
    }

    // Rows go round the head, stitches from brim to crown.
    private void Sideways(double angle, double s, double r, double sin, double cos)
    {
        var (drift, sway) = Drift(sin, cos, s);
        var fade = Smooth(0, 0.3, Math.PI - Math.Abs(angle));
        var c = Clamp((((angle / Grain.Round) + 0.5) * hat.Rows) + (0.55 * sway * fade), 0, hat.Rows - 0.001);
        var (w, high, wide) = ((s / form.Body.End * hat.Stitches) + (0.5 * drift), Grain.Round * Math.Max(r, 1.2) * 10 / hat.Rows,
            form.Body.End * 10 / hat.Stitches);
        var area = hat.RowAreas[(int)c];
        if (r < GatherRadius)
        {
            Loops.Knit(angle * 1.2, s * 4, 3, 2.5, 5);
            (SlopeRound, SlopeUp) = (Loops.SlopeWale, Loops.SlopeCourse);
            Dye(hat.SeamArea >= 0 ? hat.SeamArea : area, hat.Areas[hat.SeamArea >= 0 ? hat.SeamArea : area].Yarn, 0, angle);
            Ghost = IsOut(Area, 0);
            return;
        }

        Row(area, w, c, wide, high, 11);
        (SlopeRound, SlopeUp) = (Loops.SlopeCourse, Loops.SlopeWale);
        if (hat.SeamArea >= 0)
        {
            Sewn((Math.PI - Math.Abs(angle)) * r * 10, s);
        }
    }

    // Rounds go up the head. In the round each one ends a row higher than it began, so there is a jog at the back.
    private void Upwards(double angle, double s, double r, double sin, double cos)
    {
        var (drift, sway) = Drift(sin, cos, s);
        var back = Smooth(0, 0.2, Math.PI - Math.Abs(angle));
        var (span, n) = (form.Body.End, hat.Gores);
        var c = (s / span * hat.Rows) + (0.55 * sway * Smooth(0, 1, s) * back) + (hat.Flat ? 0.3 * Math.Sign(angle) * (1 - back) : -angle / Grain.Round);
        c = Clamp(c, -0.9, hat.Rows - 0.001);
        var (w, wide, high, line) = ((angle / Grain.Round * hat.Stitches) + (0.5 * drift * back), Grain.Round * form.Radius * 10 / hat.Stitches,
            span * 10 / hat.Rows, 9.0);
        if (s > form.CrownFrom && n > 0)
        {
            // Stitches of a wedge are counted from its middle; each wedge is narrower the higher it gets.
            var g = angle / Grain.Round * n;
            var at = (int)Math.Floor(g);
            var aside = g - at - 0.5;
            var each = Math.Max(0.8, (double)hat.Stitches / n * (span - s) / (span - form.CrownFrom));
            w = (aside * each) + 0.5 + (at * 64);
            wide = Grain.Round * Math.Max(r, 0.15) * 10 / n / each;
            line = (0.5 - Math.Abs(aside)) * each * (aside < 0 ? -1 : 1);
        }

        Row(RowArea((int)c), w, c, wide, high, 11);
        if (Math.Abs(line) < 0.75)
        {
            Decrease(line, c, wide, high);
        }

        (SlopeRound, SlopeUp) = (Loops.SlopeWale, Loops.SlopeCourse);
        if (hat.Flat && hat.SeamArea >= 0)
        {
            Sewn((Math.PI - Math.Abs(angle)) * r * 10, s);
        }
    }

    // Two stitches knitted as one lean over the line, every second round.
    private void Decrease(double line, double c, double wide, double high)
    {
        var k = (int)Math.Floor(c / 2);
        for (var i = k - 1; i <= k + 1; i++)
        {
            Loops.Bar(-line * wide, (c - (2 * i) - 1) * high, 0.5, high * 1.5, wide * 0.3, 1.08, i * 17);
        }

        Shade *= 0.80 + (0.27 * Math.Abs(line));
    }

    // What a row of the body is made of; the loop that lies uppermost says which row and so which yarn it is.
    private void Row(int area, double w, double c, double wide, double high, int seed)
    {
        // The nearest braid, if it reaches as far as here; its two crossed rows are no stockinette.
        var braid = Braid(area) ? area : Braid(RowArea((int)c + 1)) ? RowArea((int)c + 1) : Braid(RowArea((int)c - 1)) ? RowArea((int)c - 1) : -1;
        if (hat.Areas[area].Fabric == WoolFabric.Garter)
        {
            Loops.Garter(w, c, wide, high, seed);
        }
        else if (braid < 0)
        {
            Loops.Knit(w, c, wide, high, seed);
        }
        else
        {
            Loops.Knit(w, c, wide, high, seed, hat.FirstRows[braid] + SetUp, hat.FirstRows[braid] + hat.Areas[braid].Rows);
        }

        if (braid >= 0 && Crossed(braid, w, c, wide, high))
        {
            return;
        }

        var row = Loops.Height > 0 ? Math.Clamp(Loops.Row, 0, hat.Rows - 1) : (int)c;
        var own = hat.RowAreas[row];
        if (Braid(own))
        {
            // The set-up row: a stitch of each strand in turn.
            var second = (Loops.Stitch & 1) == 1;
            Dye(own, second ? hat.Areas[own].Second : hat.Areas[own].Yarn, (second ? 5 : 0) + own, w, 0.7);
            Ghost = IsOut(own, Out(w));
            return;
        }

        if (Loops.Row < 0 && !hat.Sideways && hat.Brim is { } brim)
        {
            own = brim.Area;
        }

        Dye(own, hat.Areas[own].Yarn, row, w);
        Ghost = IsOut(own, (row - hat.FirstRows[own]) / (double)Math.Max(1, hat.Areas[own].Rows));
    }

    private int RowArea(int row) => hat.RowAreas[Math.Clamp(row, 0, hat.Rows - 1)];

    private bool Braid(int area) => hat.Areas[area].Fabric == WoolFabric.Braid;

    // The two rows of a braid after its set-up row: the strands cross and stand proud, a little over the rows beside them.
    private bool Crossed(int area, double w, double c, double wide, double high)
    {
        var own = hat.Areas[area];
        var from = hat.FirstRows[area] + SetUp - 0.25;
        var half = (hat.FirstRows[area] + own.Rows + 0.10 - from) / 2;
        var q = (c - from - half) / half;
        if (Math.Abs(q) > 1.3 || Loops.Braid(w, q, wide, half * high, area) is not { } second)
        {
            return false;
        }

        Dye(area, second ? own.Second : own.Yarn, (second ? 5 : 0) + area, w, 0.7);
        Tone += 0.14 * Math.Sin((Loops.AcrossLeg * 6.5) + (Loops.AlongLeg * 2.2));
        var end = Math.Abs(Loops.AlongLeg) / (half * high * 0.84);
        Shade = 1 - (0.34 * Math.Min(1, end * end * end)) - (0.18 * Math.Pow(Clamp(Math.Abs(q) - 0.2, 0, 1), 2));
        Ghost = IsOut(area, Out(w));
        return true;
    }

    // How far along its row a stitch lies, 0 to 1.
    private double Out(double w) => (Math.Floor(w) / hat.Stitches) + (hat.Sideways ? 0 : 0.5);

    private bool IsOut(int area, double share) => hat.Areas[area].Knitted < 1 && share >= hat.Areas[area].Knitted;

    // Threads of the seam show between the two edges, drawn together.
    private void Sewn(double off, double s)
    {
        off += 0.5 * Along(s * 2.9, 19);
        if (off > 1.8)
        {
            return;
        }

        Shade *= Mix(0.84, 1, Smooth(0.2, 1.6, off));
        if (off < 0.16)
        {
            Loops.Clear();
            var t = s * 10 / 3.4;
            Loops.Bar((t - Math.Floor(t) - 0.5) * 3.4, off, 0, 0.9, 1.5, 0.7, (int)Math.Floor(t));
            (SlopeRound, SlopeUp) = (Loops.SlopeCourse, Loops.SlopeWale);
            Dye(hat.SeamArea, hat.Areas[hat.SeamArea].Yarn, 0, s);
            Ghost = IsOut(Area, 0);
        }
    }

    private void LookAtPomPom(double angle, double s, double sin, double cos)
    {
        var (x, y) = (angle * 11 * Math.Max(0.2, Math.Cos((s - (form.PomPom!.Length / 2)) / 2.5)), s * 6);
        var (j, k) = ((int)Math.Floor(x), (int)Math.Floor(y));
        for (var a = j - 1; a <= j + 1; a++)
        {
            for (var b = k - 1; b <= k + 1; b++)
            {
                var q = Hash(a, b, 81);
                Loops.Bar((x - a - 0.5 - (0.7 * (q - 0.5))) * 1.5, (y - b - 0.5 - (0.7 * (Hash(b, a, 82) - 0.5))) * 1.5, q * 3, 1.1, 0.75, 0.6 + (0.5 * q),
                    (a * 31) + b);
            }
        }

        (SlopeRound, SlopeUp, Soft) = (Loops.SlopeWale, Loops.SlopeCourse, 0.2);
        Dye(hat.PomPomArea, hat.Areas[hat.PomPomArea].Yarn, j, k, 1);
        Tone += 0.12 * Over((sin * 3) + 2, (cos * 3) + s, 84);
        Ghost = IsOut(Area, 0);
    }

    // Fabric is never quite straight.
    private static (double Drift, double Sway) Drift(double sin, double cos, double s)
    {
        var (x, z) = (cos * 4, sin * 4);
        return (Over(x + (s * 0.31), z + (s * 0.17) + 20, 61), Over((x * 1.7) + 7, (z * 1.7) + (s * 0.55), 62));
    }

    // A yarn's tone changes slowly along its length; one of several colours changes those too.
    private void Dye(int area, int yarn, int row, double along, double much = 1)
    {
        (Area, Yarn) = (area, hat.Yarns[yarn]);
        var (at, seed) = ((along * 0.16) + (Hash(row, 3, yarn + 3) * 400), yarn + 51);
        Tone = ((0.095 * Along(at, seed)) + (0.06 * Along((along * 0.7) + (Hash(row, 5, yarn + 3) * 900), seed + 1))) * much;
        var inks = Yarn.Inks;
        if (inks.Length == 1)
        {
            (Ink, Dyed) = (inks[0], Yarn.FirstDye);
            return;
        }

        // So many stitches from the yarn's beginning; every second row comes back. A colour lasts for some hundred stitches.
        var run = (row + ((row & 1) == 0 || !hat.Flat ? along / hat.Stitches : 1 - (along / hat.Stitches))) * hat.Stitches / 150;
        var turn = (run + (0.9 * Along(run * 0.9, seed + 2))) * WoolYarn.Steps;
        var ink = (int)(turn - (inks.Length * Math.Floor(turn / inks.Length))) % inks.Length;
        (Ink, Dyed) = (inks[ink], Yarn.FirstDye + (ink / WoolYarn.Steps));
    }
}
