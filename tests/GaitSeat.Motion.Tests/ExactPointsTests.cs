using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

/// <summary>From exact points the maths alone must reach: thigh 0.2 deg, rise 0.2 cm, stride times 5 ms.</summary>
public sealed class ExactPointsTests(ITestOutputHelper output)
{
    private static readonly BodyLengths Lengths = new(LowerLegCm: 41);

    public static TheoryData<double, string, double, double, double, double> Cases()
    {
        var cases = new TheoryData<double, string, double, double, double, double>();
        foreach (var hz in new[] { 25.0, 30, 50, 60, 120 })
        {
            cases.Add(hz, "Right", 1, 0, 9, 1.35);
            cases.Add(hz, "Left", 0, 0, 4, 1.25);
            cases.Add(hz, "Left", 0.9, 0.03, 12, 1.42);
        }

        cases.Add(30, "Right", 1, -0.04, 6, 1.6);
        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void ExactPoints_GiveExactStrides(double frameRateHz, string facing, double panShare, double zoom, double riseCm, double strideHz)
    {
        var rider = new MadeRider { RiseCm = riseCm, StrideHz = strideHz };
        var camera = new MadeCamera { FrameRateHz = frameRateHz, Facing = Enum.Parse<Facing>(facing), PanShare = panShare, ZoomPerSecond = zoom };

        var motion = MotionAnalysis.Analyse(camera.Film(rider), Lengths, new() { Uncertainty = new() { Draws = 8 } });

        var score = StrideScore.Of(motion, rider, camera.FrameTimes[0], camera.FrameTimes[^1]);
        output.WriteLine(score.ToString());
        Assert.All(motion.Spells, s => Assert.Equal(Gait.RisingTrot, s.Gait));
        Assert.Equal(score.True, score.Matched);
        Assert.Equal(score.Found, score.Matched);
        Assert.InRange(score.WorstSitMs, 0, 5);
        Assert.InRange(score.WorstRiseCm, 0, 0.2);
        Assert.InRange(score.WorstThighDeg, 0, 0.2);
    }
}
