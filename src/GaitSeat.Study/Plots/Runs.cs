namespace GaitSeat.Study.Plots;

/// <summary>Splits a signal where it is unknown, so that a gap is shown as a gap.</summary>
internal static class Runs
{
    /// <summary>Stretches of finite values, with their times; a stretch of one value is kept.</summary>
    public static IEnumerable<(double[] Times, double[] Values)> Of(double[] times, double[] values)
    {
        for (var start = 0; start < values.Length;)
        {
            var end = start;
            while (end < values.Length && double.IsFinite(values[end])) end++;
            if (end > start) yield return (times[start..end], values[start..end]);
            start = end + 1;
        }
    }
}
