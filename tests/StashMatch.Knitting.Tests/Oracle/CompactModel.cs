using System.Globalization;
using Google.OrTools.Sat;

namespace StashMatch.Knitting.Tests.Oracle;

/// <summary>One yes-or-no for each lot and leftover: the plainest way to write the question down for a solver.</summary>
internal sealed class CompactModel
{
    private readonly Sheet _sheet;
    private readonly long[] _bears;
    private readonly CpModel _model = new();
    private readonly BoolVar?[,] _from;

    /// <param name="sheet">The question.</param>
    /// <param name="bears">What each leftover may bear, millimetres.</param>
    /// <param name="width">How wide the brim's choice is, 0 to 3.</param>
    /// <param name="coverAll">Whether every lot has to be covered.</param>
    /// <param name="colours">Whether the colour rule is written down too.</param>
    public CompactModel(Sheet sheet, long[] bears, int width, bool coverAll, bool colours = true)
    {
        (_sheet, _bears) = (sheet, bears);
        var (lots, balls) = (sheet.Lots, _bears.Length);
        _from = new BoolVar?[lots.Length, balls];
        for (var i = 0; i < lots.Length; i++)
        {
            for (var b = 0; b < balls; b++)
            {
                _from[i, b] = lots[i].Need <= _bears[b] && sheet.Fits(i, b, width) ? _model.NewBoolVar("") : null;
            }

            if (coverAll)
            {
                _model.AddExactlyOne(OfLot(i));
            }
            else
            {
                _model.AddAtMostOne(OfLot(i));
            }
        }

        for (var b = 0; b < balls; b++)
        {
            var (terms, needs) = LoadOn(b);
            if (needs.Sum() > _bears[b])
            {
                _model.AddLinearConstraint(LinearExpr.WeightedSum(terms, needs), 0, _bears[b]);
            }

            if (sheet.Own)
            {
                OwnColours(b);
            }
        }

        if (colours)
        {
            WriteColourRule(_model, sheet, _from);
        }
    }

    /// <summary>Anything that covers everything and keeps the rules; the other model is asked where this one gives up.</summary>
    public static Settled Any(Sheet sheet, long[] bears, int width) =>
        new CompactModel(sheet, bears, width, coverAll: true).Solve() is { Proof: not Proof.Open } settled ? settled : PatternModel.Solve(sheet, bears,
            width, tidy: false);

    /// <summary>The tidiest way to cover everything; the other model is asked where this one gives up.</summary>
    public static Settled Tidiest(Sheet sheet, long[] bears, int width) =>
        new CompactModel(sheet, bears, width, coverAll: true).Tidiest() is { Proof: not Proof.Open } settled ? settled
            : PatternModel.Solve(sheet, bears, width);

    /// <summary>The model, for more to be written into it.</summary>
    public CpModel Model => _model;

    /// <summary>Whether a lot comes from a leftover; null where it cannot.</summary>
    public BoolVar? From(int lot, int ball) => _from[lot, ball];

    /// <summary>Keeps more lots apart than the colour rule does.</summary>
    public void KeepApart(IEnumerable<(int A, int B)> lots) => WriteColourRule(_model, _sheet, _from, lots);

    /// <summary>Asks for so much tidiness.</summary>
    public void AtLeastAsTidyAs(long worth) => _model.Add(WriteTidiness(maximise: false) >= worth);

    /// <summary>Anything that keeps the rules, or the best by what has been written into the model.</summary>
    public Settled Any() => Solve();

    /// <summary>The tidiest.</summary>
    public Settled Tidiest()
    {
        WriteTidiness();
        return Solve();
    }

    /// <summary>The most that can go in where not everything can: of each leftover all its load, or all it holds.</summary>
    public static Settled MostIn(Sheet sheet)
    {
        // Nothing stops a load from being longer than what there is; no more than that goes in, nor more than each lot takes of it.
        var compact = new CompactModel(sheet, [.. sheet.Held.Select(_ => sheet.Whole)], 3, coverAll: false);
        var goesIn = new List<IntVar>();
        for (var b = 0; b < sheet.Held.Length; b++)
        {
            var (on, needs) = compact.LoadOn(b);
            goesIn.Add(compact._model.NewIntVar(0, sheet.Held[b], ""));
            compact._model.Add(goesIn[b] <= LinearExpr.WeightedSum(on, needs.ConvertAll(n => Math.Min(n, sheet.Held[b]))));
        }

        compact._model.Maximize(LinearExpr.Sum(goesIn));
        return compact.Solve() is { Proof: not Proof.Open } settled ? settled : PatternModel.MostIn(sheet);
    }

    /// <summary>If one lot comes from a leftover, the one beside it comes from none like it.</summary>
    internal static void WriteColourRule(CpModel model, Sheet sheet, BoolVar?[,] from, IEnumerable<(int A, int B)>? apart = null)
    {
        var balls = sheet.Held.Length;
        foreach (var (i, j) in apart ?? sheet.Apart)
        {
            for (var b = 0; b < balls; b++)
            {
                if (from[i, b] is { } here)
                {
                    model.AddAtMostOne(Enumerable.Range(0, balls).Where(o => from[j, o] is not null && sheet.Alike(b, o)).Select(o =>
                        from[j, o]!).Append(here));
                }
            }
        }
    }

    /// <summary>Runs the solver and says what it came to.</summary>
    internal static Settled Settle(CpModel model, Func<Func<BoolVar, bool>, int[]> read)
    {
        var settled = Settle(model, read, Parameters);
        return settled.Proof == Proof.Open && Patient ? Settle(model, read, string.Create(CultureInfo.InvariantCulture,
            $"num_workers:1,random_seed:7,max_deterministic_time:{2 * Limit}")) : settled;
    }

    private static Settled Settle(CpModel model, Func<Func<BoolVar, bool>, int[]> read, string parameters)
    {
        var solver = new CpSolver { StringParameters = parameters };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => new Settled(Proof.Best, (long)Math.Round(solver.ObjectiveValue), read(solver.BooleanValue)),
            CpSolverStatus.Infeasible => new Settled(Proof.None, 0, []),
            CpSolverStatus.Feasible => new Settled(Proof.Open, (long)Math.Round(solver.ObjectiveValue), read(solver.BooleanValue)),
            CpSolverStatus.Unknown => new Settled(Proof.Open, 0, []),
            var other => throw new InvalidOperationException($"The model is {other}: {model.Validate()}"),
        };
    }

    /// <summary>
    /// The parameters of every solve: one worker, a fixed seed and a limit in steps of the solver's own, never seconds. Full linear
    /// relaxation without probing settled most in least time of eight settings tried.
    /// </summary>
    internal static string Parameters => string.Create(CultureInfo.InvariantCulture,
        $"num_workers:1,random_seed:7,linearization_level:2,cp_model_probing_level:0,symmetry_level:0,max_deterministic_time:{Limit}");

    /// <summary>The solver's own measure of work after which it gives up.</summary>
    internal static double Limit { get; set; } = 0.5;

    /// <summary>Whether what was left open is tried again with the solver's usual settings, which see through equal leftovers.</summary>
    internal static bool Patient { get; set; }

    private List<BoolVar> OfLot(int lot) => [.. Enumerable.Range(0, _bears.Length).Select(b => _from[lot, b]).OfType<BoolVar>()];

    private (List<BoolVar> Terms, List<long> Needs) LoadOn(int ball)
    {
        var here = Enumerable.Range(0, _sheet.Lots.Length).Where(i => _from[i, ball] is not null).ToList();
        return (here.ConvertAll(i => _from[i, ball]!), here.ConvertAll(i => _sheet.Lots[i].Need));
    }

    private void OwnColours(int ball)
    {
        var stripes = Enumerable.Range(0, _sheet.Lots.Length).Where(i => _sheet.Lots[i].Stripe && _from[i, ball] is not null).Select(i =>
            _from[i, ball]!).ToList();
        _model.AddAtMostOne(stripes);
        for (var i = 0; i < _sheet.Lots.Length; i++)
        {
            if (_sheet.Lots[i] is { Head: true, Stripe: false } && _from[i, ball] is { } head)
            {
                _model.AddAtMostOne(stripes.Append(head));
            }
        }
    }

    // Each leftover is unused, still useful, finished or an awkward stub; a stub needs no bounds, being worth least of all.
    private LinearExpr WriteTidiness(bool maximise = true)
    {
        var terms = new List<IntVar>();
        var worths = new List<long>();
        for (var b = 0; b < _bears.Length; b++)
        {
            var (on, needs) = LoadOn(b);
            if (on.Count == 0 || needs.Sum() <= _bears[b] - 8_000)
            {
                continue;
            }

            var bears = _bears[b];
            var (unused, useful, finished, stub) = (_model.NewBoolVar(""), _model.NewBoolVar(""), _model.NewBoolVar(""), _model.NewBoolVar(""));
            var spare = _model.NewIntVar(0, Math.Min(bears, 8_000), "");
            _model.AddExactlyOne([unused, useful, finished, stub]);
            var load = LinearExpr.WeightedSum(on, needs);
            _model.Add(load <= (Math.Max(0, bears - 8_000) * useful) + (bears * finished) + (bears * stub));
            _model.Add(load >= Math.Max(1, bears - 2_000) * finished);
            _model.Add(load >= stub);
            if (bears < 8_000)
            {
                _model.Add(useful == 0);
            }

            _model.Add(spare >= bears - load - (bears * unused) - (bears * useful));
            terms.AddRange([finished, stub, spare]);
            worths.AddRange([10_000, -10_000, -1]);
        }

        var tidiness = LinearExpr.WeightedSum(terms, worths);
        if (maximise)
        {
            _model.Maximize(tidiness);
        }

        return tidiness;
    }

    private Settled Solve() => Settle(_model, Read);

    private int[] Read(Func<BoolVar, bool> isTrue) =>
        [.. Enumerable.Range(0, _sheet.Lots.Length).Select(i => Enumerable.Range(0, _bears.Length).FirstOrDefault(b => _from[i, b] is { } from
            && isTrue(from), -1))];
}
