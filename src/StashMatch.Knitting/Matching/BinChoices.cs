namespace StashMatch.Knitting.Matching;

/// <summary>What one leftover may take: counts of each class, laid out flat.</summary>
internal sealed class BinChoices(int bin, int classes)
{
    private readonly List<int> _growing = [];
    private readonly List<int> _growingStates = [];
    private readonly List<double> _growingWorth = [];
    private int[] _counts = [];
    private double[] _worth = [];

    public int Bin { get; } = bin;

    public int[] States { get; private set; } = [];

    public int Count => Math.Max(States.Length, _growingStates.Count);

    public void Add(int[] counts, int state, long worth)
    {
        _growing.AddRange(counts);
        _growingStates.Add(state);
        _growingWorth.Add(worth);
    }

    /// <summary>The same, ready for use.</summary>
    public BinChoices Packed()
    {
        (_counts, States, _worth) = ([.. _growing], [.. _growingStates], [.. _growingWorth]);
        return this;
    }

    public int[] CountsOf(int choice) => _counts[(choice * classes)..((choice + 1) * classes)];

    /// <summary>The best worth at these prices.</summary>
    public double Best(double[] price, out int at)
    {
        var top = double.MinValue;
        at = 0;
        for (var k = 0; k < _worth.Length; k++)
        {
            var worth = WorthAt(price, k);
            if (worth > top)
            {
                (top, at) = (worth, k);
            }
        }

        return top;
    }

    public void TakeFrom(double[] over, int choice)
    {
        for (var c = 0; c < classes; c++)
        {
            over[c] -= _counts[(choice * classes) + c];
        }
    }

    /// <summary>How much worth each choice gives away against the best at these prices.</summary>
    public double[] DearAt(double[] price)
    {
        var top = Best(price, out _);
        var dear = new double[_worth.Length];
        for (var k = 0; k < dear.Length; k++)
        {
            dear[k] = top - WorthAt(price, k);
        }

        return dear;
    }

    private double WorthAt(double[] price, int choice)
    {
        var worth = _worth[choice];
        var at = choice * classes;
        for (var c = 0; c < price.Length; c++)
        {
            worth -= price[c] * _counts[at + c];
        }

        return worth;
    }
}
