using System.Runtime.InteropServices;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// The motion most windows share: the best of many trial motions, then reweighted least squares with a narrowing
/// Geman–McClure weight (from memory). Each window counts with its own information matrix, so an edge speaks only across itself.
/// </summary>
internal sealed class RobustFit
{
    // The tolerance begins this many times wider than it ends, and halves at each round.
    private const int WidestFactor = 4;
    private const int RoundsAtEnd = 4;

    private readonly NormalEquations _equations = new();
    private readonly List<double> _distances = [];

    /// <summary>Trial motions: each window's own shift.</summary>
    public static void AddShifts(List<FlowPoint> points, MotionField around, List<MotionField> trials)
    {
        foreach (var p in points) trials.Add(around with { P = new(p.Dx, p.Dy) });
    }

    /// <summary>Trial motions: shift, turn and zoom through two windows drawn by chance.</summary>
    public static void AddPairs(List<FlowPoint> points, MotionField around, int count, Random random, List<MotionField> trials)
    {
        if (points.Count < 2) return;
        for (var i = 0; i < count; i++)
        {
            var (a, b) = (points[random.Next(points.Count)], points[random.Next(points.Count)]);
            if (Pair(a, b, around) is { } field) trials.Add(field);
        }
    }

    /// <summary>Null where no trial is given.</summary>
    public FitResult? Fit(List<FlowPoint> points, List<MotionField> trials, in FitSettings settings)
    {
        if (trials.Count == 0) return null;
        var field = Best(points, trials, settings);
        var covariance = default(Tensor);
        for (double factor = WidestFactor, left = RoundsAtEnd; left > 0;)
        {
            (field, covariance) = Refine(points, field, settings, settings.OutlierPx * factor);
            if (factor > 1) factor /= 2;
            else left--;
        }

        return Judge(points, field, covariance, settings);
    }

    private static MotionField? Pair(in FlowPoint a, in FlowPoint b, MotionField around)
    {
        var (x, y) = (b.X - a.X, b.Y - a.Y);
        var squared = (x * x) + (y * y);
        // Two windows that overlap tell turn and zoom badly.
        if (squared < 4 * WindowMatcher.Side * WindowMatcher.Side) return null;
        var (dx, dy) = (b.Dx - a.Dx, b.Dy - a.Dy);
        var growth = ((dx * x) + (dy * y)) / squared;
        var turn = ((dy * x) - (dx * y)) / squared;
        var (toX, toY) = (around.CentreX - a.X, around.CentreY - a.Y);
        return around with
        {
            P = new(a.Dx + (growth * toX) - (turn * toY), a.Dy + (turn * toX) + (growth * toY), growth * around.Length, turn * around.Length),
        };
    }

    private static MotionField Best(List<FlowPoint> points, List<MotionField> trials, in FitSettings settings)
    {
        var (best, bestScore) = (trials[0], double.NegativeInfinity);
        foreach (var trial in trials)
        {
            var score = 0.0;
            foreach (ref readonly var p in CollectionsMarshal.AsSpan(points)) score += p.Weight * Trust(p, trial, settings, 2 * settings.OutlierPx);
            if (score > bestScore) (best, bestScore) = (trial, score);
        }

        return best;
    }

    private (MotionField Field, Tensor Covariance) Refine(List<FlowPoint> points, MotionField field, in FitSettings settings, double tolerance)
    {
        _equations.Begin(settings);
        foreach (ref readonly var p in CollectionsMarshal.AsSpan(points))
        {
            var (x, y) = ((p.X - field.CentreX) / field.Length, (p.Y - field.CentreY) / field.Length);
            _equations.Add(x, y, p, p.Weight * Trust(p, field, settings, tolerance));
        }

        var (best, covariance) = _equations.Solve();
        return (field with { P = best }, covariance);
    }

    private static double Trust(in FlowPoint p, in MotionField field, in FitSettings settings, double tolerance)
    {
        var ratio = Distance(p, field, settings) / tolerance;
        var t = 1 / (1 + (ratio * ratio));
        return t * t;
    }

    private static double Distance(in FlowPoint p, in MotionField field, in FitSettings settings)
    {
        var (dx, dy) = field.At(p.X, p.Y);
        return settings.Precision * Math.Sqrt(p.SquaredDistance(dx, dy));
    }

    private FitResult Judge(List<FlowPoint> points, MotionField field, Tensor covariance, in FitSettings settings)
    {
        _distances.Clear();
        foreach (ref readonly var p in CollectionsMarshal.AsSpan(points))
        {
            var distance = Distance(p, field, settings);
            if (distance <= settings.OutlierPx) _distances.Add(distance);
        }

        _distances.Sort();
        var median = _distances.Count == 0 ? double.NaN : _distances[_distances.Count / 2];
        return new(field, _distances.Count, median, Math.Sqrt(covariance.Eigenvalues.Large));
    }
}
