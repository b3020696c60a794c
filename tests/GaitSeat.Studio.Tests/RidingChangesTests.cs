using GaitSeat.Footage;
using GaitSeat.Model;

namespace GaitSeat.Studio.Tests;

/// <summary>What changes while riding: gait, leathers, diagonal; and when the frames come.</summary>
public sealed class RidingChangesTests : IDisposable
{
    private static readonly ClipScript Rising = new() { Seed = 21, RiseCm = 9, ThighSitDeg = 44, DurationSeconds = 9, FrameRateHz = 100, DurationCvPct = 1 };
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-times-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<Gait, Gait, Gait> Courses() => new()
    {
        { Gait.Walk, Gait.RisingTrot, Gait.Walk },
        { Gait.RisingTrot, Gait.SittingTrot, Gait.RisingTrot },
        { Gait.Halt, Gait.RisingTrot, Gait.Canter },
        { Gait.RisingTrot, Gait.Walk, Gait.Halt },
    };

    private static ClipScript Course(Gait first, Gait second, Gait third) => Rising with { Gait = first, GaitChanges = [new(3, second), new(6, third)] };

    [Theory, MemberData(nameof(Courses))]
    public void Spells_ComeInOrderAndStridesOnlyWhileTheSeatLeavesTheSaddle(Gait first, Gait second, Gait third)
    {
        var truth = TruthOfARideTests.TruthOf(Course(first, second, third));
        Assert.Equal([first, second, third], truth.Spells.Select(s => s.GaitTerm));
        Assert.All(truth.Spells.Zip(truth.Spells.Skip(1)), p => Assert.InRange(p.Second.StartS - p.First.EndS, -1e-9, 0.8));
        Assert.Equal("rising", truth.Gait);
        // Found anew from the frames: wherever the seat is well above the saddle there is rising trot, and nowhere else.
        var up = truth.FrameRows.Where(r => r.RiseCm > 4).ToArray();
        Assert.NotEmpty(up);
        Assert.All(up, r => Assert.Contains(truth.Spells, s => s.GaitTerm == Gait.RisingTrot && s.StartS <= r.TimeSeconds && s.EndS >= r.TimeSeconds));
        Assert.All(truth.Strides, s => Assert.Contains(up, r => r.TimeSeconds > s.SitS && r.TimeSeconds < s.NextSitS));
        var tops = Enumerable.Range(1, truth.Frames - 2).Count(i => truth.FrameRows[i].RiseCm > 4 && truth.FrameRows[i].RiseCm > truth.FrameRows[i - 1].RiseCm && truth.FrameRows[i].RiseCm >= truth.FrameRows[i + 1].RiseCm);
        Assert.InRange(tops - truth.Strides.Count, 0, 2);
    }

    [Theory, MemberData(nameof(Courses))]
    public void ChangeOfGait_HasNoJump(Gait first, Gait second, Gait third)
    {
        var rows = TruthOfARideTests.TruthOf(Course(first, second, third)).FrameRows;
        var (ride, stage) = ConditionTruthTests.RideOf(Course(first, second, third));
        for (var i = 1; i < rows.Count; i++)
        {
            foreach (var name in FrameTruth.PointNames)
            {
                var step = rows[i][name].Metres!.Value - rows[i - 1][name].Metres!.Value;
                // 0.01 s at no more than 1.6 m/s within the rider's frame.
                Assert.True(step.Length < 0.016, $"{name} jumps {100 * step.Length:F1} cm at {rows[i].TimeSeconds:F2} s");
            }

            var (a, b) = (stage.At(ride.At(rows[i - 1].TimeSeconds)), stage.At(ride.At(rows[i].TimeSeconds)));
            Assert.InRange(Math.Sqrt(Math.Pow(b.X - a.X, 2) + Math.Pow(b.Depth - a.Depth, 2)), 0, 0.07);
        }
    }

    [Fact]
    public void ChangedLeathers_ShowInTheThigh()
    {
        var script = Course(Gait.RisingTrot, Gait.Walk, Gait.RisingTrot) with { ThighSitDeg = 40, StirrupChange = new(4.5, 52) };
        var truth = TruthOfARideTests.TruthOf(script);
        Assert.Equal([4.5], truth.StirrupChanges);
        double Mean(Func<StrideTruth, bool> which, Func<StrideTruth, double> value) => truth.Strides.Where(which).Average(value);
        Assert.Equal(40, Mean(s => s.NextSitS < 4.5, s => s.ThighSitDeg!.Value), 0.9);
        Assert.Equal(52, Mean(s => s.SitS > 4.5, s => s.ThighSitDeg!.Value), 0.9);
        // From the points in space: the leather hangs shorter under the same bar.
        double LeatherM(FrameTruth r) => (r["bar"].Metres!.Value with { Near = 0 } - r["tread"].Metres!.Value with { Near = 0 }).Length;
        Assert.Equal(truth.LeatherM!.Value, LeatherM(truth.FrameRows[0]), 1e-9);
        Assert.True(LeatherM(truth.FrameRows[0]) - LeatherM(truth.FrameRows[^1]) > 0.05);
    }

    [Fact]
    public void DoubleBounce_IsASitOfTwoBeatsAndChangesTheDiagonal()
    {
        var truth = TruthOfARideTests.TruthOf(Rising with { DoubleBounceAtSeconds = 4, DurationCvPct = 0, StrideHz = 1.25 });
        var at = truth.Strides.ToList().FindIndex(s => s.Fault is not null);
        Assert.Equal(["double-bounce", "double-bounce"], truth.Strides.Where(s => s.Fault is not null).Select(s => s.Fault));
        Assert.Equal(1.5 / 1.25, truth.Strides[at].DurationS, 1e-9);
        Assert.All(truth.Strides.Where((_, i) => i != at), s => Assert.Equal(1 / 1.25, s.DurationS, 1e-9));
        Assert.All(truth.Strides.Zip(truth.Strides.Skip(1)), p => Assert.Equal(p.First.NextSitS, p.Second.SitS, 1e-12));
        // Between top and second sit the seat comes down twice and no further up than the saddle at rest.
        var sitting = truth.FrameRows.Where(r => r.TimeSeconds > truth.Strides[at].NextSitS - 0.5 / 1.25 && r.TimeSeconds < truth.Strides[at].NextSitS).ToArray();
        Assert.All(sitting, r => Assert.InRange(r.RiseCm, -1e-9, 0.45));
        // The trunk goes on at its own beat: its lowest points stay half a stride apart, through the long sit as well.
        var lows = Enumerable.Range(1, truth.Frames - 2).Where(i => truth.FrameRows[i].BounceCm < -3 && truth.FrameRows[i].BounceCm <= truth.FrameRows[i - 1].BounceCm && truth.FrameRows[i].BounceCm < truth.FrameRows[i + 1].BounceCm)
            .Select(i => truth.FrameRows[i].TimeSeconds).ToArray();
        Assert.All(lows.Zip(lows.Skip(1)), p => Assert.Equal(0.4, p.Second - p.First, 0.021));
        Assert.Equal(0, HorsePhaseAtSit(truth.Strides[at].SitS), 0.01);
        Assert.Equal(0.5, HorsePhaseAtSit(truth.Strides[at + 1].SitS), 0.01);

        static double HorsePhaseAtSit(double seconds) => new Ride(Rising with { DoubleBounceAtSeconds = 4, DurationCvPct = 0, StrideHz = 1.25 }).At(seconds + 1e-6).HorsePhase % 1;
    }

    [Fact]
    public void OtherDiagonal_MovesTheLegsAndNothingElse()
    {
        var (ride, other) = (new Ride(Rising), new Ride(Rising with { OtherDiagonal = true }));
        var (a, b) = (ride.At(3.3), other.At(3.3));
        Assert.Equal(a.Pose, b.Pose);
        Assert.Equal(a.Trunk, b.Trunk);
        var half = ride.At(3.3) with { HorsePhase = a.HorsePhase + 0.5 };
        Assert.Equal(HorseLegs.At(Rising, half, fore: true, near: true), HorseLegs.At(other.Script, b, fore: true, near: true));
        Assert.NotEqual(HorseLegs.At(Rising, a, fore: true, near: true), HorseLegs.At(other.Script, b, fore: true, near: true));
    }

    [Fact]
    public async Task UnevenFrames_StandInTheFileAsInTheTruth()
    {
        var script = new ClipScript { Seed = 5, VariableRate = true, FrameRateHz = 30, DurationSeconds = 2, WidthPx = 320, HeightPx = 180, RiderHeightPx = 70 };
        var tools = FfmpegTools.Locate();
        var made = await new StudioRenderer(tools).RenderAsync(script, _folder, "uneven", CancellationToken.None);
        var read = new List<double>();
        var clip = await new ClipProbe(tools, new ProbeSettings()).ProbeAsync(made.ClipPath, CancellationToken.None);
        await foreach (var frame in new FrameReader(tools).ReadAsync(clip, new ReadSettings(), CancellationToken.None))
        {
            using (frame) read.Add(frame.TimeSeconds);
        }

        var truth = TruthFile.Read(made.TruthPath).FrameRows.Select(r => r.TimeSeconds).ToArray();
        Assert.Equal(truth.Length, read.Count);
        Assert.All(truth.Zip(read), p => Assert.Equal(p.First, p.Second, 1.1e-5));
        var gaps = truth.Skip(1).Zip(truth, (b, a) => b - a).ToArray();
        Assert.True(gaps.Max() > 1.5 / 30 && gaps.Min() < 0.97 / 30, "some frames are lost, others early");
        Assert.True(gaps.Min() > 0);
    }

    [Theory]
    [InlineData(30_000 / 1001.0, 240)]
    [InlineData(120, 960)]
    [InlineData(25, 200)]
    public void EvenRate_HasItsFramesAtItsBeat(double rate, int frames)
    {
        var truth = TruthOfARideTests.TruthOf(Rising with { FrameRateHz = rate, DurationSeconds = 8 });
        Assert.Equal(frames, truth.Frames);
        Assert.All(truth.FrameRows, r => Assert.Equal(r.Frame / rate, r.TimeSeconds, 1e-12));
    }
}
