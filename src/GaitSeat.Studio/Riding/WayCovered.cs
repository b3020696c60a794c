using MathNet.Numerics.Interpolation;

namespace GaitSeat.Studio;

/// <summary>Ground covered since the middle of the clip: steady in one gait, eased from one speed to the next between gaits.</summary>
internal sealed class WayCovered
{
    private readonly double _middle;
    private readonly double _speedMS;
    private readonly CubicSpline? _course;

    public WayCovered(ClipScript script, StrideClock clock)
    {
        _middle = script.DurationSeconds / 2;
        _speedMS = GaitDefaults.StrideLengthM(script.Gait) * script.StrideHzOrUsual;
        if (script.GaitChanges.Count == 0) return;
        var way = new double[clock.Instants.Count];
        for (var i = 1; i < way.Length; i++)
            way[i] = way[i - 1] + LengthM(clock.Strides[i - 1]);
        // Monotone: a horse that halts does not step back.
        _course = CubicSpline.InterpolatePchipSorted([.. clock.Instants], way);
    }

    public double At(double seconds) =>
        _course is null ? _speedMS * (seconds - _middle) : _course.Interpolate(seconds) - _course.Interpolate(_middle);

    private static double LengthM(PlannedStride stride) => stride.HorseStrides * GaitDefaults.StrideLengthM(stride.Gait);
}
