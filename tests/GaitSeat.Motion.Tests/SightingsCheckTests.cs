using GaitSeat.Model;

namespace GaitSeat.Motion.Tests;

public sealed class SightingsCheckTests
{
    [Fact]
    public void TimeThatStandsStill_IsRefusedWithFrameAndTimes()
    {
        var sightings = Empty(3) with { TimeSeconds = [0, 0.04, 0.04] };

        var error = Assert.Throws<ArgumentException>(() => MotionAnalysis.Analyse(sightings, BodyLengths.Unknown, new()));

        Assert.Contains("Frame 2", error.Message);
        Assert.Contains("0.04", error.Message);
    }

    [Fact]
    public void ArrayOfAnotherLength_IsRefusedByName()
    {
        var sightings = Empty(3) with { ViewTurnDeg = [0, 0] };

        var error = Assert.Throws<ArgumentException>(() => MotionAnalysis.Analyse(sightings, BodyLengths.Unknown, new()));

        Assert.Contains("ViewTurnDeg", error.Message);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(300)]
    public void NothingSeen_GivesNoStridesAndATraceOfNothing(int frames)
    {
        var motion = MotionAnalysis.Analyse(Empty(frames), BodyLengths.Unknown, new());

        Assert.Empty(motion.Strides);
        Assert.Equal(frames, motion.Trace.SeatPctLeg.Length);
        Assert.All(motion.Trace.SeatPctLeg, v => Assert.True(double.IsNaN(v)));
    }

    private static Sightings Empty(int n) => new()
    {
        WidthPx = 1280,
        HeightPx = 720,
        TimeSeconds = [.. Enumerable.Range(0, n).Select(i => i / 30.0)],
        Rider = new BoxPx?[n],
        Horse = new BoxPx?[n],
        Facing = new Facing[n],
        Reason = new FrameReason[n],
        CutBefore = new bool[n],
        Points = [.. Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(n))],
        Trunk = Still(n),
        Surroundings = Still(n),
    };

    private static PatchMotion Still(int n) =>
        new(new double[n], new double[n], new double[n], [.. Enumerable.Repeat(1.0, n)], new int[n], new double[n]);
}
