using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>Trunk and camera told apart in a made-up ride whose motions are known.</summary>
public sealed class RideTests
{
    private const int Frames = 24;

    public static TheoryData<string> Rides => [.. Known.Keys];

    private static Dictionary<string, RideScene> Known { get; } = new()
    {
        ["pan"] = new(),
        ["pan, no horse box"] = new() { TellHorse = false },
        ["pan, hints off by a tenth"] = new() { HintError = 0.1, TellHorse = false },
        ["camera stands, horse passes"] = new() { PanPx = 0, TravelPx = 9, StartX = 150 },
        ["smooth coat: only the cloth's edges show"] = new() { CoatGrey = 0 },
        ["camera stands and horse stands"] = new() { PanPx = 0, TravelPx = 0, BouncePx = 0 },
    };

    /// <summary>Each ride is painted and followed once, for all that is asked of it.</summary>
    private static Dictionary<string, Lazy<List<FlowStep>>> Followed { get; } =
        Known.ToDictionary(k => k.Key, k => new Lazy<List<FlowStep>>(() => Follow(k.Value)));

    [Theory]
    [MemberData(nameof(Rides))]
    public void TrunkAndSurroundings_AreBothRecovered(string ride)
    {
        var scene = Known[ride];

        var steps = Followed[ride].Value;

        Assert.DoesNotContain(steps, s => s.Cut);
        Assert.DoesNotContain(steps.Skip(1), s => s.Trunk.IsMissing || s.Surroundings.IsMissing);
        Assert.InRange(Rms(steps, i => steps[i].Surroundings.XPx - scene.PanPx), 0, 0.05);
        Assert.InRange(Rms(steps, i => steps[i].Surroundings.YPx), 0, 0.05);
        Assert.InRange(Rms(steps, i => steps[i].Trunk.XPx - (scene.SeatAt(i).X - scene.SeatAt(i - 1).X)), 0, 0.12);
        Assert.InRange(Rms(steps, i => steps[i].Trunk.YPx - (scene.SeatAt(i).Y - scene.SeatAt(i - 1).Y)), 0, 0.12);
    }

    [Theory]
    [InlineData("pan")]
    [InlineData("smooth coat: only the cloth's edges show")]
    public void TrunkPathSummed_DriftsLessThanHalfAPixelInTwoBounces(string ride)
    {
        var scene = Known[ride];

        var path = Followed[ride].Value.Sum(s => s.Trunk.YPx);

        Assert.Equal(scene.SeatAt(Frames - 1).Y - scene.SeatAt(0).Y, path, 0.5);
    }

    [Fact]
    public void SameFramesTwice_StepsAreTheSameToTheLastBit()
    {
        const string ride = "pan, hints off by a tenth";

        Assert.Equal(Followed[ride].Value, Follow(Known[ride]));
    }

    [Fact]
    public void Collected_KeepsEachStepAtItsFrame()
    {
        List<FlowStep> steps =
        [
            new(false, MotionStep.Still, MotionStep.Still),
            new(false, new(1, 2, 0.1, 1.2, 30, 0.3), MotionStep.NotFitted(4)),
            new(true, MotionStep.Still, MotionStep.Still),
        ];

        var (trunk, surroundings, cuts) = PatchMotions.Collect(steps);

        Assert.Equal([false, false, true], cuts);
        Assert.Equal([0, 1, 0], trunk.XPx);
        Assert.Equal([0, 2, 0], trunk.YPx);
        Assert.Equal([0, 0.1, 0], trunk.RotationRad);
        Assert.Equal([1, 1.2, 1], trunk.Zoom);
        Assert.Equal([0, 30, 0], trunk.Points);
        Assert.Equal([0, 0.3, 0], trunk.ResidualPx);
        Assert.Equal([0, double.NaN, 0], surroundings.YPx);
        Assert.Equal([0, 4, 0], surroundings.Points);
    }

    private static List<FlowStep> Follow(RideScene scene)
    {
        var flow = new PatchFlow(new FlowSettings());
        var steps = new List<FlowStep>();
        for (var i = 0; i < Frames; i++)
        {
            using var frame = scene.Paint(i);
            steps.Add(flow.Next(frame, scene.Hints(i)));
        }

        return steps;
    }

    private static double Rms(List<FlowStep> steps, Func<int, double> error) =>
        Math.Sqrt(Enumerable.Range(1, steps.Count - 1).Average(i => error(i) * error(i)));
}
