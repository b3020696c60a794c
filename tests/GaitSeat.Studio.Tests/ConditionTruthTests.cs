using CsCheck;
using GaitSeat.Model;

namespace GaitSeat.Studio.Tests;

/// <summary>The truth of each condition, checked by a way of its own: from the points in space, from the pictures' pixels, from the plan of the ride.</summary>
public sealed class ConditionTruthTests
{
    private static readonly ClipScript Rising = new() { Seed = 11, RiseCm = 8, ThighSitDeg = 45, DurationSeconds = 8, FrameRateHz = 50, RiderHeightPx = 220 };

    [Theory]
    [InlineData(Way.CircleFromOutside, 14, 12, Facing.Right)]
    [InlineData(Way.CircleFromOutside, 20, 16, Facing.Left)]
    [InlineData(Way.CircleFromInside, 16, 10, Facing.Left)]
    [InlineData(Way.Line, 20, 15, Facing.Right)]
    public void Yaw_FollowsFromWhereTheHorseGoes(Way way, double diameter, double distance, Facing facing)
    {
        var (script, h) = (Rising with { Way = way, CircleDiameterM = diameter, CameraDistanceM = distance, Facing = facing, CircleStartDeg = 40, Gait = Gait.SittingTrot }, 1e-4);
        var (ride, stage) = RideOf(script);
        foreach (var row in TruthOfARideTests.TruthOf(script).FrameRows.Where((_, i) => i % 10 == 3))
        {
            // The trunk's surge goes with the way, so the path itself shows where the horse is headed.
            var (a, b) = (stage.At(ride.At(row.TimeSeconds - h)), stage.At(ride.At(row.TimeSeconds + h)));
            var (dx, dd, x, d) = (b.X - a.X, b.Depth - a.Depth, (a.X + b.X) / 2, (a.Depth + b.Depth) / 2);
            var awayM = (dx * x + dd * d) / Math.Sqrt(x * x + d * d);
            var asideM = (dx * d - dd * x) / Math.Sqrt(x * x + d * d);
            Assert.Equal(-Math.Atan2(awayM, Math.Abs(asideM)) * 180 / Math.PI, row.YawDeg, 0.01);
            Assert.Equal(asideM > 0 ? Facing.Right : Facing.Left, row.Facing);
        }
    }

    [Fact]
    public void CircleSeenFromOutside_ShowsBothSidesAndTrueDistance()
    {
        var script = Rising with { Way = Way.CircleFromOutside, CircleDiameterM = 10, CameraDistanceM = 11, FrameRateHz = 25, DurationSeconds = 12 };
        var truth = TruthOfARideTests.TruthOf(script);
        Assert.Contains(truth.FrameRows, r => r.Facing == Facing.Left);
        Assert.Contains(truth.FrameRows, r => r.Facing == Facing.Right);
        Assert.True(truth.FrameRows.Max(r => Math.Abs(r.YawDeg)) > 80);
        // Nearest 6 m, furthest 16 m away: the scale goes with the inverse.
        Assert.Equal(16 / 6.0, truth.FrameRows.Max(r => r.PxPerM) / truth.FrameRows.Min(r => r.PxPerM), 0.06);
    }

    [Theory]
    [InlineData(-38)]
    [InlineData(-12)]
    [InlineData(0)]
    [InlineData(25)]
    [InlineData(40)]
    public void ConstantYaw_StaysTheSameWhileTheDistanceChanges(double yaw)
    {
        var truth = TruthOfARideTests.TruthOf(Rising with { Way = Way.ConstantYaw, YawDeg = yaw, CameraDistanceM = 18, HeightPx = 1080, WidthPx = 1920 });
        Assert.All(truth.FrameRows, r => Assert.Equal(yaw, r.YawDeg, 1e-6));
        var (first, last) = (truth.FrameRows[0].PxPerM, truth.FrameRows[^1].PxPerM);
        Assert.Equal(Math.Sign(yaw), Math.Abs(last / first - 1) < 0.02 ? 0 : Math.Sign(last - first));
    }

    [Theory]
    [InlineData(CameraWork.Pan, 0.2)]
    [InlineData(CameraWork.PanZoom, -0.15)]
    [InlineData(CameraWork.HandHeld, 0)]
    public void Scale_IsTheLengthOfTheShankInThePicture(CameraWork camera, double zoom)
    {
        // Side-on and level with the lens a length across the picture shows in true scale; a halt keeps it still in space.
        var script = Rising with { Gait = Gait.Halt, Way = Way.ConstantYaw, Camera = camera, ZoomChange = zoom, CameraDistanceM = 14, RollDeg = 3 };
        foreach (var row in TruthOfARideTests.TruthOf(script).FrameRows.Where((_, i) => i % 25 == 0))
        {
            var (hip, knee) = (row["hip"], row["knee"]);
            var (h, k) = (hip.Metres!.Value, knee.Metres!.Value);
            var inPlane = Math.Sqrt(Math.Pow(h.Forward - k.Forward, 2) + Math.Pow(h.Up - k.Up, 2));
            // Hip and knee lie 0.09 and 0.26 m nearer than the middle plane of 14 m: 1.3 % larger, and the way between them is skewed a little.
            Assert.Equal(1.013, hip.Px.DistanceTo(knee.Px) / inPlane / row.PxPerM, 0.012);
        }
    }

    [Fact]
    public void Zoom_KeepsMostOfTheSizeOfAHorseThatComesNearer()
    {
        var script = Rising with { Way = Way.ConstantYaw, YawDeg = 35, CameraDistanceM = 18 };
        double Change(CameraWork camera)
        {
            var rows = TruthOfARideTests.TruthOf(script with { Camera = camera }).FrameRows;
            return rows[^1].PxPerM / rows[0].PxPerM;
        }

        // A zoom that follows by the power 0.8 leaves the power 0.2 of the change.
        Assert.Equal(Math.Pow(Change(CameraWork.Pan), 0.2), Change(CameraWork.PanZoom), 0.03);
        Assert.True(Change(CameraWork.Pan) > 2);
    }

    [Fact]
    public void Roll_TurnsThePicture()
    {
        var script = Rising with { Gait = Gait.Halt, Camera = CameraWork.Static, CameraDistanceM = 12 };
        var (level, rolled) = (TruthOfARideTests.TruthOf(script).FrameRows[9], TruthOfARideTests.TruthOf(script with { RollDeg = 3 }).FrameRows[9]);
        double Slope(FrameTruth row) => Math.Atan2(row["shoulder"].Px.Y - row["hip"].Px.Y, row["shoulder"].Px.X - row["hip"].Px.X) * 180 / Math.PI;
        Assert.Equal(3, Slope(rolled) - Slope(level), 1e-9);
        Assert.Equal(level.ThighDeg, rolled.ThighDeg, 1e-12);
    }

    [Fact]
    public void HandHeldCamera_ShakesWithinItsBand()
    {
        var script = Rising with { Gait = Gait.Halt, FrameRateHz = 60, Camera = CameraWork.HandHeld };
        double[] Across(CameraWork camera) => [.. TruthOfARideTests.TruthOf(script with { Camera = camera }).FrameRows.Select(r => r["saddle"].Px.X)];
        var (held, panned) = (Across(CameraWork.HandHeld), Across(CameraWork.Pan));
        Assert.True(Power(held, 2.5, 9) > 20 * Power(panned, 2.5, 9), "the tremor is not there");
        Assert.True(Power(held, 10, 29) < 0.001 * Power(held, 2.5, 9), "something shakes faster than 8 Hz");
        Assert.True(Power(held, 0.3, 2.2) > Power(held, 2.5, 9), "the sway is smaller than the tremor");

        // Spectrum by the sum itself, Hann window, 8 s at 60 Hz.
        static double Power(double[] x, double lowHz, double highHz)
        {
            var (mean, power) = (x.Average(), 0.0);
            for (var k = (int)(8 * lowHz); k <= 8 * highHz; k++)
            {
                var sum = System.Numerics.Complex.Zero;
                for (var i = 0; i < x.Length; i++)
                    sum += (x[i] - mean) * (0.5 - 0.5 * Math.Cos(2 * Math.PI * i / x.Length)) * System.Numerics.Complex.FromPolarCoordinates(1, -2 * Math.PI * k * i / x.Length);
                power += sum.Magnitude * sum.Magnitude;
            }

            return power;
        }
    }

    [Fact]
    public void PonyAndLargeHorse_DifferInHeightNotInSaddle()
    {
        double SeatM(double cm) => TruthOfARideTests.TruthOf(Rising with { HorseHeightCm = cm, Gait = Gait.Halt }).FrameRows[0]["saddle"].Metres!.Value.Up;
        Assert.Equal(SeatM(165) * 130 / 165, SeatM(130), 1e-9);
        Assert.Equal(SeatM(165) * 180 / 165, SeatM(180), 1e-9);
        var (pony, large) = (TruthOfARideTests.TruthOf(Rising with { HorseHeightCm = 130 }), TruthOfARideTests.TruthOf(Rising with { HorseHeightCm = 180 }));
        Assert.Equal(pony.LeatherM, large.LeatherM);
    }

    [Fact]
    public void Posts_CrossTheRiderAndHidePoints()
    {
        foreach (var way in (ReadOnlySpan<Way>)[Way.ConstantYaw, Way.Line, Way.CircleFromInside, Way.CircleFromOutside])
        {
            var script = Rising with { Way = way, PostEveryM = 2.5, CameraDistanceM = 16, CircleDiameterM = 14, FrameRateHz = 25 };
            var (ride, stage) = RideOf(script);
            var (camera, truth) = (new StudioCamera(ride, stage), TruthOfARideTests.TruthOf(script));
            var posts = new Posts(script, FrameTimes.Of(script).Min(t => stage.At(ride.At(t)).DistanceM));
            var crossed = truth.FrameRows.Count(r => posts.Seen(camera.At(r.TimeSeconds)).Any(p => p.Foot.X > r["hip"].Px.X - 40 && p.Foot.X < r["knee"].Px.X + 40));
            Assert.True(crossed >= 10, $"posts cross the leg in {crossed} frames on the way {way}");
            // A point of the leg that is otherwise in full view is hidden now and then, and seen most of the time.
            var hidden = truth.FrameRows.Count(r => r["knee"].Visibility == PointVisibility.Hidden);
            Assert.InRange(hidden, 1, truth.Frames / 2);
        }
    }

    [Theory]
    [InlineData(Bystander.InFront)]
    [InlineData(Bystander.Behind)]
    public void Helper_IsInLineWithTheRiderAtSomeTime(Bystander bystander)
    {
        var script = Rising with { Way = Way.ConstantYaw, YawDeg = 8, CameraDistanceM = 12, Bystander = bystander };
        var (ride, stage) = RideOf(script);
        var camera = new StudioCamera(ride, stage);
        var helper = BystanderPlace.Of(ride, stage)!.Value;
        var apart = TruthOfARideTests.TruthOf(script).FrameRows
            .Select(r => (Px: Math.Abs(StudioCamera.Project(camera.At(r.TimeSeconds), helper, default).Px.X - r["saddle"].Px.X), Horse: stage.At(ride.At(r.TimeSeconds)))).MinBy(a => a.Px);
        Assert.True(apart.Px < 25, $"{apart.Px:F0} px");
        Assert.Equal(bystander == Bystander.InFront, helper.DistanceM < apart.Horse.DistanceM);
    }

    [Fact]
    public void SideSeen_IsTheOneThatFacesTheCamera()
    {
        Gen.Double[-180, 180].Select(Gen.Double[6, 20], Gen.Bool).Sample(
            (start, diameter, left) =>
            {
                var script = Rising with { Way = Way.CircleFromOutside, CircleDiameterM = diameter, CameraDistanceM = diameter / 2 + 5, CircleStartDeg = start, Facing = left ? Facing.Left : Facing.Right };
                var (ride, stage) = RideOf(script);
                return Enumerable.Range(0, 8).Select(i => stage.At(ride.At(i))).All(s =>
                    s.NearX * s.X + s.NearDepth * s.Depth <= 0
                    && Math.Abs(s.NearX * s.ForwardX + s.NearDepth * s.ForwardDepth) < 1e-12
                    && Math.Abs(s.NearX * s.NearX + s.NearDepth * s.NearDepth - 1) < 1e-12);
            },
            seed: "0000000000002", iter: 60, threads: 1);
    }

    internal static (Ride Ride, Stage Stage) RideOf(ClipScript script)
    {
        var ride = new Ride(script);
        return (ride, new Stage(ride));
    }
}
