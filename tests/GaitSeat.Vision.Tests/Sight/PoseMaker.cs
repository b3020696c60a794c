using GaitSeat.Model;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

/// <summary>A rider as both models would see one facing right, right side near; mirrored for facing left.</summary>
internal static class PoseMaker
{
    public static readonly BoxPx Box = new(90, 90, 110, 260);

    private static readonly (BodyPoint Point, double X, double Y)[] Near =
    [
        (BodyPoint.Nose, 165, 110), (BodyPoint.Ear, 150, 110), (BodyPoint.Shoulder, 145, 150), (BodyPoint.Elbow, 145, 190), (BodyPoint.Wrist, 180, 205),
        (BodyPoint.Hip, 135, 225), (BodyPoint.Knee, 170, 270), (BodyPoint.Ankle, 135, 330), (BodyPoint.Heel, 125, 342), (BodyPoint.Toe, 165, 338),
    ];

    /// <param name="farShift">How far the far side's points lie ahead of the near side's, px.</param>
    public static RawPose Facing(Facing facing, double farShift = 0, double moveX = 0, double moveY = 0)
    {
        RawPoints first = RawPoints.OfCount(PointOrder.CocoCount), second = RawPoints.OfCount(PointOrder.BlazeCount);
        foreach (var (point, x, y) in Near)
        {
            Put(first, PointOrder.CocoLeft(point));
            Put(second, PointOrder.BlazeLeft(point));

            void Put(RawPoints to, int left)
            {
                if (left < 0) return;
                var near = left + PointOrder.SideStep(point, facing);
                Set(to, near, x);
                if (point != BodyPoint.Nose) Set(to, 2 * left + 1 - near, x + farShift);
            }

            void Set(RawPoints to, int at, double px) =>
                (to.X[at], to.Y[at], to.Score[at]) = ((float)((facing == Model.Facing.Right ? px : 300 - px) + moveX), (float)(y + moveY), 0.9f);
        }

        return new(Box, first, second);
    }

    /// <summary>The same pose with left and right of one COCO joint changed over.</summary>
    public static RawPose Swapped(RawPose pose, BodyPoint joint)
    {
        var left = PointOrder.CocoLeft(joint);
        var (x, y) = ((float[])pose.First.X.Clone(), (float[])pose.First.Y.Clone());
        (x[left], x[left + 1]) = (x[left + 1], x[left]);
        (y[left], y[left + 1]) = (y[left + 1], y[left]);
        return pose with { First = pose.First with { X = x, Y = y } };
    }

    /// <summary>BlazePose's points with left and right of some joints changed over.</summary>
    public static RawPoints SwappedSecond(RawPose pose, params BodyPoint[] joints)
    {
        var (x, y) = ((float[])pose.Second!.X.Clone(), (float[])pose.Second.Y.Clone());
        foreach (var left in joints.Select(PointOrder.BlazeLeft))
        {
            (x[left], x[left + 1]) = (x[left + 1], x[left]);
            (y[left], y[left + 1]) = (y[left + 1], y[left]);
        }

        return pose.Second with { X = x, Y = y };
    }
}
