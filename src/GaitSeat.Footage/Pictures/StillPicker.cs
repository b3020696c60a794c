using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>Keeps two painted frames: a sit and the top that follows, of the stride whose rise is the median, so that the picture is typical.</summary>
internal sealed class StillPicker
{
    private readonly double? _sitSeconds;
    private readonly double? _topSeconds;
    private readonly string _pathStart;
    private double _sitOff = double.PositiveInfinity;
    private double _topOff = double.PositiveInfinity;

    public StillPicker(ClipMotion motion, string pathStart)
    {
        var stride = Typical(motion.Strides);
        (_sitSeconds, _topSeconds, _pathStart) = (stride?.StartSeconds, stride?.TopSeconds, pathStart);
    }

    public string? SitPath { get; private set; }

    public string? TopPath { get; private set; }

    /// <summary>Saves the frame where it is nearer to the sit or the top than the ones before.</summary>
    public void Offer(Frame frame)
    {
        if (_sitSeconds is { } sit && IsNearer(frame, sit, ref _sitOff)) StillWriter.SaveJpeg(frame, SitPath = _pathStart + "-sit.jpg");
        if (_topSeconds is { } top && IsNearer(frame, top, ref _topOff)) StillWriter.SaveJpeg(frame, TopPath = _pathStart + "-top.jpg");
    }

    private static Stride? Typical(IReadOnlyList<Stride> strides)
    {
        var withRise = strides.Where(s => !double.IsNaN(Rise(s))).OrderBy(Rise).ToArray();
        if (withRise.Length == 0) return strides.Count == 0 ? null : strides[(strides.Count - 1) / 2];
        return withRise[(withRise.Length - 1) / 2];
    }

    private static double Rise(Stride stride) => stride.Measures[StrideMeasure.RiseHeightPctLeg].Value;

    /// <summary>Far-off frames are not saved only to be replaced: the first candidate lies within this many seconds of the instant (two frames at 25 Hz, so that even a thin reading has one).</summary>
    private const double WithinSeconds = 0.08;

    private static bool IsNearer(Frame frame, double seconds, ref double off)
    {
        var now = Math.Abs(frame.TimeSeconds - seconds);
        if (now > WithinSeconds || now >= off) return false;
        off = now;
        return true;
    }
}
