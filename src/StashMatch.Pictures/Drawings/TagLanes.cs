namespace StashMatch.Pictures;

/// <summary>Finds places for tags along a line, in lanes, so that none overlaps; what finds no place is left out.</summary>
internal sealed class TagLanes(int most, double gap)
{
    private readonly List<List<(double From, double To)>> lanes = [];

    /// <summary>How many lanes are in use.</summary>
    public int Used => lanes.Count;

    /// <summary>The lane a tag about <paramref name="middle"/> goes in, or null where none is free.</summary>
    public int? Place(double middle, double size, int lanesAllowed)
    {
        var (from, to) = (middle - (size / 2) - (gap / 2), middle + (size / 2) + (gap / 2));
        for (var lane = 0; lane < Math.Min(most, lanesAllowed); lane++)
        {
            if (lane == lanes.Count)
            {
                lanes.Add([]);
            }

            if (lanes[lane].TrueForAll(taken => taken.To <= from || taken.From >= to))
            {
                lanes[lane].Add((from, to));
                return lane;
            }
        }

        return null;
    }
}
