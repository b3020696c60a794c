using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;
using GaitSeat.Motion.View;

namespace GaitSeat.Motion.Tests;

/// <summary>The turn read from how a rider grows while she passes a standing camera; truth from a pinhole's geometry.</summary>
public sealed class TurnCourseTests
{
    private static readonly MadeRider Rider = new();

    private static (double[] Error, double[] Se) Read(StandingCamera camera, Func<double, double>? body = null)
    {
        var (seen, truth) = camera.Film(Rider);
        if (body is not null) seen = seen with { ViewTurnDeg = Array.ConvertAll(truth, t => body(t)) };
        var course = TurnCourse.Of(seen, seen.Facing, new ViewSettings());
        return ([.. course.TurnDeg.Zip(truth, (a, b) => a - b)], course.SeDeg);
    }

    /// <summary>However long the lens: a straight pass tells the distance by itself.</summary>
    [Theory]
    [InlineData(1200, 2000, 0)]
    [InlineData(2000, 3500, 8)]
    [InlineData(4000, 7000, 0)]
    [InlineData(4000, 7000, -10)]
    [InlineData(800, 1100, 5)]
    public void StraightPass_IsReadWithinItsError(double distanceCm, double focalPx, double turnDeg)
    {
        var (error, se) = Read(new() { DistanceCm = distanceCm, FocalPx = focalPx, TurnDeg = turnDeg, Seconds = distanceCm > 1000 ? 6 : 3 });

        Assert.InRange(error.Average(Math.Abs), 0, 4.5);
        Assert.All(error.Zip(se), e => Assert.InRange(Math.Abs(e.First), 0, 3 * e.Second + 1));
    }

    /// <summary>On a circle round the camera the rider neither grows nor turns, at whatever distance.</summary>
    [Theory]
    [InlineData(600)]
    [InlineData(1500)]
    public void CircleRoundTheCamera_IsSideOn(double distanceCm)
    {
        var camera = new StandingCamera { DistanceCm = distanceCm, FocalPx = 1.7 * distanceCm, BendDegPerSecond = -double.RadiansToDegrees(300 / distanceCm) };

        Assert.All(Read(camera).Error, e => Assert.InRange(e, -2, 2));
    }

    /// <summary>The body shows a part of the turn with a steady error of its own; the way ridden puts it right.</summary>
    [Fact]
    public void WrongLeaningBody_DoesNotTurnTheRider()
    {
        var camera = new StandingCamera { DistanceCm = 2500, FocalPx = 4200, TurnDeg = 6 };

        Assert.InRange(Read(camera, t => 0.38 * t - 5).Error.Average(), -3, 3);
    }

    [Fact]
    public void Zoom_IsNotReadAsComingNearer()
    {
        var camera = new StandingCamera { DistanceCm = 2000, FocalPx = 3500, TurnDeg = 4, ZoomPerSecond = 0.06 };

        Assert.InRange(Read(camera).Error.Average(), -3, 3);
    }

    /// <summary>A pan stretches what lies off the middle of the picture; a rider held there has not come nearer because of it.</summary>
    [Theory]
    [InlineData(-250)]
    [InlineData(250)]
    public void PanWithTheRiderOffTheMiddle_IsNotReadAsZoom(double offMiddlePx)
    {
        var camera = new StandingCamera { DistanceCm = 1000, FocalPx = 1500, OffMiddlePx = offMiddlePx, BendDegPerSecond = -double.RadiansToDegrees(300 / 1000.0) };
        var seen = camera.Film(Rider).Seen;

        Assert.All(new PassReader(seen, 0, seen.Count, 1, new ViewSettings()).Windows(), w =>
        {
            Assert.InRange(Math.Abs(w.ZoomPerSecond), 0.08, 0.1);
            Assert.Equal(1, w.PanStretchPx2PerSecond / (camera.FocalPx * camera.FocalPx) / w.ZoomPerSecond, 0.08);
        });
        Assert.All(Read(camera).Error, e => Assert.InRange(e, -4, 4));
    }

    [Fact]
    public void ComingNearerSlantwise_IsSaidToBeTurned()
    {
        var (seen, truth) = new StandingCamera { DistanceCm = 1300, FocalPx = 2200, TurnDeg = -35, Seconds = 3 }.Film(Rider);

        Assert.All(truth, t => Assert.InRange(t, -60, -15));
        Assert.Contains(MotionAnalysis.Analyse(seen, BodyLengths.Unknown, new MotionSettings()).LeftOut, l => l.Reason == "turned_out");
    }

    /// <summary>A rider who stands tells nothing by growth: the body alone, with its gain and a large error.</summary>
    [Fact]
    public void StandingRider_IsReadFromTheBodyWithALargeError()
    {
        var still = new MadeRider { Gait = Gait.Halt, SpeedCmS = 0, BounceCm = 0, RiseCm = 0, SwingCm = 0 };
        var (seen, _) = new StandingCamera { TurnDeg = 20 }.Film(still);

        var blind = TurnCourse.Of(seen, seen.Facing, new ViewSettings());
        var told = TurnCourse.Of(seen with { ViewTurnDeg = [.. seen.TimeSeconds.Select(_ => 7.6)] }, seen.Facing, new ViewSettings());

        Assert.All(blind.TurnDeg, t => Assert.Equal(0, t));
        Assert.All(blind.SeDeg, t => Assert.Equal(new ViewSettings().UsualTurnDeg, t));
        Assert.All(told.TurnDeg, t => Assert.InRange(t, 7, 20));
        Assert.All(told.SeDeg, s => Assert.InRange(s, 5, 15));
    }
}
