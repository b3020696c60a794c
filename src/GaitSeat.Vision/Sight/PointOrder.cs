using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Where our body points stand in the models' lists. COCO's 17 points and BlazePose's 33 both list left before right.</summary>
public static class PointOrder
{
    public const int CocoCount = 17;
    public const int BlazeCount = 33;

    /// <summary>Left-side index in COCO order; the right one follows. -1 where COCO has no such point.</summary>
    public static int CocoLeft(BodyPoint point) => point switch
    {
        BodyPoint.Nose => 0,
        BodyPoint.Ear => 3,
        BodyPoint.Shoulder or BodyPoint.FarShoulder => 5,
        BodyPoint.Elbow => 7,
        BodyPoint.Wrist => 9,
        BodyPoint.Hip or BodyPoint.FarHip => 11,
        BodyPoint.Knee => 13,
        BodyPoint.Ankle => 15,
        _ => -1,
    };

    /// <summary>Left-side index in BlazePose order; the right one follows.</summary>
    public static int BlazeLeft(BodyPoint point) => point switch
    {
        BodyPoint.Nose => 0,
        BodyPoint.Ear => 7,
        BodyPoint.Shoulder or BodyPoint.FarShoulder => 11,
        BodyPoint.Elbow => 13,
        BodyPoint.Wrist => 15,
        BodyPoint.Hip or BodyPoint.FarHip => 23,
        BodyPoint.Knee => 25,
        BodyPoint.Ankle => 27,
        BodyPoint.Heel => 29,
        BodyPoint.Toe => 31,
        _ => -1,
    };

    /// <summary>1 where the right-side index is wanted: the near side when facing right, the far side when facing left. The nose has no side.</summary>
    public static int SideStep(BodyPoint point, Facing facing)
    {
        if (point == BodyPoint.Nose) return 0;
        var far = point is BodyPoint.FarShoulder or BodyPoint.FarHip;
        return (facing == Facing.Right) != far ? 1 : 0;
    }
}
