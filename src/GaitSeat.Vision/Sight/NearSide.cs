using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>One frame's points of both models, near side chosen.</summary>
/// <param name="RiderHeightPx">Height of the rider's box, the yardstick for distances.</param>
/// <param name="Anchor">Middle of the first model's shoulders: distances from frame to frame are taken from here, so that neither camera nor bounce count.</param>
public sealed record NearSide(double RiderHeightPx, PointPx Anchor, ModelSide First, ModelSide Second)
{
    public static NearSide Of(RawPose pose, Facing facing)
    {
        ArgumentNullException.ThrowIfNull(pose);
        ModelSide first = ModelSide.Of(pose.First, facing, PointOrder.CocoLeft), second = ModelSide.Of(pose.Second, facing, PointOrder.BlazeLeft);
        PointPx near = first.Near[(int)BodyPoint.Shoulder], far = first.Other[(int)BodyPoint.Shoulder];
        return new(pose.Rider.Height, new((near.X + far.X) / 2, (near.Y + far.Y) / 2), first, second);
    }
}
