namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>Values of a sampled signal between its samples.</summary>
internal static class TraceValue
{
    /// <summary>Linear between the two samples around the time; NaN outside and where either is unknown.</summary>
    public static double At(double[] times, double[] values, double time)
    {
        var after = Array.BinarySearch(times, time);
        if (after >= 0) return values[after];
        after = ~after;
        if (after == 0 || after == times.Length) return double.NaN;
        var share = (time - times[after - 1]) / (times[after] - times[after - 1]);
        return values[after - 1] + (values[after] - values[after - 1]) * share;
    }
}
