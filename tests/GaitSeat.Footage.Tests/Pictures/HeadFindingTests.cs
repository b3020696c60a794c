using GaitSeat.Footage.Pictures;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests.Pictures;

/// <summary>Only the blur is drawn: what changes is what was taken for a head.</summary>
public sealed class HeadFindingTests
{
    /// <summary>The helmet of the made-up rider: about the ear, 0.14 of the stature of a rider whose trunk of 70 px is 0.288 of it.</summary>
    private static readonly BoxPx Helmet = new(303, 45, 34, 34);

    private static readonly OverlaySettings BlurOnly = new()
    {
        ShowBody = false, ShowPlumbLine = false, ShowThighAngle = false, ShowStrip = false, FlashSeconds = 0,
    };

    /// <summary>A frame that is neither sit nor top.</summary>
    private const int Between = 5;

    [Fact]
    public void EarAndNose_HelmetGoneBodyKept()
    {
        var (frame, before) = Paint(Scenes.At(Between, Scenes.Trace(), Scenes.Rider));
        using var _ = frame;
        AssertGone(frame, before);
        Assert.Equal(0, Differences.Count(frame, before, new(0, 140, 640, 220)));
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(false, false)]
    public void PointsMissingAllAlong_HelmetStillGone(bool shoulder, bool box)
    {
        List<BodyPoint> missing = [BodyPoint.Ear, BodyPoint.Nose];
        if (!shoulder) missing.Add(BodyPoint.Shoulder);
        var (frame, before) = Paint(Scenes.At(Between, Scenes.Trace([.. missing]), box ? Scenes.Rider : null));
        using var _ = frame;
        AssertGone(frame, before);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(25)]
    public void MissedForSomeFrames_HelmetStillGone(int halfGap)
    {
        var trace = Scenes.Trace(BodyPoint.Shoulder);
        for (var i = 30 - halfGap; i <= 30 + halfGap; i++)
        {
            foreach (var point in (BodyPoint[])[BodyPoint.Ear, BodyPoint.Nose]) trace.Points[(int)point].XPx[i] = double.NaN;
        }

        var (frame, before) = Paint(Scenes.At(30, trace));
        using var _ = frame;
        AssertGone(frame, before);
    }

    [Fact]
    public void EarFarFromTheRider_TopOfTheRiderGoneToo()
    {
        var trace = Scenes.Trace(BodyPoint.Nose);
        trace.Points[(int)BodyPoint.Ear].XPx[Between] = 60;
        trace.Points[(int)BodyPoint.Ear].YPx[Between] = 300;
        var (frame, before) = Paint(Scenes.At(Between, trace, Scenes.Rider));
        using var _ = frame;
        AssertGone(frame, before);
    }

    /// <summary>As in a pan: where the head was a moment later is within reach of the rider's box and yet not where it is.</summary>
    [Theory]
    [InlineData(45, -30)]
    [InlineData(-45, -30)]
    public void MissedWhileTheCameraMoved_HelmetStillGone(double acrossPx, double downPx)
    {
        var trace = Scenes.Trace(BodyPoint.Shoulder);
        foreach (var point in (BodyPoint[])[BodyPoint.Ear, BodyPoint.Nose])
        {
            var track = trace.Points[(int)point];
            for (var i = 0; i <= 34; i++) track.XPx[i] = double.NaN;
            for (var i = 35; i < track.XPx.Length; i++) (track.XPx[i], track.YPx[i]) = (track.XPx[i] + acrossPx, track.YPx[i] + downPx);
        }

        var (frame, before) = Paint(Scenes.At(30, trace, Scenes.Rider));
        using var _ = frame;
        AssertGone(frame, before);
    }

    [Fact]
    public void NothingKnownOfAnyRider_WholePictureBlurred()
    {
        var (frame, before) = Paint(Scenes.At(-1, Scenes.NoTrace));
        using var _ = frame;
        Assert.True(Differences.Count(frame, before, new(0, 0, 640, 360)) > 0.95 * 640 * 360);
    }

    [Fact]
    public void OtherPeople_TheirHeadsGoneToo()
    {
        var helper = new BoxPx(80, 120, 60, 200);
        var (frame, before) = Paint(Scenes.At(Between, Scenes.Trace(), Scenes.Rider, [helper]));
        using var _ = frame;
        AssertGone(frame, before);
        Assert.True(Differences.Count(frame, before, new(80, 120, 60, 40)) > 0.95 * 60 * 40);
        Assert.Equal(0, Differences.Count(frame, before, new(80, 200, 60, 120)));
    }

    [Fact]
    public void BlurTurnedOff_NothingChanges()
    {
        using var frame = Scenes.Noise();
        var before = frame.Rgb.ToArray();
        using var painter = new OverlayPainter(BlurOnly with { BlurHeads = false });
        painter.Paint(frame, Scenes.At(Between, Scenes.Trace(), Scenes.Rider));
        Assert.True(frame.Rgb.SequenceEqual(before));
    }

    private static void AssertGone(Frame frame, byte[] before)
    {
        Assert.True(Differences.Count(frame, before, Helmet) > 0.95 * Helmet.Area);
        Assert.True(Differences.Variance(frame, Helmet) < 300, "uniform noise has a variance of 5461");
    }

    private static (Frame Frame, byte[] Before) Paint(OverlayScene scene)
    {
        var frame = Scenes.Noise();
        var before = frame.Rgb.ToArray();
        using var painter = new OverlayPainter(BlurOnly);
        painter.Paint(frame, scene);
        return (frame, before);
    }
}
