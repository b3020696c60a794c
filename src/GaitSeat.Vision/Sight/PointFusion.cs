using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>From what two models saw, frame by frame, to one rider's near-side tracks over the whole clip.</summary>
public sealed class PointFusion(BodyPointSettings settings)
{
    /// <param name="timeSeconds">Presentation times, s, strictly increasing.</param>
    /// <param name="poses">What was read; null where the frame was not looked at. Same length.</param>
    /// <param name="path">The scouting pass.</param>
    /// <param name="trunk">Motion of the horse under the saddle, frame to frame.</param>
    /// <param name="surroundings">Motion of the standing surroundings, frame to frame.</param>
    /// <param name="cutBefore">Where the picture jumps.</param>
    /// <param name="widthPx">Width of the analysed picture.</param>
    /// <param name="heightPx">Height of the analysed picture.</param>
    public Sightings Fuse(
        double[] timeSeconds, RawPose?[] poses, RiderPath path, PatchMotion trunk, PatchMotion surroundings, bool[] cutBefore, int widthPx, int heightPx)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(poses);
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(trunk);
        ArgumentNullException.ThrowIfNull(surroundings);
        ArgumentNullException.ThrowIfNull(cutBefore);
        ArgumentOutOfRangeException.ThrowIfNotEqual(poses.Length, timeSeconds.Length);
        ArgumentOutOfRangeException.ThrowIfNotEqual(cutBefore.Length, timeSeconds.Length);
        poses = BetweenReadings.Fill(timeSeconds, poses, cutBefore);
        var facing = FacingVote.Decide(timeSeconds, poses, cutBefore, settings.VoteWindowSeconds);
        var sides = poses.Select((p, i) => p is null || facing[i] == Facing.Unknown ? null : NearSide.Of(p, facing[i])).ToArray();
        SwapRepair.Undo(sides, cutBefore);
        var points = PointBlend.Blend(timeSeconds, sides, cutBefore, settings);
        RigidTrunk.Hold(timeSeconds, points, cutBefore, settings);
        SteadyFoot.Hold(timeSeconds, points, cutBefore, settings);
        var turn = ViewYaw.Turn(timeSeconds, points, facing, cutBefore, settings);
        var rider = Array.ConvertAll(timeSeconds, path.RiderAt);
        return new Sightings
        {
            WidthPx = widthPx,
            HeightPx = heightPx,
            TimeSeconds = timeSeconds,
            Rider = rider,
            Horse = Array.ConvertAll(timeSeconds, path.HorseAt),
            Facing = facing,
            ViewTurnDeg = turn,
            Reason = FrameReasons.Of(rider, points, facing, widthPx, heightPx, settings),
            CutBefore = cutBefore,
            Points = points,
            Trunk = trunk,
            Surroundings = surroundings,
        };
    }
}
