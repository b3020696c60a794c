using GaitSeat.Footage.Pictures;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests.Pictures;

public sealed class OverlayPainterTests
{
    private static readonly OverlaySettings Bare = new()
    {
        BlurHeads = false, ShowBody = false, ShowPlumbLine = false, ShowThighAngle = false, ShowStrip = false, FlashSeconds = 0,
    };

    private const int Between = 5;

    /// <summary>From shoulder to toe, with room for line width and the number before the knee.</summary>
    private static readonly BoxPx Figure = new(295, 90, 125, 200);

    private static readonly BoxPx Strip = new(0, 309, 640, 51);

    [Fact]
    public void Body_SegmentsDrawnAndNothingElse()
    {
        var (frame, before) = Paint(Bare with { ShowBody = true }, Scenes.At(Between, Scenes.Trace()));
        using var _ = frame;
        Assert.True(Differences.At(frame, before, 305, 170), "hip");
        Assert.True(Differences.At(frame, before, 329, 194), "middle of the thigh");
        Assert.True(Differences.At(frame, before, 336, 244), "middle of the shank");
        Assert.True(Differences.At(frame, before, 308, 135), "middle of the trunk");
        Assert.Equal(0, Differences.Outside(frame, before, Figure));
        Assert.InRange(Differences.Count(frame, before, Figure), 500, 4000);
    }

    [Theory]
    [InlineData(BodyPoint.Knee, 329, 194)]
    [InlineData(BodyPoint.Ankle, 336, 244)]
    [InlineData(BodyPoint.Shoulder, 308, 135)]
    public void PointMissing_ItsSegmentsAreNotDrawn(BodyPoint missing, int x, int y)
    {
        var (frame, before) = Paint(Bare with { ShowBody = true }, Scenes.At(Between, Scenes.Trace(missing)));
        using var _ = frame;
        Assert.False(Differences.At(frame, before, x, y));
        Assert.True(Differences.At(frame, before, 305, 170), "hip is still there");
    }

    [Fact]
    public void PointTooUnsure_NotDrawn()
    {
        var trace = Scenes.Trace();
        trace.Points[(int)BodyPoint.Knee].Confidence[Between] = 0.05;
        var (frame, before) = Paint(Bare with { ShowBody = true }, Scenes.At(Between, trace));
        using var _ = frame;
        Assert.False(Differences.At(frame, before, 329, 194));
    }

    [Fact]
    public void PlumbLine_VerticalThroughTheHip()
    {
        var (frame, before) = Paint(Bare with { ShowPlumbLine = true }, Scenes.At(Between, Scenes.Trace()));
        using var _ = frame;
        Assert.Equal(0, Differences.Outside(frame, before, new BoxPx(301, 0, 8, 360)));
        for (var y = 60; y < 280; y += 20) Assert.True(Differences.At(frame, before, 305, y), $"row {y}");
    }

    [Theory]
    [InlineData(Facing.Right, 1)]
    [InlineData(Facing.Left, -1)]
    public void ThighAngle_WedgeLiesOnTheForwardSide(Facing facing, int forward)
    {
        var scene = Scenes.At(Between, Scenes.Trace()) with { Facing = facing };
        var (frame, before) = Paint(Bare with { ShowThighAngle = true }, scene);
        using var _ = frame;

        // 20 px below the hip, within the 45 deg wedge on the forward side and outside it on the other.
        Assert.True(Differences.At(frame, before, 305 + 8 * forward, 190));
        Assert.False(Differences.At(frame, before, 305 - 8 * forward, 190));
    }

    [Fact]
    public void Strip_OnlyAlongTheBottomAndAllOfIt()
    {
        var (frame, before) = Paint(Bare with { ShowStrip = true }, Scenes.At(Between, Scenes.Trace()));
        using var _ = frame;
        Assert.Equal(0, Differences.Outside(frame, before, Strip));
        Assert.True(Differences.Count(frame, before, new(0, 310, 640, 50)) > 0.98 * 640 * 50);
    }

    [Fact]
    public void Playhead_MovesWithTime()
    {
        static byte[] Painted(int index)
        {
            var (frame, _) = Paint(Bare with { ShowStrip = true }, Scenes.At(index, Scenes.Trace()) with { Strides = [], Spells = [] });
            using (frame) return frame.Rgb.ToArray();
        }

        using var early = Scenes.Noise();
        Painted(10).CopyTo(early.Rgb);

        // 61 frames over the plotted width of 616.6 px from 11.7 px on: frame 10 lies at 114.5, frame 40 at 422.8.
        var late = Painted(40);
        Assert.True(Differences.Count(early, late, new(112, 330, 5, 26)) > 50);
        Assert.True(Differences.Count(early, late, new(420, 330, 5, 26)) > 50);

        // Elsewhere only rounding where the curve's path is begun anew.
        Assert.InRange(Differences.Count(early, late, new(450, 330, 150, 26)), 0, 20);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(21, true)]
    [InlineData(5, false)]
    [InlineData(30, false)]
    public void SitAndTop_MarkedAtTheirInstants(int index, bool marked)
    {
        var (frame, before) = Paint(Bare with { FlashSeconds = 0.03 }, Scenes.At(index, Scenes.Trace()));
        using var _ = frame;
        Assert.Equal(marked, Differences.Count(frame, before, new(240, 150, 90, 40)) > 100);
    }

    [Fact]
    public void SameScene_SameBytes()
    {
        var scene = Scenes.At(21, Scenes.Trace(), Scenes.Rider);
        var (one, _) = Paint(new(), scene);
        var (other, _) = Paint(new(), scene);
        using (one)
        using (other) Assert.True(one.Rgb.SequenceEqual(other.Rgb));
    }

    [Theory]
    [InlineData(640, 360)]
    [InlineData(1280, 720)]
    [InlineData(360, 640)]
    [InlineData(16, 16)]
    [InlineData(2, 2)]
    public void EmptyMotion_DoesNotFail(int width, int height)
    {
        using var frame = Scenes.Noise(width, height);
        var before = frame.Rgb.ToArray();
        using var painter = new OverlayPainter(new());
        painter.Paint(frame, new(0, Scenes.NoTrace, -1, [], [], Facing.Unknown, null));
        Assert.False(frame.Rgb.SequenceEqual(before));
    }

    [Fact]
    public void IndexBeyondTheTrace_Refused()
    {
        using var frame = Scenes.Noise();
        using var painter = new OverlayPainter(new());
        var error = Assert.Throws<ArgumentException>(() => painter.Paint(frame, Scenes.At(0, Scenes.Trace()) with { TraceIndex = Scenes.Frames }));
        Assert.Contains("61 frames", error.Message, StringComparison.Ordinal);
    }

    private static (Frame Frame, byte[] Before) Paint(OverlaySettings settings, OverlayScene scene)
    {
        var frame = Scenes.Noise();
        var before = frame.Rgb.ToArray();
        using var painter = new OverlayPainter(settings);
        painter.Paint(frame, scene);
        return (frame, before);
    }
}
