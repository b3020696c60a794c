using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Undoes the first model's swaps of left and right, joint by joint: of the two readings in each frame the one is taken that makes the
/// smoothest track and lies nearest to the second model's point (best path over the whole stretch).
/// </summary>
public static class SwapRepair
{
    // A swap on purpose costs this share of rider height once, so that two readings on top of each other are left alone.
    private const double FlipCost = 0.02;

    private static readonly BodyPoint[] Joints =
        [BodyPoint.Ear, BodyPoint.Shoulder, BodyPoint.Elbow, BodyPoint.Wrist, BodyPoint.Hip, BodyPoint.Knee, BodyPoint.Ankle];

    /// <summary>Swaps in place. Null entries and cuts part the clip into stretches.</summary>
    public static void Undo(NearSide?[] sides, bool[] cutBefore)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(cutBefore);
        for (var start = 0; start < sides.Length;)
        {
            if (sides[start] is null)
            {
                start++;
                continue;
            }

            var end = start + 1;
            while (end < sides.Length && sides[end] is not null && !cutBefore[end]) end++;
            foreach (var joint in Joints) UndoIn(sides.AsSpan(start, end - start), joint);
            start = end;
        }
    }

    private static void UndoIn(Span<NearSide?> stretch, BodyPoint joint)
    {
        var j = (int)joint;
        var from = new int[stretch.Length, 2];
        Span<double> cost = [Own(stretch[0]!, 0, j), Own(stretch[0]!, 1, j)];
        Span<double> next = stackalloc double[2];
        for (var i = 1; i < stretch.Length; i++)
        {
            for (var state = 0; state < 2; state++)
            {
                double stay = cost[0] + Step(stretch[i - 1]!, 0, stretch[i]!, state, j), cross = cost[1] + Step(stretch[i - 1]!, 1, stretch[i]!, state, j);
                from[i, state] = stay <= cross ? 0 : 1;
                next[state] = Math.Min(stay, cross) + Own(stretch[i]!, state, j);
            }

            next.CopyTo(cost);
        }

        for (int i = stretch.Length - 1, state = cost[0] <= cost[1] ? 0 : 1; i >= 0; i--)
        {
            if (state == 1) stretch[i]!.Swap(joint);
            state = from[i, state];
        }
    }

    private static PointPx Reading(NearSide s, int state, int j) => state == 0 ? s.First[j] : s.FirstOther[j];

    private static double Own(NearSide s, int state, int j)
    {
        var apart = s.Second[j].IsMissing ? 0 : Reading(s, state, j).DistanceTo(s.Second[j]) / s.RiderHeightPx;
        return apart + (state == 0 ? 0 : FlipCost);
    }

    private static double Step(NearSide before, int stateBefore, NearSide now, int state, int j) =>
        Reading(before, stateBefore, j).DistanceTo(Reading(now, state, j)) / now.RiderHeightPx;
}
