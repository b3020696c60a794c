namespace GaitSeat.Studio;

/// <summary>The points of a pose as truth files name them, in space.</summary>
internal static class PosePoints
{
    public static IEnumerable<(string Name, Point3 Metres, bool Hidden)> Of(RiderPose pose, BodyPlan body) =>
    [
        ("ear", pose.Ear.At(BodyPlan.EarNearM), false),
        ("shoulder", pose.Shoulder.At(body.ShoulderNearM), false),
        ("elbow", pose.Elbow.At(BodyPlan.ElbowNearM), false),
        ("wrist", pose.Wrist.At(BodyPlan.WristNearM), false),
        ("hip", pose.Hip.At(BodyPlan.HipNearM), false),
        ("knee", pose.Knee.At(BodyPlan.KneeNearM), false),
        ("ankle", pose.Ankle.At(BodyPlan.AnkleNearM), false),
        ("heel", pose.Heel.At(BodyPlan.AnkleNearM), false),
        ("toe", pose.Toe.At(BodyPlan.TreadNearM), false),
        ("saddle", pose.Saddle.At(0), true),
        ("bar", pose.Bar.At(BodyPlan.BarNearM), true),
        ("withers", pose.Withers.At(0), false),
        ("tread", pose.Tread.At(BodyPlan.TreadNearM), false),
        ("helmet_top", pose.HelmetTop.At(0), false),
    ];
}
