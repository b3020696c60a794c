namespace GaitSeat.Vision.Flow;

/// <summary>
/// Finds the shift of a whole region by comparing it at every whole-pixel shift, on a level where the rider is small:
/// the way in when nothing is known of the trunk's speed.
/// </summary>
internal sealed class BlockSearch
{
    // The rider's height on the level searched, px: at most twice this.
    private const int RiderPx = 24;

    // A difference beyond this is as good as any other: a rider's leg or the background may differ wholly.
    private const float LargestDifference = 24;

    // Ties (a coat without texture) go to the smaller motion: the cost grows by this share at the farthest shift.
    private const double TiePenalty = 0.02;

    private readonly List<int> _places = [];

    /// <summary>The best shift, level-0 px.</summary>
    public (double X, double Y) Find(GreyPyramid before, GreyPyramid now, Region region, double riderHeight, double farthest)
    {
        var level = Math.Clamp((int)Math.Floor(Math.Log2(riderHeight / RiderPx)), 0, before.Coarsest);
        var (from, to) = (before.Levels[level], now.Levels[level]);
        var reach = Math.Max(1, (int)Math.Round(farthest / (1 << level)));
        Gather(from, region, 1 << level, reach);
        var (best, bestCost) = ((X: 0, Y: 0), double.PositiveInfinity);
        if (_places.Count == 0) return (0, 0);
        for (var y = -reach; y <= reach; y++)
        {
            for (var x = -reach; x <= reach; x++)
            {
                var cost = Cost(from, to, (y * to.Width) + x) * (1 + (TiePenalty * Math.Sqrt((x * x) + (y * y)) / reach));
                if (cost < bestCost) (best, bestCost) = ((x, y), cost);
            }
        }

        return (best.X * (1 << level), best.Y * (1 << level));
    }

    private void Gather(GreyPicture picture, Region region, int scale, int reach)
    {
        _places.Clear();
        for (var y = reach; y < picture.Height - reach; y++)
        {
            for (var x = reach; x < picture.Width - reach; x++)
            {
                if (region.Contains((x + 0.5) * scale, (y + 0.5) * scale)) _places.Add((y * picture.Width) + x);
            }
        }
    }

    private double Cost(GreyPicture from, GreyPicture to, int shift)
    {
        var cost = 0f;
        foreach (var at in _places) cost += Math.Min(Math.Abs(from.Pixels[at] - to.Pixels[at + shift]), LargestDifference);
        return cost;
    }
}
