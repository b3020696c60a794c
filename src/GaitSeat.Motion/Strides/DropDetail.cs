namespace GaitSeat.Motion.Strides;

/// <summary>Why a stride was dropped, in a sentence.</summary>
internal static class DropDetail
{
    public static string Of(string reason, MotionSettings settings) => reason switch
    {
        StrideCutter.HoleInPoints => $"Hip, knee, ankle or the seat signal was lost for longer than {settings.Segment.MaxHoleSeconds} s.",
        StrideCutter.Irregular => $"The time between the sits departs from the spell's stride by more than {settings.Stride.MaxDurationDeparture * 100:F0} %.",
        StrideCutter.NoRise => $"The seat rose by less than {settings.Stride.MinRisePctLeg} % of leg length.",
        _ => reason,
    };
}
