using GaitSeat.Model;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Faults.Rules;

/// <summary>
/// Mean of a measure over a spell. Its standard error has two parts. The strides' own errors are mostly systematic (scale, view yaw, where
/// a model puts a joint) and do not shrink with more strides, so their median is a floor; the spread between strides is
/// sampling and shrinks with their number: <c>se² = median(se_i)² + sd²/n</c>.
/// </summary>
internal static class SpellMean
{
    public static Measured Of(IReadOnlyList<Measured> strides)
    {
        if (strides.Count == 0) return Measured.Missing;
        var values = strides.Select(s => s.Value).ToArray();
        var floor = strides.Select(s => s.StandardError).Median();
        var between = values.Length < 2 ? 0 : values.Variance() / values.Length;
        return new(values.Mean(), Math.Sqrt(floor * floor + between));
    }
}
