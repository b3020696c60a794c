using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Decides which way the rider faces, by majority over a window of time that no cut divides.</summary>
public static class FacingVote
{
    /// <summary>Facing of every frame; unknown where nothing was read within the window.</summary>
    /// <param name="windowSeconds">Whole length of the window, s.</param>
    public static Facing[] Decide(double[] timeSeconds, RawPose?[] poses, bool[] cutBefore, double windowSeconds)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(poses);
        ArgumentNullException.ThrowIfNull(cutBefore);
        var votes = Array.ConvertAll(poses, p => p is null ? 0 : VoteOf(p));
        var facing = new Facing[poses.Length];
        for (var i = 0; i < poses.Length; i++)
        {
            var sum = votes[i];
            for (var k = i; k > 0 && !cutBefore[k] && timeSeconds[i] - timeSeconds[k - 1] <= windowSeconds / 2; k--) sum += votes[k - 1];
            for (var k = i + 1; k < poses.Length && !cutBefore[k] && timeSeconds[k] - timeSeconds[i] <= windowSeconds / 2; k++) sum += votes[k];
            facing[i] = sum > 0 ? Facing.Right : sum < 0 ? Facing.Left : Facing.Unknown;
        }

        return facing;
    }

    /// <summary>
    /// One frame's vote, + right: the nose is ahead of the ears, a rider's knee ahead of the hip, the toe ahead of the heel; each counts by the
    /// models' scores.
    /// </summary>
    public static double VoteOf(RawPose pose)
    {
        ArgumentNullException.ThrowIfNull(pose);
        const int Ear = 3, Hip = 11, Knee = 13;
        const int BlazeEar = 7, BlazeHip = 23, BlazeKnee = 25, BlazeHeel = 29, BlazeToe = 31;
        var sum = 2 * Ahead(pose.First, 0, 0, Ear) + Ahead(pose.First, Knee, 1, Hip);
        if (pose.Second is { } b)
            sum += 2 * Ahead(b, 0, 0, BlazeEar) + Ahead(b, BlazeKnee, 1, BlazeHip) + Ahead(b, BlazeToe, 1, BlazeHeel);
        return sum;
    }

    // step 0: one front point for both sides (the nose); 1: left with left, right with right.
    private static double Ahead(RawPoints p, int front, int step, int back)
    {
        var sum = 0.0;
        for (var side = 0; side < 2; side++)
        {
            int f = front + side * step, b = back + side;
            sum += Math.Sign(p.X[f] - p.X[b]) * Math.Min(p.Score[f], p.Score[b]);
        }

        return sum;
    }
}
