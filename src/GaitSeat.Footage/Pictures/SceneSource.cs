using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>Turns what was measured in a clip into the scene of a frame, by its time, in the pixels of the pictures painted.</summary>
internal sealed class SceneSource
{
    private readonly Sightings _sightings;
    private readonly ClipMotion _motion;
    private readonly Func<double, IReadOnlyList<BoxPx>>? _othersAt;
    private readonly MotionTrace _trace;
    private readonly (double X, double Y) _zoom;
    private readonly double _toleranceSeconds;

    public SceneSource(Sightings sightings, ClipMotion motion, Func<double, IReadOnlyList<BoxPx>>? othersAt, int widthPx, int heightPx)
    {
        ArgumentNullException.ThrowIfNull(sightings);
        ArgumentNullException.ThrowIfNull(motion);
        _sightings = sightings;
        _motion = motion;
        _othersAt = othersAt;
        _zoom = ((double)widthPx / sightings.WidthPx, (double)heightPx / sightings.HeightPx);
        _trace = _zoom == (1, 1) ? motion.Trace : motion.Trace with { Points = [.. motion.Trace.Points.Select(Zoomed)] };
        _toleranceSeconds = MedianStep(sightings.TimeSeconds) * Tolerance;
    }

    /// <summary>A sighting further from the frame than this many frame steps is not this frame's.</summary>
    private const double Tolerance = 0.75;

    public OverlayScene At(double timeSeconds)
    {
        var seen = Nearest(_sightings.TimeSeconds, timeSeconds);
        var traced = Nearest(_trace.TimeSeconds, timeSeconds);
        return new(timeSeconds, _trace, traced, _motion.Strides, _motion.Spells,
            seen < 0 ? Facing.Unknown : _sightings.Facing[seen], seen < 0 ? null : Zoomed(_sightings.Rider[seen]),
            [.. (_othersAt?.Invoke(timeSeconds) ?? []).Select(Zoomed)]);
    }

    /// <summary>Index of the time nearest to the given one; -1 where none is near enough.</summary>
    private int Nearest(double[] times, double time)
    {
        if (times.Length == 0) return -1;
        var at = Array.BinarySearch(times, time);
        if (at < 0) at = ~at;
        if (at == times.Length || (at > 0 && time - times[at - 1] < times[at] - time)) at--;
        return Math.Abs(times[at] - time) <= _toleranceSeconds ? at : -1;
    }

    private PointTrack Zoomed(PointTrack track) =>
        track with { XPx = [.. track.XPx.Select(x => x * _zoom.X)], YPx = [.. track.YPx.Select(y => y * _zoom.Y)] };

    private BoxPx? Zoomed(BoxPx? box) => box is { } b ? Zoomed(b) : null;

    private BoxPx Zoomed(BoxPx b) => new(b.X * _zoom.X, b.Y * _zoom.Y, b.Width * _zoom.X, b.Height * _zoom.Y);

    private static double MedianStep(double[] times)
    {
        if (times.Length < 2) return double.PositiveInfinity;
        var steps = times.Zip(times.Skip(1), (a, b) => b - a).Order().ToArray();
        return steps[steps.Length / 2];
    }
}
