namespace StashMatch.Knitting.Matching;

/// <summary>
/// Finds the least value of a convex function of a few variables from its values and slopes alone: a proximal bundle method
/// (Lemaréchal, Kiwiel) [memory]. Each slope seen is kept as a cut; the next point is where the cuts, held near the best point so far,
/// are lowest.
/// </summary>
internal sealed class Bundle(double[] at, double[] scale)
{
    private const int MostCuts = 30;
    private const int MostSweeps = 300;
    private readonly List<Cut> _cuts = [];
    private double _reach = double.NaN;

    /// <summary>The best point so far.</summary>
    public double[] Best { get; } = [.. at];

    /// <summary>The value there.</summary>
    public double Value { get; private set; } = double.MaxValue;

    /// <summary>By how much the cuts say it may still be lowered, about.</summary>
    public double Promise { get; private set; } = double.MaxValue;

    /// <summary>Takes the value and slope at a point.</summary>
    public void Add(double[] point, double value, double[] slope)
    {
        var first = double.IsNaN(_reach);
        var serious = value < Value && (first || Value - value >= 0.1 * Promise);
        if (first)
        {
            _reach = 1;
        }
        else
        {
            _reach *= serious ? Value - value >= 0.5 * Promise ? 2 : 1 : 0.7;
        }

        var intercept = value;
        for (var k = 0; k < slope.Length; k++)
        {
            intercept -= slope[k] * point[k];
        }

        if (_cuts.Count == MostCuts)
        {
            _cuts.Remove(_cuts.MinBy(c => c.Weight)!);
        }

        var cut = new Cut([.. slope], intercept) { Weight = _cuts.Count == 0 ? 1 : 0 };
        foreach (var other in _cuts.Append(cut))
        {
            var product = 0.0;
            for (var k = 0; k < slope.Length; k++)
            {
                product += scale[k] * slope[k] * other.Slope[k];
            }

            cut.Products[other] = product;
            other.Products[cut] = product;
        }

        _cuts.Add(cut);
        if (serious)
        {
            point.CopyTo(Best, 0);
        }

        Value = serious ? value : Value;
    }

    /// <summary>Where to look next; false where the slopes cancel out.</summary>
    /// <param name="target">A value the least is not below.</param>
    /// <param name="point">Gets the point.</param>
    public bool Next(double target, double[] point)
    {
        Weigh(target);
        var (move, error) = (0.0, 0.0);
        for (var k = 0; k < point.Length; k++)
        {
            var slope = 0.0;
            foreach (var cut in _cuts)
            {
                slope += cut.Weight * cut.Slope[k];
            }

            move += scale[k] * slope * slope;
            point[k] = Best[k] - (_reach * scale[k] * slope);
        }

        foreach (var cut in _cuts)
        {
            error += cut.Weight * cut.Error;
        }

        Promise = (_reach * move) + error;
        return Promise > 0;
    }

    // The weights of the cuts, two at a time: what one gives up the other takes, as far as it helps.
    private void Weigh(double target)
    {
        foreach (var cut in _cuts)
        {
            var here = cut.Intercept;
            for (var k = 0; k < Best.Length; k++)
            {
                here += cut.Slope[k] * Best[k];
            }

            cut.Error = Math.Max(0, Value - here);
        }

        // The first step aims half way at the target.
        if (_cuts is [var only] && only.Products[only] > 0)
        {
            _reach = Math.Max(1e-9, (Value - target) / 2 / only.Products[only]);
        }

        var sum = _cuts.Sum(c => c.Weight);
        foreach (var cut in _cuts)
        {
            cut.Weight = sum > 0 ? cut.Weight / sum : 1.0 / _cuts.Count;
        }

        foreach (var cut in _cuts)
        {
            cut.Rate = cut.Error;
            foreach (var other in _cuts)
            {
                cut.Rate += _reach * cut.Products[other] * other.Weight;
            }
        }

        for (var sweep = 0; sweep < MostSweeps; sweep++)
        {
            Cut? giver = null, taker = null;
            foreach (var cut in _cuts)
            {
                giver = cut.Weight > 0 && (giver is null || cut.Rate > giver.Rate) ? cut : giver;
                taker = taker is null || cut.Rate < taker.Rate ? cut : taker;
            }

            if (giver!.Rate - taker!.Rate < 1e-3)
            {
                return;
            }

            var bend = _reach * (giver.Products[giver] + taker.Products[taker] - (2 * giver.Products[taker]));
            var share = bend <= 0 ? giver.Weight : Math.Min(giver.Weight, (giver.Rate - taker.Rate) / bend);
            giver.Weight -= share;
            taker.Weight += share;
            foreach (var cut in _cuts)
            {
                cut.Rate += _reach * share * (cut.Products[taker] - cut.Products[giver]);
            }
        }
    }

    private sealed class Cut(double[] slope, double intercept)
    {
        public double[] Slope { get; } = slope;

        public double Intercept { get; } = intercept;

        public Dictionary<Cut, double> Products { get; } = [];

        public double Weight { get; set; }

        public double Error { get; set; }

        public double Rate { get; set; }
    }
}
