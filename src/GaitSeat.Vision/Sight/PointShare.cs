using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// How much of a point comes from the first model (MoveNet), the rest from the second (BlazePose): one share for where the point stands on the
/// whole (over a window of strides) and one for how it moves from frame to frame. The two models err differently: the first has the smaller bias
/// and the larger jitter.
/// </summary>
public sealed record PointShare
{
    public PointShare()
    {
    }

    public PointShare(double place, double motion) => (Place, Motion) = (place, motion);

    /// <summary>First model's share in the slow place, 0..1.</summary>
    [Range(0.0, 1.0)]
    public double Place { get; init; } = 0.5;

    /// <summary>First model's share in the motion about that place, 0..1.</summary>
    [Range(0.0, 1.0)]
    public double Motion { get; init; } = 0.5;
}
