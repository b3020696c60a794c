namespace GaitSeat.Vision.Flow;

/// <summary>
/// Tells a cut from a fast pan: the windows of the surroundings are lost at both, but after a pan the thumbnails still agree at some shift.
/// </summary>
internal sealed class CutFinder(CutSettings settings)
{
    // A thumbnail's coarse light and dark (sky over ground) is the same in many scenes; detail within this many px is compared.
    private const int DetailReach = 4;

    // One strong line (a horizon, a fence) must not outvote the rest: detail of this many grey levels counts half, and none counts more than one.
    private const float DetailHalfGrey = 6;

    private float[] _before = [];
    private float[] _now = [];

    public bool IsCut(GreyPyramid before, GreyPyramid now, double foundShare, int looked, int fewestLooked)
    {
        if (looked >= fewestLooked && foundShare >= settings.FoundShare) return false;
        var (a, b) = (before.Levels[before.Coarsest], now.Levels[now.Coarsest]);
        var (deviationA, meanA) = Detail(a, ref _before);
        var (deviationB, meanB) = Detail(b, ref _now);
        if (deviationA < settings.FlatGrey && deviationB < settings.FlatGrey) return Math.Abs(meanA - meanB) > settings.FlatJumpGrey;
        return BestCorrelation(a.Width, a.Height) < settings.ThumbnailCorrelation;
    }

    private static (double Deviation, double Mean) Detail(GreyPicture picture, ref float[] detail)
    {
        if (detail.Length != picture.Width * picture.Height) detail = new float[picture.Width * picture.Height];
        var (sum, squares) = (0.0, 0.0);
        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = 0; x < picture.Width; x++)
            {
                var value = picture.Pixels[(y * picture.Width) + x];
                var d = value - LocalMean(picture, x, y);
                detail[(y * picture.Width) + x] = d / (DetailHalfGrey + Math.Abs(d));
                (sum, squares) = (sum + value, squares + (d * d));
            }
        }

        return (Math.Sqrt(squares / detail.Length), sum / detail.Length);
    }

    private static float LocalMean(GreyPicture picture, int x, int y)
    {
        var (left, right) = (Math.Max(0, x - DetailReach), Math.Min(picture.Width - 1, x + DetailReach));
        var (top, bottom) = (Math.Max(0, y - DetailReach), Math.Min(picture.Height - 1, y + DetailReach));
        var sum = 0f;
        for (var v = top; v <= bottom; v++)
        {
            foreach (var value in picture.Row(v)[left..(right + 1)]) sum += value;
        }

        return sum / ((right - left + 1) * (bottom - top + 1));
    }

    private double BestCorrelation(int width, int height)
    {
        var best = -1.0;
        var (reachX, reachY) = ((int)(settings.LargestShift * width), (int)(settings.LargestShift * height));
        for (var dy = -reachY; dy <= reachY; dy++)
        {
            for (var dx = -reachX; dx <= reachX; dx++) best = Math.Max(best, Correlation(width, height, dx, dy));
        }

        return best;
    }

    private double Correlation(int width, int height, int dx, int dy)
    {
        double ab = 0, aa = 0, bb = 0;
        for (var y = Math.Max(0, -dy); y < Math.Min(height, height - dy); y++)
        {
            var from = Math.Max(0, -dx);
            var length = Math.Min(width, width - dx) - from;
            var a = _before.AsSpan((y * width) + from, length);
            var b = _now.AsSpan(((y + dy) * width) + from + dx, length);
            for (var x = 0; x < length; x++) (ab, aa, bb) = (ab + (a[x] * b[x]), aa + (a[x] * a[x]), bb + (b[x] * b[x]));
        }

        return aa > 0 && bb > 0 ? ab / Math.Sqrt(aa * bb) : 0;
    }
}
