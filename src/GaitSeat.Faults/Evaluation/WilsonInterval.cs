using MathNet.Numerics.Distributions;

namespace GaitSeat.Faults.Evaluation;

/// <summary>A share with its interval (Wilson 1927), which holds near 0 and 1 and for few counts.</summary>
public static class WilsonInterval
{
    /// <returns>Not a number where nothing was counted.</returns>
    public static Interval Of(int count, int of, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, of);
        if (of == 0) return new(double.NaN, double.NaN, double.NaN);
        var (share, z) = (count / (double)of, Normal.InvCDF(0, 1, (1 + confidence) / 2));
        var centre = (share + z * z / (2 * of)) / (1 + z * z / of);
        var half = z / (1 + z * z / of) * Math.Sqrt(share * (1 - share) / of + z * z / (4.0 * of * of));
        return new(share, Math.Max(0, centre - half), Math.Min(1, centre + half));
    }
}
