using GaitSeat.Model;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Measures;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tests.Made;
using GaitSeat.Motion.Tracks;
using GaitSeat.Motion.View;

namespace GaitSeat.Motion.Tests;

/// <summary>Held against numbers that do not come from us; the source stands beside each.</summary>
public sealed class OutsideCheckTests
{
    // Gain of the least-jerk smoother, closed form 1 / (1 + (s(f) / s(c))^6), s(f) = 2 sin(pi f / rate): the transfer function of 1 + L D'D on an endless run, D the third differences.
    [Theory]
    [InlineData(6, 1.4, 0.9998)]
    [InlineData(6, 2.8, 0.9896)]
    [InlineData(6, 4.8, 0.7903)]
    [InlineData(6, 6, 0.5)]
    [InlineData(8, 2.8, 0.9981)]
    [InlineData(8, 5.6, 0.8919)]
    [InlineData(10, 2.8, 0.9995)]
    [InlineData(10, 5.6, 0.9681)]
    public void Smoother_HasTheGainOfTheClosedForm(double cutoffHz, double frequencyHz, double gain)
    {
        const double rateHz = 120;
        double[] seconds = [.. Enumerable.Range(0, 1200).Select(i => i / rateHz)];
        double[] wave = [.. seconds.Select(t => Math.Cos(2 * Math.PI * frequencyHz * t))];

        var smooth = JerkSmoother.Smooth(wave, rateHz, cutoffHz);

        var middle = HarmonicFit.Fit(seconds.AsSpan(240, 720), smooth.AsSpan(240, 720), frequencyHz, 1, 0)!.Amplitude[0]
            / HarmonicFit.Fit(seconds.AsSpan(240, 720), wave.AsSpan(240, 720), frequencyHz, 1, 0)!.Amplitude[0];
        Assert.Equal(gain, JerkSmoother.Gain(frequencyHz, cutoffHz, rateHz), 1e-3);
        Assert.Equal(gain, middle.Magnitude, 1e-3);
        Assert.Equal(0, middle.Phase, 1e-3);
    }

    [Fact]
    public void NoiseBandwidth_IsTheIntegralOfTheSquaredGain()
    {
        var integral = 0.0;
        for (var hz = 0.0005; hz < 200; hz += 0.001) integral += 0.001 * Math.Pow(JerkSmoother.Gain(hz, 6, 1e5), 2);

        Assert.Equal(JerkSmoother.NoiseBandwidthOverCutoff, integral / 6, 1e-3);
    }

    // Worst-case loss of a raw peak of the 2.8 Hz bounce, 1 - cos(pi f / fs): 6.1 % at 25 fps, 4.3 % at 30, 1.5 % at 50, 1.1 % at 60.
    [Theory]
    [InlineData(25, 0.061)]
    [InlineData(30, 0.043)]
    [InlineData(50, 0.015)]
    [InlineData(60, 0.011)]
    public void PeakBetweenFrames_IsReadNearlyWhole(double frameRateHz, double rawLoss)
    {
        // The peak lies half way between two frames.
        double[] seconds = [.. Enumerable.Range(0, (int)(2 * frameRateHz)).Select(i => (i - frameRateHz + 0.5) / frameRateHz)];
        double[] wave = [.. seconds.Select(t => Math.Cos(2 * Math.PI * 2.8 * t))];
        var grid = EvenGrid.Over(seconds, 100);
        var fine = new double[grid.Count];

        Spline.OnGrid(seconds, wave, grid, fine);

        Assert.Equal(rawLoss, 1 - wave[(int)frameRateHz], 6e-4);
        var top = Levels.TurningPoint(fine, grid.PositionOf(0), 0.02 * grid.RateHz);
        Assert.Equal(0, grid.TimeAt(top), 1e-3);
        Assert.InRange(1 - Sample.At(fine, top), -0.005, 0.005);
    }

    // Analytic test signal z = A1 cos p + A2 cos 2p: two maxima a stride iff A2 > A1/4, differing by 2 A1; minima at cos p = -A1/(4 A2), value -A2 - A1^2/(8 A2).
    // A2 = 36.3 mm: half of the trunk's 72.6 mm at trot (Buchner 2000).
    [Theory]
    [InlineData(40, 2)]
    [InlineData(120, 2)]
    [InlineData(160, 1)]
    public void TrunkMotionLeftInTheSeat_DoesNotDoubleTheSits(double a1, int maximaAStride)
    {
        const double a2 = 36.3, strideHz = 1.35, rateHz = 120;
        double[] seconds = [.. Enumerable.Range(0, 601).Select(i => i / rateHz)];
        double Z(double t) => a1 * Math.Cos(2 * Math.PI * strideHz * t) + a2 * Math.Cos(4 * Math.PI * strideHz * t);
        double[] z = [.. seconds.Select(Z)];
        var maxima = Enumerable.Range(1, z.Length - 2).Count(i => z[i] > z[i - 1] && z[i] > z[i + 1]);
        Assert.InRange(maxima, maximaAStride * 5 * strideHz - 1, maximaAStride * 5 * strideHz + 1);
        if (maximaAStride == 2) Assert.Equal(-a2 - a1 * a1 / (8 * a2), z.Min(), 0.5);

        var fit = HarmonicFit.Fit(seconds, z, strideHz, 2, 1)!;

        // The two amplitudes come out apart, so the first one's low is the one low a stride.
        Assert.Equal(a1, fit.Amplitude[0].Magnitude, 1e-6);
        Assert.Equal(a2, fit.Amplitude[1].Magnitude, 1e-6);
        Assert.Equal(2 * a1, Z(0) - Z(0.5 / strideHz), 1e-9);
    }

    // Rising adds the odd multiples of the stride frequency (1.1 and 3.7 Hz beside 2.4 and 4.8 Hz); sitting has the even ones only (van Beek 2012).
    [Theory]
    [InlineData(Gait.RisingTrot, true)]
    [InlineData(Gait.SittingTrot, false)]
    public void OddMultiplesOfTheStride_AreThereInRisingOnly(Gait gait, bool odd)
    {
        var rider = new MadeRider { Gait = gait, StrideHz = 1.2 };
        double[] seconds = [.. Enumerable.Range(0, 500).Select(i => i / 100.0)];
        double[] hip = [.. seconds.Select(t => rider.At(t).Hip.Z)];

        var fit = HarmonicFit.Fit(seconds, hip, 1.2, 4, 1)!;

        Assert.True(fit.Amplitude[1].Magnitude > 1, "the bounce at 2.4 Hz is always there");
        Assert.Equal(odd, fit.Amplitude[0].Magnitude > 0.1);
        Assert.Equal(odd, fit.Amplitude[2].Magnitude > 0.1);
    }

    // Speed = stride length x frequency. Standardbreds 5.45 m and 455 ms at 12 m/s (Drevemo 1980); ridden working trot 2.73 m at 3.61 m/s,
    // collected 2.50 at 3.20, extended 3.55 at 4.93 (Clayton 1994, from memory). The racing trot is outside what a rising rider does.
    [Theory]
    [InlineData(3.20, 2.50)]
    [InlineData(3.61, 2.73)]
    [InlineData(4.93, 3.55)]
    public void StrideLength_IsSpeedTimesDuration(double speedMS, double strideM)
    {
        var rider = new MadeRider { StrideHz = speedMS / strideM, SpeedCmS = 100 * speedMS };
        var film = new MadeCamera { Seconds = 5 }.Film(rider);
        var settings = new MotionSettings { Uncertainty = new() { Draws = 8 } };

        var motion = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), settings);
        var signals = Signals(film, settings);

        var speed = signals.SpeedLegsPerSecond(signals.Grid.StartSeconds, signals.Grid.EndSeconds) * 0.82;
        Assert.All(motion.Strides, s => Assert.Equal(strideM, speed * s.Measures[StrideMeasure.StrideDuration].Value, 0.02));
        Assert.NotEmpty(motion.Strides);
    }

    [Fact]
    public void RacingTrot_SatisfiesTheIdentityItself() => Assert.Equal(12, 5.45 / 0.455, 0.05);

    // Yaw f between motion plane and picture: tan q' = tan q cos f; at q = 45 deg the error is -0.11, -0.44, -0.99, -1.78, -4.11 deg.
    [Theory]
    [InlineData(5, -0.11)]
    [InlineData(10, -0.44)]
    [InlineData(15, -0.99)]
    [InlineData(20, -1.78)]
    [InlineData(30, -4.11)]
    public void Yaw_ShortensTheHorizontalAndLowersTheAngle(double yawDeg, double errorDeg)
    {
        var seen = Angles.AgainstDown(Math.Cos(double.DegreesToRadians(yawDeg)), -1);

        Assert.Equal(errorDeg, seen - 45, 0.006);
    }

    // Segment fractions of stature: Drillis and Contini 1966 (as in Winter 2009), de Leva 1996, ANSUR II.
    [Theory]
    [InlineData(0.245, 0.246)]
    [InlineData(0.2425, 0.2493)]
    [InlineData(0.2124, 0.2492)]
    [InlineData(0.233, 0.238)]
    [InlineData(0.233, 0.248)]
    public void StatureScale_HoldsEverySourcesBodyWithinTwoErrors(double thigh, double shank)
    {
        // The thigh stands out sideways by 25 deg: the picture shows its cosine.
        var shown = thigh * Math.Cos(double.DegreesToRadians(25));
        var leg = shown + shank;
        var size = new BodySize([100], [shank / leg], [shown / leg], [0.288 / leg]);

        var scale = LegScale.From(new(StatureCm: 170), [size], new());

        Assert.InRange(scale.CmPerLeg, 170 * leg * (1 - 2 * scale.RelativeSe), 170 * leg * (1 + 2 * scale.RelativeSe));
        Assert.InRange(scale.RelativeSe, 0.02, 0.07);
    }

    // Lovett 2005: the thigh's angle ranges over 7.3 deg in rising trot; about a fixed knee that lifts the hip 3.6 cm (L 39.4 cm, 40 deg over horizontal).
    [Fact]
    public void LovettsRange_LiftsTheHipAsTheGeometrySays()
    {
        var sit = Angles.AgainstDown(Math.Cos(double.DegreesToRadians(40)), -Math.Sin(double.DegreesToRadians(40)));
        double Height(double thighDeg) => 39.4 * Math.Cos(double.DegreesToRadians(thighDeg));

        Assert.Equal(50, sit, 1e-9);
        Assert.Equal(3.6, Height(sit - 7.3) - Height(sit), 0.05);
    }

    [Fact]
    public void Gaits_KeepTheirOrderAlongTheFrequencies()
    {
        // Clayton 1994 and 1995, from memory: canter 1.64 to 1.72, walk 1.74 to 1.88, trot 2.56 to 2.78 Hz.
        var evidence = new GaitEvidence(new());
        Gait Best(double hz, double amplitudePct, double risePct)
        {
            var e = evidence.Of(new WindowEvidence(0, 2.4, hz, amplitudePct, 0.9, 0.1, risePct, 0.2, double.NaN));
            return (Gait)Array.IndexOf(e, e.Max());
        }

        Assert.Equal(Gait.Canter, Best(1.68, 8, 0.2));
        Assert.Equal(Gait.Walk, Best(1.74, 2, 0.2));
        Assert.Equal(Gait.Walk, Best(1.88, 2, 0.2));
        Assert.Equal(Gait.SittingTrot, Best(2.56, 4.5, 0.2));
        Assert.Equal(Gait.RisingTrot, Best(2.78, 4.5, 2));
    }

    internal static SegmentSignals Signals(Sightings film, MotionSettings settings)
    {
        var course = TurnCourse.Of(film, film.Facing, settings.View);
        var verdict = FrameVerdict.Judge(film, course, settings.Segment);
        var segment = Segmenter.Cut(film, verdict, FacingFill.Steady(film), settings.Segment, []).Single();
        return new SegmentBuilder(film, verdict, course, settings).Build(segment)!.Value.Signals;
    }
}
