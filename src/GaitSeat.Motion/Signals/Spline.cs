using MathNet.Numerics.Interpolation;

namespace GaitSeat.Motion.Signals;

/// <summary>Puts values known at uneven instants on an even grid by a natural cubic spline; outside the first and last instant stays NaN.</summary>
internal static class Spline
{
    /// <summary>Fewest knots of a spline.</summary>
    public const int MinKnots = 4;

    public static void OnGrid(double[] seconds, double[] values, EvenGrid grid, Span<double> target)
    {
        if (target.Length != grid.Count) throw new ArgumentException($"target has {target.Length} entries; the grid {grid.Count}.", nameof(target));
        var spline = CubicSpline.InterpolateNaturalSorted(seconds, values);
        var (from, to) = Inside(seconds, grid);
        for (var i = from; i <= to; i++) target[i] = spline.Interpolate(Math.Clamp(grid.TimeAt(i), seconds[0], seconds[^1]));
    }

    /// <summary>First and last sample of the grid inside the knots; half a thousandth of a step of slack for rounding.</summary>
    public static (int From, int To) Inside(double[] seconds, EvenGrid grid) =>
        (Math.Max(0, (int)Math.Ceiling(grid.PositionOf(seconds[0]) - 5e-4)), Math.Min(grid.Count - 1, (int)Math.Floor(grid.PositionOf(seconds[^1]) + 5e-4)));
}
