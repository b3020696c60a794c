using GaitSeat.Model;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Studio.Tests.Marks;

/// <summary>Hand-made marks and readings: a rider 200 px tall, so that 2 px are one percent.</summary>
internal static class MarkedPictures
{
    public static MarkedPicture Picture(string name, Facing facing, params (BodyPoint Point, double X, double Y)[] marks) => new()
    {
        Picture = name,
        Sha256 = new string('0', 64),
        TimeSeconds = null,
        WidthPx = 400,
        HeightPx = 300,
        Facing = facing,
        View = MarkedView.Side,
        RiderTopPx = 50,
        RiderBottomPx = 250,
        Pass = 1,
        Marks = MarkedPicture.Points.ToDictionary(p => p, p => marks.Any(m => m.Point == p) ? Clear(marks.Single(m => m.Point == p)) : new Mark(PointPx.Missing, MarkVisibility.Hidden)),
    };

    public static PictureReading Reading(MarkedPicture picture, Facing facing, params (BodyPoint Point, double X, double Y)[] read)
    {
        var points = Enum.GetValues<BodyPoint>().Select(_ => PointPx.Missing).ToArray();
        foreach (var (point, x, y) in read) points[(int)point] = new(x, y);
        return new(picture, facing, points, null);
    }

    /// <summary>A frame of which nothing but time and hip matters.</summary>
    public static FrameTruth True(double timeSeconds, PointPx hip) => new()
    {
        Frame = 0,
        TimeSeconds = timeSeconds,
        Points = FrameTruth.PointNames.ToDictionary(n => n, n => new PointTruth(n == "hip" ? hip : PointPx.Missing, PointVisibility.Seen, null)),
        StridePhase = 0,
        PxPerM = 100,
        YawDeg = 0,
        RiderPxHeight = 200,
        RiderFullInFrame = true,
        ThighDeg = 0,
        TrunkDeg = 0,
        RiseCm = 0,
        TreadFwdOfBarCm = 0,
        BounceCm = 0,
    };

    private static Mark Clear((BodyPoint Point, double X, double Y) mark) => new(new(mark.X, mark.Y), MarkVisibility.Clear);
}
