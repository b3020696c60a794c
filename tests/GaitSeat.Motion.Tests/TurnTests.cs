using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

/// <summary>A rider who passes the camera turns from coming nearer to going away; knee and foot stand out round the horse.</summary>
public sealed class TurnTests
{
    private static readonly MotionSettings Quick = new() { Uncertainty = new() { Draws = 8 } };
    private static readonly MadeRider Rider = new();

    [Theory]
    [InlineData(14, -14)]
    [InlineData(-10, 12)]
    [InlineData(10, 10)]
    [InlineData(-18, -18)]
    public void KnownTurn_LeavesTheThighWhereItIs(double fromDeg, double toDeg)
    {
        var scale = new ScaleSettings { KneeNearerPctLeg = 100 * 18 / 82.0, ShoulderNearerPctLeg = 0, HeadNearerPctLeg = 0 };
        var film = new MadeCamera { YawFromDeg = fromDeg, YawToDeg = toDeg, KneeOutCm = 18 }.Film(Rider);

        // Uncorrected, 18 cm of knee at 14 deg are 4.4 cm of a thigh that shows 29 cm ahead: 5 to 6 deg.
        Assert.All(Errors(film, Quick with { Scale = scale }), e => Assert.InRange(e, -0.5, 0.5));
        Assert.Contains(Errors(film with { KnownTurnDeg = new double[film.Count] }, Quick with { Scale = scale }), e => Math.Abs(e) > 2);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(12)]
    public void Trace_StandsAtZeroInTheSitAndAtTheRiseOnTopAndPointsWhereTheyAreSeen(double yawDeg)
    {
        var film = new MadeCamera { YawFromDeg = yawDeg, YawToDeg = -yawDeg, KneeOutCm = 18 }.Film(Rider);

        var motion = MotionAnalysis.Analyse(film, BodyLengths.Unknown, Quick);

        foreach (var stride in motion.Strides)
        {
            Assert.Equal(0, At(motion.Trace.SeatPctLeg, stride.StartSeconds), 0.3);
            Assert.Equal(100 * 9 / 82.0, At(motion.Trace.SeatPctLeg, stride.TopSeconds), 0.8);
        }

        for (var i = 20; i < film.Count - 20; i++)
        {
            Assert.Equal(film[BodyPoint.Knee].XPx[i], motion.Trace.Points[(int)BodyPoint.Knee].XPx[i], 0.5);
            Assert.Equal(film[BodyPoint.Hip].YPx[i], motion.Trace.Points[(int)BodyPoint.Hip].YPx[i], 0.5);
        }
    }

    [Fact]
    public void RollingCamera_LeavesAnglesAndRiseAlone()
    {
        var film = new MadeCamera { RollDeg = 4, TiltPx = 6 }.Film(Rider);

        var motion = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), Quick);

        var score = StrideScore.Of(motion, Rider, film.TimeSeconds[0], film.TimeSeconds[^1]);
        Assert.Equal(score.True, score.Matched);

        // The slow trend of the roll is taken as level: 4 deg of roll over four swings leave 0.6.
        Assert.InRange(score.WorstThighDeg, 0, 1);
        Assert.InRange(score.WorstRiseCm, 0, 0.3);
    }

    private static double At(double[] trace, double seconds) => trace[(int)Math.Round(seconds * 30)];

    private static double[] Errors(Sightings film, MotionSettings settings)
    {
        var sits = Rider.Sits(-1, 10).ToArray();
        var strides = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), settings).Strides;
        Assert.NotEmpty(strides);
        return [.. strides.Select(s => s.Measures[StrideMeasure.ThighAngleSit].Value - StrideScore.ThighAt(Rider, sits.MinBy(t => Math.Abs(t - s.StartSeconds))))];
    }
}
