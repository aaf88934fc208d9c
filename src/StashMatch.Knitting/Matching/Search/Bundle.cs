namespace StashMatch.Knitting.Matching.Search;

/// <summary>
/// Finds the least value of a convex function of a few variables from its values and slopes alone: a proximal bundle method
/// (Lemaréchal, Kiwiel) [memory]. Each slope seen is kept as a cut; the next point is where the cuts, held near the best point so far,
/// are lowest.
/// </summary>
internal sealed class Bundle(double[] at, double[] scale)
{
    private const int MostCuts = 24;
    private const int MostSweeps = 200;
    private const double Close = 1e-2;
    private readonly double[][] _slopes = new double[MostCuts][];
    private readonly double[] _intercepts = new double[MostCuts];
    private readonly double[] _products = new double[MostCuts * MostCuts];
    private readonly double[] _weights = new double[MostCuts];
    private readonly double[] _errors = new double[MostCuts];
    private readonly double[] _rates = new double[MostCuts];
    private int _cuts;
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
        var first = _cuts == 0;
        var serious = first || Value - value >= 0.1 * Promise;
        if (!first)
        {
            _reach *= !serious ? 0.7 : Value - value >= 0.5 * Promise ? 2 : 1;
        }

        // The cut that counts least makes room.
        var c = _cuts;
        if (_cuts == MostCuts)
        {
            c = 0;
            for (var other = 1; other < MostCuts; other++)
            {
                c = _weights[other] < _weights[c] ? other : c;
            }
        }
        else
        {
            _cuts++;
        }

        var mine = _slopes[c] ??= new double[slope.Length];
        slope.CopyTo(mine, 0);
        _intercepts[c] = value;
        for (var k = 0; k < slope.Length; k++)
        {
            _intercepts[c] -= slope[k] * point[k];
        }

        for (var other = 0; other < _cuts; other++)
        {
            var (product, theirs) = (0.0, _slopes[other]);
            for (var k = 0; k < slope.Length; k++)
            {
                product += scale[k] * slope[k] * theirs[k];
            }

            _products[(c * MostCuts) + other] = _products[(other * MostCuts) + c] = product;
        }

        _weights[c] = first ? 1 : 0;
        if (serious)
        {
            point.CopyTo(Best, 0);
            Value = value;
        }
    }

    /// <summary>Where to look next; false where nothing can be lowered.</summary>
    /// <param name="target">A value the least is not below.</param>
    /// <param name="point">Gets the point.</param>
    public bool Next(double target, double[] point)
    {
        if (double.IsNaN(_reach))
        {
            // The first step aims half way at the target.
            _reach = _products[0] > 0 ? Math.Max(1e-9, (Value - target) / 2 / _products[0]) : 1;
        }

        Weigh();
        var (move, error) = (0.0, 0.0);
        for (var k = 0; k < point.Length; k++)
        {
            var slope = 0.0;
            for (var c = 0; c < _cuts; c++)
            {
                slope += _weights[c] * _slopes[c][k];
            }

            move += scale[k] * slope * slope;
            point[k] = Best[k] - (_reach * scale[k] * slope);
        }

        for (var c = 0; c < _cuts; c++)
        {
            error += _weights[c] * _errors[c];
        }

        Promise = (_reach * move) + error;
        return Promise > 0;
    }

    // The weights of the cuts, two at a time: what one gives up the other takes, as far as it helps.
    private void Weigh()
    {
        var sum = 0.0;
        for (var c = 0; c < _cuts; c++)
        {
            var here = _intercepts[c];
            for (var k = 0; k < Best.Length; k++)
            {
                here += _slopes[c][k] * Best[k];
            }

            _errors[c] = Math.Max(0, Value - here);
            sum += _weights[c];
        }

        for (var c = 0; c < _cuts; c++)
        {
            _weights[c] = sum > 0 ? _weights[c] / sum : 1.0 / _cuts;
        }

        for (var c = 0; c < _cuts; c++)
        {
            _rates[c] = _errors[c];
            for (var other = 0; other < _cuts; other++)
            {
                _rates[c] += _reach * _products[(c * MostCuts) + other] * _weights[other];
            }
        }

        for (var sweep = 0; sweep < MostSweeps; sweep++)
        {
            var (giver, taker) = (-1, 0);
            for (var c = 0; c < _cuts; c++)
            {
                giver = _weights[c] > 0 && (giver < 0 || _rates[c] > _rates[giver]) ? c : giver;
                taker = _rates[c] < _rates[taker] ? c : taker;
            }

            if (_rates[giver] - _rates[taker] < Close)
            {
                return;
            }

            var bend = _reach * (_products[(giver * MostCuts) + giver] + _products[(taker * MostCuts) + taker] - (2 * _products[(giver * MostCuts) + taker]));
            var share = bend <= 0 ? _weights[giver] : Math.Min(_weights[giver], (_rates[giver] - _rates[taker]) / bend);
            _weights[giver] -= share;
            _weights[taker] += share;
            for (var c = 0; c < _cuts; c++)
            {
                _rates[c] += _reach * share * (_products[(c * MostCuts) + taker] - _products[(c * MostCuts) + giver]);
            }
        }
    }
}
