using GaitSeat.Model;
using GaitSeat.Motion.View;

namespace GaitSeat.Motion.Tracks;

/// <summary>Which frames are measured: the eyes' reasons, and the view yaw held against the limit.</summary>
internal static class FrameVerdict
{
    public static FrameReason[] Judge(Sightings sightings, TurnCourse course, SegmentSettings settings)
    {
        var verdict = new FrameReason[sightings.Count];
        for (var i = 0; i < verdict.Length; i++)
        {
            verdict[i] = sightings.Reason[i];
            if (verdict[i] == FrameReason.None && Math.Abs(course.TurnDeg[i]) > settings.MaxViewYawDeg) verdict[i] = FrameReason.TurnedOut;
        }

        return verdict;
    }

    /// <summary>A frame without the trunk is still followed over the stirrup.</summary>
    public static bool IsFollowed(FrameReason reason) => reason is FrameReason.None or FrameReason.TrunkLost;
}
