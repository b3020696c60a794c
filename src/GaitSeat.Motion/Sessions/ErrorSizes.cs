using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>Standard deviations of what a measure does without any change, in its unit.</summary>
/// <param name="Scatter">From stride to stride.</param>
/// <param name="Slow">Wandering within a clip.</param>
/// <param name="Clip">Steady within a clip, different between clips.</param>
internal readonly record struct ErrorSizes(double Scatter, double Slow, double Clip)
{
    /// <param name="strideSe">Root mean square of the strides' standard errors.</param>
    public static ErrorSizes Of(StrideMeasure measure, double strideSe, SessionSettings s) => measure switch
    {
        StrideMeasure.ThighAngleSit => new(s.ThighScatterDeg, s.ThighSlowDeg, s.ThighClipDeg),
        StrideMeasure.StirrupLengthIndex => new(s.IndexScatterPctLeg, s.IndexSlowPctLeg, s.IndexClipPctLeg),
        _ => new(s.ScatterShare * strideSe, s.SlowShare * strideSe, s.ClipShare * strideSe),
    };
}
