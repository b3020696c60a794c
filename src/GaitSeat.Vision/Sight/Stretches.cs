namespace GaitSeat.Vision.Sight;

/// <summary>Frames that belong together: no hole and no cut between them.</summary>
public static class Stretches
{
    /// <summary>Ranges of frames that are present and not parted by a cut.</summary>
    public static IEnumerable<Range> Of(bool[] present, bool[] cutBefore)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(cutBefore);
        return Found(present, cutBefore);
    }

    private static IEnumerable<Range> Found(bool[] present, bool[] cutBefore)
    {
        for (var start = 0; start < present.Length;)
        {
            if (!present[start])
            {
                start++;
                continue;
            }

            var end = start + 1;
            while (end < present.Length && present[end] && !cutBefore[end]) end++;
            yield return start..end;
            start = end;
        }
    }

    /// <summary>Median over the frames within half a window of each frame, inside one stretch; NaN values are left out, NaN where none is left.</summary>
    /// <param name="timeSeconds">Times of the stretch, s, increasing.</param>
    public static double[] RollingMedian(ReadOnlySpan<double> timeSeconds, ReadOnlySpan<double> value, double windowSeconds)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(value.Length, timeSeconds.Length);
        var median = new double[value.Length];
        var window = new List<double>();
        int from = 0, to = 0;
        for (var i = 0; i < value.Length; i++)
        {
            while (timeSeconds[i] - timeSeconds[from] > windowSeconds / 2) Leave(value[from++]);
            while (to < value.Length && timeSeconds[to] - timeSeconds[i] <= windowSeconds / 2) Enter(value[to++]);
            var n = window.Count;
            median[i] = n == 0 ? double.NaN : (window[(n - 1) / 2] + window[n / 2]) / 2;
        }

        return median;

        void Enter(double v)
        {
            if (double.IsNaN(v)) return;
            var at = window.BinarySearch(v);
            window.Insert(at < 0 ? ~at : at, v);
        }

        void Leave(double v)
        {
            if (!double.IsNaN(v)) window.RemoveAt(window.BinarySearch(v));
        }
    }
}
