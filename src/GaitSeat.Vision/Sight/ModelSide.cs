using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>One model's points in one frame by <see cref="BodyPoint"/>, near side and the same joints of the other side. Missing points are NaN with score 0.</summary>
public sealed class ModelSide
{
    private static readonly int Points = Enum.GetValues<BodyPoint>().Length;

    public PointPx[] Near { get; } = Filled();

    public double[] NearScore { get; } = new double[Points];

    /// <summary>The other side's joint: what undoing a swap brings.</summary>
    public PointPx[] Other { get; } = Filled();

    public double[] OtherScore { get; } = new double[Points];

    /// <param name="raw">The model's points; null where it was not run.</param>
    /// <param name="facing">Left or right.</param>
    /// <param name="leftIndex">Where a point's left side stands in the model's list; the right one follows; -1 for none.</param>
    public static ModelSide Of(RawPoints? raw, Facing facing, Func<BodyPoint, int> leftIndex)
    {
        ArgumentNullException.ThrowIfNull(leftIndex);
        var side = new ModelSide();
        if (raw is null) return side;
        foreach (var point in Enum.GetValues<BodyPoint>())
        {
            int p = (int)point, left = leftIndex(point), step = PointOrder.SideStep(point, facing);
            if (left < 0) continue;
            int near = left + step, other = point == BodyPoint.Nose ? left : left + 1 - step;
            (side.Near[p], side.NearScore[p]) = (raw[near], raw.Score[near]);
            (side.Other[p], side.OtherScore[p]) = (raw[other], raw.Score[other]);
        }

        return side;
    }

    /// <summary>Takes the other side for this point.</summary>
    public void Swap(BodyPoint point)
    {
        var p = (int)point;
        (Near[p], Other[p]) = (Other[p], Near[p]);
        (NearScore[p], OtherScore[p]) = (OtherScore[p], NearScore[p]);
    }

    private static PointPx[] Filled()
    {
        var a = new PointPx[Points];
        Array.Fill(a, PointPx.Missing);
        return a;
    }
}
