using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

public sealed class RobustnessTests
{
    private static readonly MotionSettings Quick = new() { Uncertainty = new() { Draws = 8 } };

    [Fact]
    public void AnyPatternOfHoles_NeverThrowsAndCountsWhatIsLeftOut()
    {
        var film = new MadeCamera { Seconds = 3 }.Film(new MadeRider());
        for (var seed = 0; seed < 40; seed++)
        {
            var random = new Random(seed);
            var holed = Holed(film, random);

            var motion = MotionAnalysis.Analyse(holed, new(StatureCm: 170), Quick);

            Assert.Equal(film.Count, motion.Trace.ThighAngleDeg.Length);
            var named = motion.LeftOut.Where(l => l is { Scope: LeftOutScope.Frame } and not { Reason: "stretch_too_short" or "no_leg_seen" or "facing_unknown" }).Sum(l => l.Count);
            Assert.True(named >= holed.Reason.Count(r => r != FrameReason.None));
            Assert.All(motion.Strides, s => Assert.True(s.EndSeconds > s.StartSeconds));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(7)]
    public void AFewFrames_GiveNothingAndDoNotThrow(int frames)
    {
        var film = new MadeCamera { Seconds = frames / 30.0 + 0.001 }.Film(new MadeRider());

        Assert.Empty(MotionAnalysis.Analyse(film, BodyLengths.Unknown, Quick).Strides);
    }

    [Fact]
    public void OneBodyPointNeverSeen_LeavesItsMeasuresEmptyAndTheRestAlone()
    {
        var film = new MadeCamera().Film(new MadeRider());
        film.Points[(int)BodyPoint.Ear] = PointTrack.Empty(film.Count);
        film.Points[(int)BodyPoint.Wrist] = PointTrack.Empty(film.Count);

        var motion = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), Quick);

        Assert.Equal(7, motion.Strides.Count);
        Assert.All(motion.Strides, s =>
        {
            Assert.True(s.Measures[StrideMeasure.EarOffsetCm].IsMissing);
            Assert.True(s.Measures[StrideMeasure.HandTravelPctLeg].IsMissing);
            Assert.Equal(9, s.Measures[StrideMeasure.RiseHeightCm].Value, 0.2);
        });
    }

    [Fact]
    public void LongHoleInTheKnee_DropsThatStrideWithItsReason()
    {
        var film = new MadeCamera().Film(new MadeRider());
        for (var i = 64; i < 72; i++) film[BodyPoint.Knee].XPx[i] = film[BodyPoint.Knee].YPx[i] = double.NaN;

        var motion = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), Quick);

        var dropped = Assert.Single(motion.LeftOut, l => l.Scope == LeftOutScope.Stride);
        Assert.Equal("hole_in_points", dropped.Reason);
        Assert.Equal(6, motion.Strides.Count);
        Assert.DoesNotContain(motion.Strides, s => s.StartSeconds < 64 / 30.0 && s.EndSeconds > 72 / 30.0);
    }

    [Fact]
    public void ShortHole_IsBridged()
    {
        var film = new MadeCamera().Film(new MadeRider());
        for (var i = 80; i < 83; i++) film[BodyPoint.Hip].XPx[i] = film[BodyPoint.Hip].YPx[i] = double.NaN;

        var motion = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), Quick);

        Assert.Equal(7, motion.Strides.Count);
        Assert.All(motion.Strides, s => Assert.Equal(9, s.Measures[StrideMeasure.RiseHeightCm].Value, 0.5));
    }

    [Fact]
    public void UnevenFrameTimes_GiveTheSameStrides()
    {
        var random = new Random(5);
        double[] times = [.. Enumerable.Range(0, 180).Select(i => i / 30.0 + (i == 0 ? 0 : 0.012 * (random.NextDouble() - 0.5)))];
        double[] thinned = [.. times.Where((_, i) => i % 7 != 3)];
        var rider = new MadeRider();

        var motion = MotionAnalysis.Analyse(new MadeCamera { Times = thinned }.Film(rider), new(LowerLegCm: 41), Quick);

        var score = StrideScore.Of(motion, rider, thinned[0], thinned[^1]);
        Assert.Equal(score.True, score.Matched);
        Assert.InRange(score.WorstSitMs, 0, 5);
        Assert.InRange(score.WorstRiseCm, 0, 0.2);
    }

    [Fact]
    public void NoBodyLengths_GivePercentOfLegAndNoCentimetres()
    {
        var motion = MotionAnalysis.Analyse(new MadeCamera().Film(new MadeRider()), BodyLengths.Unknown, Quick);

        Assert.All(motion.Strides, s =>
        {
            Assert.True(s.Measures[StrideMeasure.RiseHeightCm].IsMissing);
            Assert.Equal(100 * 9 / 82.0, s.Measures[StrideMeasure.RiseHeightPctLeg].Value, 0.1);
            Assert.Contains("no_scale", s.Quality);
        });
    }

    [Fact]
    public void TurnedFrames_AreLeftOutAndCounted()
    {
        var film = new MadeCamera().Film(new MadeRider());
        var turned = film with { KnownTurnDeg = [.. film.TimeSeconds.Select((_, i) => i >= 90 ? -35.0 : 3)] };

        var motion = MotionAnalysis.Analyse(turned, BodyLengths.Unknown, Quick);

        Assert.Equal(90, Assert.Single(motion.LeftOut, l => l.Reason == "turned_out").Count, 5.0);
        Assert.All(motion.Strides, s => Assert.True(s.EndSeconds <= 3.1));
    }

    [Fact]
    public void StrideCutWhereTheRiderIsNoLongerFollowed_IsCounted()
    {
        var film = new MadeCamera().Film(new MadeRider());
        var turned = film with { KnownTurnDeg = [.. film.TimeSeconds.Select((_, i) => i is >= 60 and < 120 ? -35.0 : 3)] };

        var motion = MotionAnalysis.Analyse(turned, BodyLengths.Unknown, Quick);

        // One at either side of a gap of 2 s; none at the ends of the clip.
        var cut = motion.LeftOut.Where(l => l.Reason == "cut_by_gap").ToArray();
        Assert.Equal(2, cut.Length);
        Assert.InRange(cut[0].StartSeconds!.Value, 1.2, 2.05);
        Assert.Equal(4.0, cut[1].StartSeconds!.Value, 0.15);
    }

    /// <summary>A short gap over a sit cuts the stride before it and the one after; elsewhere one stride.</summary>
    [Theory]
    [InlineData(2.72, 2)]
    [InlineData(2.35, 1)]
    public void GapOverASit_CutsTwoStrides(double gapSeconds, int cuts)
    {
        var film = new MadeCamera().Film(new MadeRider());
        for (var i = 0; i < film.Count; i++)
            if (Math.Abs(film.TimeSeconds[i] - gapSeconds) < 0.11) film.Reason[i] = FrameReason.PointsUncertain;

        var cut = MotionAnalysis.Analyse(film, BodyLengths.Unknown, Quick).LeftOut.Where(l => l.Reason == "cut_by_gap").ToArray();

        // Sits at 2.00, 2.74 and 3.48 s.
        Assert.Equal(cuts, cut.Length);
        Assert.Equal(2.0, cut[0].StartSeconds!.Value, 0.05);
        Assert.All(cut.Skip(1), c => Assert.Equal(2.74, c.StartSeconds!.Value, 0.08));
    }

    [Fact]
    public void StrideOfWhichEveryThirdFrameIsBridged_IsNotToBeTrusted()
    {
        var film = new MadeCamera().Film(new MadeRider());
        for (var i = 62; i < 82; i += 3) film.Reason[i] = FrameReason.PointsUncertain;

        var strides = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), Quick).Strides;

        // Frames 62 to 82 are 2.07 to 2.73 s; the stride from 2.00 to 2.74 s holds them.
        var doubted = Assert.Single(strides, s => !s.IsTrusted);
        Assert.Equal(2.0, doubted.StartSeconds, 0.05);
        Assert.Contains("untrusted_points", doubted.Quality);
        Assert.True(strides.Count >= 6);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(6)]
    public void AfterASecondSit_TheStridesGoOnAtTheOtherBeat(int secondSit)
    {
        var rider = new MadeRider { SecondSit = secondSit };

        var motion = MotionAnalysis.Analyse(new MadeCamera { Seconds = 8 }.Film(rider), new(LowerLegCm: 41), Quick);

        double first = (secondSit - rider.Phase0) / rider.StrideHz, second = first + 0.5 / rider.StrideHz;
        var sits = rider.Sits(0, 8).ToArray();
        Assert.All(motion.Strides, s => Assert.InRange(sits.Min(t => Math.Abs(t - s.StartSeconds)), 0, 0.02));
        Assert.All(motion.Strides, s => Assert.InRange(sits.Min(t => Math.Abs(t - s.EndSeconds)), 0, 0.02));
        Assert.DoesNotContain(motion.Strides, s => s.StartSeconds < first + 0.05 && s.EndSeconds > second - 0.05);
        Assert.Contains(motion.Strides, s => s.EndSeconds < first + 0.05);
        Assert.Contains(motion.Strides, s => s.StartSeconds > second - 0.05);
        // The time between the two sits is no stride, and the one before it may be lost; all others are there.
        Assert.InRange(motion.Strides.Count, sits.Length - 4, sits.Length - 2);
    }

    [Fact]
    public void HaltWithTheRidersPointsMostlyLost_IsAHalt()
    {
        var film = new MadeCamera { PanShare = 0 }.Film(new MadeRider { Gait = Gait.Halt, SpeedCmS = 0, BounceCm = 0, SwingCm = 0 });
        foreach (var point in new[] { BodyPoint.Hip, BodyPoint.Heel })
            for (var i = 60; i < film.Count; i++) film[point].XPx[i] = film[point].YPx[i] = double.NaN;

        var motion = MotionAnalysis.Analyse(film, BodyLengths.Unknown, Quick);

        Assert.Equal(Gait.Halt, Assert.Single(motion.Spells).Gait);
    }

    [Fact]
    public void SameSightings_GiveTheSameNumbers()
    {
        var film = new ModelNoise().On(new MadeCamera().Film(new MadeRider()), 1.7);

        var a = MotionAnalysis.Analyse(film, new(StatureCm: 168), Quick);
        var b = MotionAnalysis.Analyse(film, new(StatureCm: 168), Quick);

        foreach (var (x, y) in a.Strides.Zip(b.Strides))
            foreach (var definition in MeasureCatalogue.All) Assert.Equal(x.Measures[definition.Measure], y.Measures[definition.Measure]);
    }

    private static Sightings Holed(Sightings film, Random random)
    {
        var n = film.Count;
        double[] Pierced(double[] values)
        {
            double[] copy = [.. values];
            var runs = random.Next(4);
            for (var r = 0; r < runs; r++)
            {
                var from = random.Next(n);
                for (var i = from; i < Math.Min(n, from + random.Next(1, n)); i++) copy[i] = double.NaN;
            }

            return copy;
        }

        PatchMotion Patch(PatchMotion p) => p with { XPx = Pierced(p.XPx), YPx = Pierced(p.YPx), RotationRad = Pierced(p.RotationRad) };
        var reasons = Enum.GetValues<FrameReason>();
        return film with
        {
            Points = [.. film.Points.Select(p => p with { XPx = Pierced(p.XPx), YPx = Pierced(p.YPx) })],
            Trunk = Patch(film.Trunk),
            Surroundings = Patch(film.Surroundings),
            Facing = [.. film.Facing.Select(f => random.Next(20) == 0 ? (Facing)random.Next(3) : f)],
            Reason = [.. film.Reason.Select(r => random.Next(30) == 0 ? reasons[random.Next(reasons.Length)] : r)],
            CutBefore = [.. film.CutBefore.Select(_ => random.Next(80) == 0)],
            Rider = [.. film.Rider.Select(b => random.Next(10) == 0 ? null : b)],
        };
    }
}
