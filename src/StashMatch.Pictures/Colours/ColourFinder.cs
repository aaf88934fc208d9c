using StashMatch.Knitting.Colours;

namespace StashMatch.Pictures;

/// <summary>Finds the main colours of a photo, four at most: pixels are sorted into boxes, boxes gathered about centres in OKLab, the same way every time [ours].</summary>
public static class ColourFinder
{
    /// <summary>The most colours found.</summary>
    public const int Most = 4;

    // Light and shade on one ball differ more in lightness than its colour does from the next, so lightness counts for less.
    private const double LightnessCounts = 0.55;
    private const double SameColour = 0.075;
    private const double LeastShare = 0.02;
    private const int Rounds = 12;
    private const int BitsDropped = 3;

    /// <summary>The colours, the largest share first.</summary>
    public static IReadOnlyList<FoundColour> Find(PixelBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        var boxes = Sort(block, out var boxOf);
        var centres = Merge(Gather(boxes, Sow(boxes)), boxes);
        var total = block.Width * block.Height;
        var kept = centres.Select((c, i) => (Centre: c, Of: boxes.FindAll(b => Nearest(b, centres) == i)))
            .Where(c => c.Of.Sum(b => b.Count) >= LeastShare * total)
            .OrderByDescending(c => c.Of.Sum(b => b.Count)).ThenBy(c => c.Of[0].Key)
            .ToList();
        return
        [
            .. kept.Select((c, i) =>
            {
                var members = c.Of.Select(b => b.Key).ToHashSet();
                var (across, down) = Widest.In(block.Width, block.Height, p => members.Contains(boxOf[p]));
                return new FoundColour(i + 1, Mean(c.Of), (double)c.Of.Sum(b => b.Count) / total, across, down);
            }),
        ];
    }

    // Whole-number sums, so that the order of the pixels cannot matter.
    private static List<Box> Sort(PixelBlock block, out int[] boxOf)
    {
        var bytes = block.Bytes;
        var boxes = new Dictionary<int, Box>();
        boxOf = new int[block.Width * block.Height];
        for (var pixel = 0; pixel < boxOf.Length; pixel++)
        {
            var (r, g, b) = (bytes[3 * pixel], bytes[(3 * pixel) + 1], bytes[(3 * pixel) + 2]);
            var key = ((r >> BitsDropped) << 10) | ((g >> BitsDropped) << 5) | (b >> BitsDropped);
            boxOf[pixel] = key;
            if (!boxes.TryGetValue(key, out var box))
            {
                boxes[key] = box = new Box(key);
            }

            box.Add(r, g, b);
        }

        return [.. boxes.Values.OrderBy(b => b.Key)];
    }

    // First the fullest box; then, each time, the one with most pixels far from all centres so far.
    private static List<Place> Sow(List<Box> boxes)
    {
        var centres = new List<Place> { boxes.MaxBy(b => b.Count)!.Place };
        while (centres.Count < Most + 2)
        {
            var next = boxes.MaxBy(b => b.Count * Square(centres.Min(c => Apart(b.Place, c))))!;
            if (centres.Min(c => Apart(next.Place, c)) < SameColour)
            {
                break;
            }

            centres.Add(next.Place);
        }

        return centres;
    }

    private static List<Place> Gather(List<Box> boxes, List<Place> centres)
    {
        for (var round = 0; round < Rounds; round++)
        {
            var sums = new (double L, double A, double B, double Count)[centres.Count];
            foreach (var box in boxes)
            {
                ref var sum = ref sums[Nearest(box, centres)];
                var (place, n) = (box.Place, box.Count);
                sum = (sum.L + (place.L * n), sum.A + (place.A * n), sum.B + (place.B * n), sum.Count + n);
            }

            var moved = sums.Where(s => s.Count > 0).Select(s => new Place(s.L / s.Count, s.A / s.Count, s.B / s.Count)).ToList();
            if (moved.SequenceEqual(centres))
            {
                break;
            }

            centres = moved;
        }

        return centres;
    }

    // The nearest two become one while they look the same or are more than are wanted.
    private static List<Place> Merge(List<Place> centres, List<Box> boxes)
    {
        while (centres.Count > 1)
        {
            var pairs = from i in Enumerable.Range(0, centres.Count)
                        from j in Enumerable.Range(i + 1, centres.Count - i - 1)
                        select (I: i, J: j, Apart: Apart(centres[i], centres[j]));
            var (first, second, apart) = pairs.MinBy(p => p.Apart);
            if (apart >= SameColour && centres.Count <= Most)
            {
                break;
            }

            var (m, n) = (Held(first), Held(second));
            var (p, q) = (centres[first], centres[second]);
            centres = [.. centres.Where((_, i) => i != first && i != second), new Place(Mid(p.L, q.L), Mid(p.A, q.A), Mid(p.B, q.B))];
            double Mid(double x, double y) => ((x * m) + (y * n)) / Math.Max(1, m + n);
        }

        return centres;
        int Held(int centre) => boxes.Where(b => Nearest(b, centres) == centre).Sum(b => b.Count);
    }

    private static int Nearest(Box box, List<Place> centres)
    {
        var (best, least) = (0, double.MaxValue);
        for (var i = 0; i < centres.Count; i++)
        {
            var apart = Apart(box.Place, centres[i]);
            (best, least) = apart < least ? (i, apart) : (best, least);
        }

        return best;
    }

    private static YarnColour Mean(List<Box> boxes)
    {
        var n = boxes.Sum(b => (long)b.Count);
        return YarnColour.FromRgb(Of(boxes.Sum(b => b.Red)), Of(boxes.Sum(b => b.Green)), Of(boxes.Sum(b => b.Blue)));
        byte Of(long sum) => (byte)((sum + (n / 2)) / n);
    }

    private static double Apart(Place a, Place b) => Math.Sqrt(Square(a.L - b.L) + Square(a.A - b.A) + Square(a.B - b.B));

    private static double Square(double x) => x * x;

    private readonly record struct Place(double L, double A, double B);

    private sealed class Box(int key)
    {
        public int Key { get; } = key;

        public int Count { get; private set; }

        public long Red { get; private set; }

        public long Green { get; private set; }

        public long Blue { get; private set; }

        // The middle of the box, whatever is in it.
        public Place Place { get; } = At(key);

        public void Add(byte red, byte green, byte blue) => (Count, Red, Green, Blue) = (Count + 1, Red + red, Green + green, Blue + blue);

        private static Place At(int key)
        {
            var lab = YarnColour.FromRgb(Middle(key >> 10), Middle((key >> 5) & 31), Middle(key & 31)).OkLab;
            return new Place(lab.L * LightnessCounts, lab.A, lab.B);
            static byte Middle(int part) => (byte)((part << BitsDropped) | (1 << (BitsDropped - 1)));
        }
    }
}
