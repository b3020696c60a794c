using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>One frame's points of both models by <see cref="BodyPoint"/>, near side chosen. Missing points are NaN with score 0.</summary>
public sealed class NearSide
{
    public static readonly int PointCount = Enum.GetValues<BodyPoint>().Length;

    private NearSide(double riderHeightPx) => RiderHeightPx = riderHeightPx;

    public double RiderHeightPx { get; }

    /// <summary>First model, by <see cref="BodyPoint"/>.</summary>
    public PointPx[] First { get; } = Missing();

    public double[] FirstScore { get; } = new double[PointCount];

    /// <summary>The same joints of the other side as the first model saw them: what a swap would bring.</summary>
    public PointPx[] FirstOther { get; } = Missing();

    public double[] FirstOtherScore { get; } = new double[PointCount];

    /// <summary>Second model, by <see cref="BodyPoint"/>.</summary>
    public PointPx[] Second { get; } = Missing();

    public double[] SecondScore { get; } = new double[PointCount];

    public static NearSide Of(RawPose pose, Facing facing)
    {
        ArgumentNullException.ThrowIfNull(pose);
        var side = new NearSide(pose.Rider.Height);
        foreach (var point in Enum.GetValues<BodyPoint>())
        {
            int i = (int)point, step = PointOrder.SideStep(point, facing), coco = PointOrder.CocoLeft(point);
            if (coco >= 0)
            {
                var other = point == BodyPoint.Nose ? coco : coco + 1 - step;
                (side.First[i], side.FirstScore[i]) = (pose.First[coco + step], pose.First.Score[coco + step]);
                (side.FirstOther[i], side.FirstOtherScore[i]) = (pose.First[other], pose.First.Score[other]);
            }

            if (pose.Second is not { } second) continue;
            var blaze = PointOrder.BlazeLeft(point) + step;
            (side.Second[i], side.SecondScore[i]) = (second[blaze], second.Score[blaze]);
        }

        return side;
    }

    /// <summary>Takes the first model's other side for this point.</summary>
    public void Swap(BodyPoint point)
    {
        var i = (int)point;
        (First[i], FirstOther[i]) = (FirstOther[i], First[i]);
        (FirstScore[i], FirstOtherScore[i]) = (FirstOtherScore[i], FirstScore[i]);
    }

    private static PointPx[] Missing()
    {
        var a = new PointPx[PointCount];
        Array.Fill(a, PointPx.Missing);
        return a;
    }
}
