using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

public sealed class GaitTests
{
    private static readonly MotionSettings Quick = new() { Uncertainty = new() { Draws = 8 } };

    // Frequencies: Clayton 1994 and 1995 (from memory); trunk motion at trot 73 mm (Buchner 2000). Ponies are faster.
    [Theory]
    [InlineData(Gait.Walk, 0.93, 3.5, 170, 0)]
    [InlineData(Gait.Walk, 0.87, 2, 140, 0)]
    [InlineData(Gait.SittingTrot, 1.35, 8, 300, 0)]
    [InlineData(Gait.SittingTrot, 1.6, 5, 300, 0)]
    [InlineData(Gait.Canter, 1.65, 14, 400, 0)]
    [InlineData(Gait.Canter, 1.55, 10, 350, 0)]
    [InlineData(Gait.Halt, 1, 0, 0, 0)]
    [InlineData(Gait.RisingTrot, 1.25, 7, 300, 3)]
    [InlineData(Gait.RisingTrot, 1.6, 5, 300, 5)]
    [InlineData(Gait.RisingTrot, 1.3, 10, 300, 14)]
    public void EachGait_IsNamedAndOnlyRisingGivesStrides(Gait gait, double strideHz, double bounceCm, double speedCmS, double riseCm)
    {
        var rider = new MadeRider { Gait = gait, StrideHz = strideHz, BounceCm = bounceCm, SpeedCmS = speedCmS, RiseCm = riseCm, SwingCm = gait == Gait.Halt ? 0 : 2 };

        var motion = MotionAnalysis.Analyse(new MadeCamera { Seconds = 5 }.Film(rider), BodyLengths.Unknown, Quick);

        Assert.Equal(gait, Assert.Single(motion.Spells).Gait);
        Assert.Equal(gait == Gait.RisingTrot, motion.Strides.Count > 0);
    }

    [Fact]
    public void PointsThatOnlyTremble_GiveNoStrides()
    {
        var still = new MadeRider { Gait = Gait.Halt, StrideHz = 1, BounceCm = 0, SpeedCmS = 0, SwingCm = 0 };
        var film = new MadeCamera { Seconds = 8 }.Film(still);
        for (var seed = 1; seed <= 6; seed++)
        {
            var noisy = new ModelNoise { Seed = seed, PointShare = 0.02, TrunkStepSdPx = 1.5 }.On(film, 1.7);

            Assert.Empty(MotionAnalysis.Analyse(noisy, BodyLengths.Unknown, Quick).Strides);
        }
    }

    [Fact]
    public void WalkThenTrot_AreTwoSpellsWithStridesInTheSecondOnly()
    {
        var walk = new MadeCamera { Seconds = 6 }.Film(new MadeRider { Gait = Gait.Walk, StrideHz = 0.92, BounceCm = 3.5, SpeedCmS = 170 });
        var trot = new MadeCamera { Seconds = 6 }.Film(new MadeRider());
        var both = Joined(walk, trot, cut: false);

        var motion = MotionAnalysis.Analyse(both, BodyLengths.Unknown, Quick);

        Assert.Equal(Gait.Walk, motion.Spells[0].Gait);
        Assert.Equal(Gait.RisingTrot, motion.Spells[^1].Gait);
        Assert.NotEmpty(motion.Strides);
        // The trot begins 0.22 s after where its first stride would: the rider is in the saddle there, in either gait.
        Assert.All(motion.Strides, s => Assert.True(s.StartSeconds > 5.75, $"a stride starts at {s.StartSeconds:F2} s, in the walk"));
    }

    [Fact]
    public void CutOrTurnOfTheRein_DividesSpellsAndNoStrideCrossesIt()
    {
        var right = new MadeCamera { Seconds = 4 }.Film(new MadeRider());
        var left = new MadeCamera { Seconds = 4, Facing = Facing.Left }.Film(new MadeRider { Phase0 = 0.1 });
        foreach (var joined in new[] { Joined(right, left, cut: false), Joined(right, right, cut: true) })
        {
            var motion = MotionAnalysis.Analyse(joined, BodyLengths.Unknown, Quick);

            Assert.Equal(2, motion.Spells.Count);
            Assert.All(motion.Spells, s => Assert.Equal(Gait.RisingTrot, s.Gait));
            Assert.DoesNotContain(motion.Strides, s => s.StartSeconds < 3.99 && s.EndSeconds > 4.01);
            Assert.InRange(motion.Strides.Count, 7, 10);
        }
    }

    private static Sightings Joined(Sightings a, Sightings b, bool cut)
    {
        var step = a.TimeSeconds[1] - a.TimeSeconds[0];
        double[] Cat(double[] x, double[] y) => [.. x, .. y];
        PatchMotion Patch(PatchMotion x, PatchMotion y) => new(
            Cat(x.XPx, y.XPx), Cat(x.YPx, y.YPx), Cat(x.RotationRad, y.RotationRad), Cat(x.Zoom, y.Zoom), [.. x.Points, .. y.Points], Cat(x.ResidualPx, y.ResidualPx));
        return a with
        {
            TimeSeconds = Cat(a.TimeSeconds, [.. b.TimeSeconds.Select(t => t + a.TimeSeconds[^1] + step)]),
            Rider = [.. a.Rider, .. b.Rider],
            Horse = [.. a.Horse, .. b.Horse],
            Facing = [.. a.Facing, .. b.Facing],
            KnownTurnDeg = Cat(a.KnownTurnDeg!, b.KnownTurnDeg!),
            Reason = [.. a.Reason, .. b.Reason],
            CutBefore = [.. a.CutBefore, .. b.CutBefore.Select((c, i) => c || (cut && i == 0))],
            Points = [.. a.Points.Zip(b.Points, (x, y) => new PointTrack(Cat(x.XPx, y.XPx), Cat(x.YPx, y.YPx), Cat(x.Confidence, y.Confidence), Cat(x.SpreadPx, y.SpreadPx)))],
            Trunk = Patch(a.Trunk, b.Trunk),
            Surroundings = Patch(a.Surroundings, b.Surroundings),
        };
    }
}
