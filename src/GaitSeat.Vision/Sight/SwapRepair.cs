using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Undoes the models' swaps of left and right, joint by joint: of the readings in each frame those are taken that make the smoothest tracks and
/// lie nearest to each other across the models (best path over the whole stretch). Both models swap: the first often at the ankle, the second
/// now and then takes the horse's foreleg for the near leg and the near leg for the far one.
/// </summary>
public static class SwapRepair
{
    // A swap costs this share of rider height a frame, so that two readings on top of each other are left alone. The second model swaps
    // seldom, and then by a quarter of rider height.
    private const double FirstSwapCost = 0.02;
    private const double SecondSwapCost = 0.05;

    // Four states: bit 0 swaps the first model, bit 1 the second.
    private const int States = 4;

    private static readonly BodyPoint[] Joints =
        [BodyPoint.Ear, BodyPoint.Shoulder, BodyPoint.Elbow, BodyPoint.Wrist, BodyPoint.Hip, BodyPoint.Knee, BodyPoint.Ankle];

    // What only the second model has goes with its ankle.
    private static readonly BodyPoint[] Foot = [BodyPoint.Heel, BodyPoint.Toe];

    /// <summary>Swaps in place. Null entries and cuts part the clip into stretches.</summary>
    public static void Undo(NearSide?[] sides, bool[] cutBefore)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(cutBefore);
        foreach (var range in Stretches.Of(Array.ConvertAll(sides, s => s is not null), cutBefore))
            foreach (var joint in Joints) UndoIn(sides.AsSpan(range), joint);
    }

    private static void UndoIn(Span<NearSide?> stretch, BodyPoint joint)
    {
        var j = (int)joint;
        var from = new int[stretch.Length, States];
        Span<double> cost = stackalloc double[States], next = stackalloc double[States];
        for (var s = 0; s < States; s++) cost[s] = Own(stretch[0]!, s, j);
        for (var i = 1; i < stretch.Length; i++)
        {
            for (var s = 0; s < States; s++)
            {
                var best = double.PositiveInfinity;
                for (var before = 0; before < States; before++)
                {
                    var c = cost[before] + Step(stretch[i - 1]!, before, stretch[i]!, s, j);
                    if (c < best) (best, from[i, s]) = (c, before);
                }

                next[s] = best + Own(stretch[i]!, s, j);
            }

            next.CopyTo(cost);
        }

        var state = 0;
        for (var s = 1; s < States; s++)
            if (cost[s] < cost[state]) state = s;
        for (var i = stretch.Length - 1; i >= 0; i--)
        {
            Apply(stretch[i]!, state, joint);
            state = from[i, state];
        }
    }

    private static void Apply(NearSide side, int state, BodyPoint joint)
    {
        if ((state & 1) != 0) side.First.Swap(joint);
        if ((state & 2) == 0) return;
        side.Second.Swap(joint);
        if (joint != BodyPoint.Ankle) return;
        foreach (var point in Foot) side.Second.Swap(point);
    }

    private static PointPx Reading(ModelSide side, bool swapped, int j) => swapped ? side.Other[j] : side.Near[j];

    private static double Own(NearSide s, int state, int j)
    {
        PointPx a = Reading(s.First, (state & 1) != 0, j), b = Reading(s.Second, (state & 2) != 0, j);
        var apart = a.IsMissing || b.IsMissing ? 0 : a.DistanceTo(b) / s.RiderHeightPx;
        return apart + FirstSwapCost * (state & 1) + SecondSwapCost * (state >> 1);
    }

    private static double Step(NearSide before, int stateBefore, NearSide now, int state, int j) =>
        Moved(before, Reading(before.First, (stateBefore & 1) != 0, j), now, Reading(now.First, (state & 1) != 0, j))
        + Moved(before, Reading(before.Second, (stateBefore & 2) != 0, j), now, Reading(now.Second, (state & 2) != 0, j));

    private static double Moved(NearSide before, PointPx from, NearSide now, PointPx to)
    {
        if (from.IsMissing || to.IsMissing) return 0;
        double dx = to.X - now.Anchor.X - (from.X - before.Anchor.X), dy = to.Y - now.Anchor.Y - (from.Y - before.Anchor.Y);
        return Math.Sqrt(dx * dx + dy * dy) / now.RiderHeightPx;
    }
}
