using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Measures;

/// <summary>Reads levels off a stride's signal.</summary>
internal static class Levels
{
    private const int LeastSamples = 4;

    /// <summary>Share of the span's samples a parabola needs: half a span and a little, so that a sit beside a hole is still read.</summary>
    private const double LeastPresent = 0.5;

    /// <summary>The value at a position of the parabola through the samples within a half width; NaN where too few are there.</summary>
    public static double At(ReadOnlySpan<double> values, double position, double halfWidth)
    {
        var (level, _, _) = Parabola(values, position, halfWidth);
        return level;
    }

    /// <summary>Where the parabola around a position turns, kept within the half width.</summary>
    public static double TurningPoint(ReadOnlySpan<double> values, double position, double halfWidth)
    {
        var (_, slope, bend) = Parabola(values, position, halfWidth);
        var shift = -slope / (2 * bend);
        return double.IsFinite(shift) ? position + Math.Clamp(shift, -1, 1) * halfWidth : position;
    }

    /// <summary>The signal less the straight line through its levels at the two sits: slow drift gone, zero at the sits. All NaN where a level is missing.</summary>
    public static double[] BetweenSits(ReadOnlySpan<double> values, StrideSpan span, double levelHalfSpan)
    {
        var half = levelHalfSpan * span.Length;
        var first = At(values, span.Sit, half);
        var slope = (At(values, span.NextSit, half) - first) / span.Length;
        var level = new double[values.Length];
        for (var i = 0; i < level.Length; i++) level[i] = values[i] - first - slope * (i - span.Sit);
        return level;
    }

    private static (double Level, double Slope, double Bend) Parabola(ReadOnlySpan<double> values, double position, double halfWidth)
    {
        var from = Math.Max(0, (int)Math.Ceiling(position - halfWidth));
        var to = Math.Min(values.Length - 1, (int)Math.Floor(position + halfWidth));
        var squares = new LeastSquares(3);
        Span<double> row = stackalloc double[3];
        for (var i = from; i <= to; i++)
        {
            if (!double.IsFinite(values[i])) continue;
            var u = (i - position) / halfWidth;
            row[0] = 1;
            row[1] = u;
            row[2] = u * u;
            squares.Add(row, values[i]);
        }

        if (squares.Count < Math.Max(LeastSamples, LeastPresent * 2 * halfWidth) || squares.Solve() is not { } fit) return (double.NaN, double.NaN, double.NaN);
        return (fit.Solution[0], fit.Solution[1], fit.Solution[2]);
    }
}
