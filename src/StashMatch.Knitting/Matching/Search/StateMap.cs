using System.Buffers;

namespace StashMatch.Knitting.Matching.Search;

/// <summary>States reached and the least each costs, in the order they were reached.</summary>
internal sealed class StateMap : IDisposable
{
    private int[] _slots = ArrayPool<int>.Shared.Rent(64);
    private ulong[] _states = ArrayPool<ulong>.Shared.Rent(32);
    private double[] _costs = ArrayPool<double>.Shared.Rent(32);
    private int _mask = 63;

    public StateMap() => Array.Clear(_slots, 0, 64);

    public int Count { get; private set; }

    public ulong StateAt(int at) => _states[at];

    public double CostAt(int at) => _costs[at];

    /// <summary>The least a state costs, or <see cref="double.MaxValue"/> where it is not reached.</summary>
    public double CostOf(ulong state) => _slots[Slot(state)] is > 0 and var at ? _costs[at - 1] : double.MaxValue;

    public void Reach(ulong state, double cost)
    {
        var slot = Slot(state);
        if (_slots[slot] is > 0 and var at)
        {
            _costs[at - 1] = Math.Min(_costs[at - 1], cost);
            return;
        }

        if (Count == _states.Length || Count == _costs.Length)
        {
            Grow(ref _states);
            Grow(ref _costs);
        }

        (_states[Count], _costs[Count]) = (state, cost);
        _slots[slot] = ++Count;
        if (2 * Count > _mask)
        {
            Spread();
        }
    }

    public void Dispose()
    {
        ArrayPool<int>.Shared.Return(_slots);
        ArrayPool<ulong>.Shared.Return(_states);
        ArrayPool<double>.Shared.Return(_costs);
    }

    private int Slot(ulong state)
    {
        var slot = (int)((state * 0x9E3779B97F4A7C15UL) >> 32) & _mask;
        while (_slots[slot] is > 0 and var at && _states[at - 1] != state)
        {
            slot = (slot + 1) & _mask;
        }

        return slot;
    }

    private void Grow<T>(ref T[] array)
    {
        var larger = ArrayPool<T>.Shared.Rent(array.Length * 2);
        Array.Copy(array, larger, Count);
        ArrayPool<T>.Shared.Return(array);
        array = larger;
    }

    private void Spread()
    {
        var size = (_mask + 1) * 4;
        ArrayPool<int>.Shared.Return(_slots);
        _slots = ArrayPool<int>.Shared.Rent(size);
        Array.Clear(_slots, 0, size);
        _mask = size - 1;
        for (var at = 0; at < Count; at++)
        {
            _slots[Slot(_states[at])] = at + 1;
        }
    }
}
