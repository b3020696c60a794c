namespace GaitSeat.Vision.Sight;

/// <summary>
/// The second model's points in frames it was not run on: on the straight line between its readings before and after, carried along with the trunk as the
/// first model saw it in the frame itself.
/// </summary>
internal static class BetweenReadings
{
    /// <summary>Longest time to the reading on either side, s. A foot that swings 5 cm in a stride is then off by less than 0.2 cm.</summary>
    private const double Nearest = 0.06;

    // Shoulders and hips of the COCO order: their middle stays where it is when left and right are mistaken.
    private static readonly int[] Trunk = [5, 6, 11, 12];

    /// <param name="timeSeconds">Presentation times, s, strictly increasing.</param>
    /// <param name="poses">What was read; null where the frame was not looked at. Same length.</param>
    /// <param name="cutBefore">Where the picture jumps: nothing is carried over it. Same length.</param>
    /// <returns>The poses, with <see cref="RawPose.Second"/> where a reading is near enough.</returns>
    public static RawPose?[] Fill(double[] timeSeconds, RawPose?[] poses, bool[] cutBefore)
    {
        return [.. poses.Select((pose, i) => pose is { Second: null } ? pose with { Second = At(i, pose.First) } : pose)];

        RawPoints? At(int frame, RawPoints first)
        {
            int? before = Reading(frame, -1), after = Reading(frame, +1);
            return (before, after) switch
            {
                (null, null) => null,
                ({ } b, { } a) => Carried(poses[b]!, poses[a]!, (timeSeconds[frame] - timeSeconds[b]) / (timeSeconds[a] - timeSeconds[b]), first),
                var (b, a) => Carried(poses[(b ?? a)!.Value]!, poses[(b ?? a)!.Value]!, 0, first),
            };
        }

        int? Reading(int frame, int step)
        {
            for (var i = frame + step; i >= 0 && i < poses.Length; i += step)
            {
                if (poses[i] is not { } pose || cutBefore[step > 0 ? i : i + 1] || Math.Abs(timeSeconds[i] - timeSeconds[frame]) > Nearest) return null;
                if (pose.Second is not null) return i;
            }

            return null;
        }
    }

    private static RawPoints Carried(RawPose before, RawPose after, double share, RawPoints first)
    {
        var found = RawPoints.OfCount(PointOrder.BlazeCount);
        Carry(first.X, before.First.X, before.Second!.X, after.First.X, after.Second!.X, found.X);
        Carry(first.Y, before.First.Y, before.Second.Y, after.First.Y, after.Second.Y, found.Y);
        for (var p = 0; p < found.Count; p++) found.Score[p] = Math.Min(before.Second.Score[p], after.Second.Score[p]);
        return found;

        void Carry(float[] here, float[] firstBefore, float[] secondBefore, float[] firstAfter, float[] secondAfter, float[] to)
        {
            double trunk = Middle(here), trunkBefore = Middle(firstBefore), trunkAfter = Middle(firstAfter);
            for (var p = 0; p < to.Length; p++)
                to[p] = (float)(trunk + (1 - share) * (secondBefore[p] - trunkBefore) + share * (secondAfter[p] - trunkAfter));
        }
    }

    private static double Middle(float[] coordinate) => Trunk.Average(p => (double)coordinate[p]);
}
