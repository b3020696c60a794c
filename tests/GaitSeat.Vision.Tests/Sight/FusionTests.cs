using GaitSeat.Model;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class FusionTests
{
    private static readonly BodyPointSettings Settings = new();

    private static double[] Times(int n) => [.. Enumerable.Range(0, n).Select(i => i / 30.0)];

    private static PatchMotion Still(int n) => new(new double[n], new double[n], new double[n], [.. Enumerable.Repeat(1.0, n)], new int[n], new double[n]);

    private static Sightings Fuse(RawPose?[] poses, bool[]? cuts = null, BoxPx? box = null)
    {
        var t = Times(poses.Length);
        var path = new RiderPath
        {
            TimeSeconds = t,
            Rider = [.. t.Select(_ => (BoxPx?)(box ?? PoseMaker.Box))],
            Horse = new BoxPx?[t.Length],
            WidthPx = 400,
            HeightPx = 400,
            Spans = [new(0, t[^1])],
            Notes = [],
            HorseSeenShare = 0,
            RiderSeenShare = 1,
        };
        return new PointFusion(Settings).Fuse(t, poses, path, Still(t.Length), Still(t.Length), cuts ?? new bool[t.Length], 400, 400);
    }

    [Theory]
    [InlineData(Facing.Left)]
    [InlineData(Facing.Right)]
    public void ClearPoses_FacingFoundAndNearSideTaken(Facing facing)
    {
        var s = Fuse([.. Enumerable.Range(0, 10).Select(_ => PoseMaker.Facing(facing, farShift: 10))]);
        Assert.All(s.Facing, f => Assert.Equal(facing, f));
        Assert.All(s.Reason, r => Assert.Equal(FrameReason.None, r));
        Assert.Equal(facing == Facing.Right ? 170 : 130, s[BodyPoint.Knee].XPx[5], 3);
        Assert.Equal(facing == Facing.Right ? 165 : 135, s[BodyPoint.Toe].XPx[5], 3);
        Assert.Equal(10, Math.Abs(s[BodyPoint.FarHip].XPx[5] - s[BodyPoint.Hip].XPx[5]), 3);
        Assert.Equal(0, s[BodyPoint.Hip].SpreadPx[5], 3);
        Assert.True(double.IsNaN(s[BodyPoint.Heel].SpreadPx[5]));
    }

    // Both shoulders and hips 20 px apart on a trunk of 75.66 px: sin = 2 * 20 / ((0.72 + 0.55) * 75.66).
    [Theory]
    [InlineData(Facing.Right, 20, -24.6)]
    [InlineData(Facing.Right, -20, 24.6)]
    [InlineData(Facing.Left, 20, -24.6)]
    public void NearAndFarApart_TurnHasSizeAndSignOfTheFormula(Facing facing, double farShift, double turnDeg)
    {
        var s = Fuse([.. Enumerable.Range(0, 5).Select(_ => PoseMaker.Facing(facing, farShift))]);
        Assert.All(s.ViewTurnDeg!, t => Assert.Equal(turnDeg, t, 0.1));
        // How far is too far is for the maths to say.
        Assert.All(s.Reason, r => Assert.Equal(FrameReason.None, r));
    }

    [Fact]
    public void AFewFramesVotedWrongly_MajorityHolds()
    {
        var poses = Enumerable.Range(0, 60).Select(i => (RawPose?)PoseMaker.Facing(i % 4 == 0 ? Facing.Left : Facing.Right)).ToArray();
        Assert.All(Fuse(poses).Facing, f => Assert.Equal(Facing.Right, f));
    }

    [Fact]
    public void FacingTurnsAtACut_EachShotKeepsItsOwn()
    {
        var poses = Enumerable.Range(0, 40).Select(i => (RawPose?)PoseMaker.Facing(i < 20 ? Facing.Left : Facing.Right)).ToArray();
        var cuts = new bool[40];
        cuts[20] = true;
        var facing = Fuse(poses, cuts).Facing;
        Assert.All(facing[..20], f => Assert.Equal(Facing.Left, f));
        Assert.All(facing[20..], f => Assert.Equal(Facing.Right, f));
    }

    [Theory]
    [InlineData(BodyPoint.Ankle)]
    [InlineData(BodyPoint.Knee)]
    public void FirstModelSwapsSidesInSomeFrames_TrackIsMended(BodyPoint joint)
    {
        var poses = Enumerable.Range(0, 40).Select(i =>
        {
            var pose = PoseMaker.Facing(Facing.Right, farShift: -40, moveX: i);
            return (RawPose?)(i % 5 is 2 or 3 ? PoseMaker.Swapped(pose, joint) : pose);
        }).ToArray();
        var s = Fuse(poses);
        var start = joint == BodyPoint.Knee ? 170 : 135;
        for (var i = 0; i < 40; i++) Assert.Equal(start + i, s[joint].XPx[i], 2);
    }

    [Fact]
    public void SecondModelTakesTheFarFootForAWhile_FootIsMended()
    {
        var poses = Enumerable.Range(0, 40).Select(i =>
        {
            var pose = PoseMaker.Facing(Facing.Right, farShift: -60, moveX: i);
            return (RawPose?)(i is > 10 and < 16 ? pose with { Second = PoseMaker.SwappedSecond(pose, BodyPoint.Ankle, BodyPoint.Heel, BodyPoint.Toe) } : pose);
        }).ToArray();
        var s = Fuse(poses);
        for (var i = 0; i < 40; i++)
        {
            Assert.Equal(135 + i, s[BodyPoint.Ankle].XPx[i], 2);
            Assert.Equal(165 + i, s[BodyPoint.Toe].XPx[i], 2);
        }
    }

    // The shoulder bounces 30 px, the models see the hip bounce only half of it: the trunk cannot shorten, so the hip is held to it.
    [Fact]
    public void HipLagsBehindTheShoulder_TrunkLengthBringsMostOfTheMotionBack()
    {
        var poses = Enumerable.Range(0, 90).Select(i =>
        {
            var bounce = 15 * Math.Sin(2 * Math.PI * 1.3 * i / 30);
            var pose = PoseMaker.Facing(Facing.Right, moveY: bounce);
            for (var k = 0; k < 2; k++) (pose.First.Y[11 + k], pose.Second!.Y[23 + k]) = ((float)(225 + bounce / 2), (float)(225 + bounce / 2));
            return (RawPose?)pose;
        }).ToArray();
        var y = Fuse(poses)[BodyPoint.Hip].YPx;
        Assert.InRange(y.Max() - y.Min(), 26, 30);
    }

    [Fact]
    public void ToeJumpsBetweenBootAndGirth_HeldToItsPlaceAboutTheAnkle()
    {
        var poses = Enumerable.Range(0, 61).Select(i =>
        {
            var pose = PoseMaker.Facing(Facing.Right, moveX: 2 * i);
            if (i % 4 == 0) pose.Second!.X[32] -= 30;
            return (RawPose?)pose;
        }).ToArray();
        var x = Fuse(poses)[BodyPoint.Toe].XPx;
        for (var i = 0; i < x.Length; i++) Assert.InRange(x[i] - (165 + 2 * i), -6.5, 0.5);
    }

    // The first model stands 8 px off and jitters by 6 px; the second is steady: the place is the first's, the jitter mostly gone.
    [Fact]
    public void FirstModelOffsetAndJittery_PlaceFromItMotionFromTheSecond()
    {
        var poses = Enumerable.Range(0, 61).Select(i =>
        {
            var pose = PoseMaker.Facing(Facing.Right);
            for (var k = 13; k < 15; k++) pose.First.X[k] += 8 + (i % 2 == 0 ? 3 : -3);
            return (RawPose?)pose;
        }).ToArray();
        var x = Fuse(poses)[BodyPoint.Knee].XPx;
        Assert.InRange(x.Average(), 177, 182);
        Assert.InRange(x.Max() - x.Min(), 0.1, 3.5);
    }

    [Fact]
    public void FirstModelFarOffTheSecond_PointIsTrustedLess()
    {
        var off = PoseMaker.Facing(Facing.Right);
        off.First.X[14] += 60;
        off.First.X[13] += 60;
        var s = Fuse([PoseMaker.Facing(Facing.Right), off, PoseMaker.Facing(Facing.Right)]);
        Assert.Equal(60, s[BodyPoint.Knee].SpreadPx[1], 3);
        Assert.True(s[BodyPoint.Knee].Confidence[1] < 0.15);
        Assert.True(s[BodyPoint.Knee].Confidence[0] > 0.8);
        Assert.Equal(FrameReason.PointsUncertain, s.Reason[1]);
    }

    [Fact]
    public void NothingReadInAFrame_PointsMissingAndReasonNoRider()
    {
        var s = Fuse([PoseMaker.Facing(Facing.Right), null, PoseMaker.Facing(Facing.Right)]);
        Assert.True(s[BodyPoint.Hip][1].IsMissing);
        Assert.Equal(FrameReason.NoRider, s.Reason[1]);
        Assert.Equal(0, s[BodyPoint.Hip].Confidence[1]);
    }

    [Fact]
    public void SmallRider_ReasonRiderTooSmall() =>
        Assert.Equal(FrameReason.RiderTooSmall, Fuse([PoseMaker.Facing(Facing.Right)], box: new(100, 100, 20, 45)).Reason[0]);

    [Fact]
    public void AnkleOutsideThePicture_ReasonOutOfPicture() =>
        Assert.Equal(FrameReason.OutOfPicture, Fuse([PoseMaker.Facing(Facing.Right, moveY: 80)]).Reason[0]);

    [Fact]
    public void OnlyTheFirstModel_PointsComeFromItAlone()
    {
        var pose = PoseMaker.Facing(Facing.Right) with { Second = null };
        var s = Fuse([pose, pose]);
        Assert.Equal(170, s[BodyPoint.Knee].XPx[0], 3);
        Assert.True(s[BodyPoint.Heel][0].IsMissing);
        Assert.True(double.IsNaN(s[BodyPoint.Knee].SpreadPx[0]));
    }

    [Fact]
    public void SecondModelReadsEveryOtherFrame_ItsPointsGoAlongWithTheTrunk()
    {
        var poses = Walking(9);
        var s = Fuse([.. poses.Select((p, i) => i % 2 == 0 ? p : p with { Second = null })]);
        foreach (var point in new[] { BodyPoint.Heel, BodyPoint.Toe, BodyPoint.Ankle })
        {
            for (var i = 1; i < poses.Length - 1; i++)
            {
                Assert.Equal(s[point].XPx[0] + 3 * i * i / 4.0, s[point].XPx[i], 0.5);
                Assert.Equal(s[point].YPx[0] - 2 * i, s[point].YPx[i], 0.5);
            }
        }
    }

    [Fact]
    public void SecondModelNotAskedForLong_HeelMissingBetween()
    {
        var s = Fuse([.. Walking(13).Select((p, i) => i % 6 == 0 ? p : p with { Second = null })]);
        Assert.False(double.IsNaN(s[BodyPoint.Heel].XPx[1]));
        Assert.True(double.IsNaN(s[BodyPoint.Heel].XPx[3]));
        Assert.False(double.IsNaN(s[BodyPoint.Knee].XPx[3]));
    }

    [Fact]
    public void CutBetweenTwoReadings_NothingCarriedOverIt()
    {
        RawPose a = PoseMaker.Facing(Facing.Right), b = PoseMaker.Facing(Facing.Right, moveX: 60);
        var s = Fuse([a, a, a with { Second = null }, b, b], [false, false, false, true, false]);
        Assert.Equal(s[BodyPoint.Heel].XPx[1], s[BodyPoint.Heel].XPx[2], 3);
        Assert.Equal(s[BodyPoint.Heel].XPx[1] + 60, s[BodyPoint.Heel].XPx[3], 3);
    }

    /// <summary>Faster and faster to the right, and evenly upwards.</summary>
    private static RawPose[] Walking(int frames) => [.. Enumerable.Range(0, frames).Select(i => PoseMaker.Facing(Facing.Right, farShift: 10, moveX: 3 * i * i / 4.0, moveY: -2 * i))];
}
