using GaitSeat.Model;

namespace GaitSeat.Faults.Features;

/// <summary>One measure over the strides of a spell.</summary>
/// <param name="Mean">NaN where no stride has a value.</param>
/// <param name="Sd">Sample standard deviation; NaN below two values.</param>
/// <param name="TrendPerStride">Least-squares slope against the stride's number; NaN below three values.</param>
internal readonly record struct MeasureSeries(double Mean, double Sd, double TrendPerStride)
{
    private const int LeastForTrend = 3;

    internal static MeasureSeries Of(IReadOnlyList<Stride> strides, StrideMeasure measure)
    {
        double n = 0, sumX = 0, sumY = 0;
        foreach (var s in strides)
        {
            var y = s.Measures[measure].Value;
            if (!double.IsFinite(y)) continue;
            (n, sumX, sumY) = (n + 1, sumX + s.Number, sumY + y);
        }

        if (n == 0) return new(double.NaN, double.NaN, double.NaN);
        var (meanX, meanY) = (sumX / n, sumY / n);
        double xx = 0, xy = 0, yy = 0;
        foreach (var s in strides)
        {
            var y = s.Measures[measure].Value;
            if (!double.IsFinite(y)) continue;
            var (dx, dy) = (s.Number - meanX, y - meanY);
            (xx, xy, yy) = (xx + dx * dx, xy + dx * dy, yy + dy * dy);
        }

        return new(meanY, n < 2 ? double.NaN : Math.Sqrt(yy / (n - 1)), n < LeastForTrend || xx == 0 ? double.NaN : xy / xx);
    }
}
