using GaitSeat.Model;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

public sealed class CutTests
{
    private const int Width = 640;
    private const int Height = 360;

    private static readonly Texture Fine = new(3, 5, 50);
    private static readonly Texture Coarse = new(4, 45, 140);
    private static readonly Texture Elsewhere = new(5, 45, 140);

    [Fact]
    public void AnotherScene_IsACutAndStepsAreStill()
    {
        var steps = Follow(Scene(0), Scene(-4), OtherScene(0), OtherScene(3));

        Assert.Equal([false, false, true, false], steps.Select(s => s.Cut));
        Assert.Equal(new FlowStep(true, MotionStep.Still, MotionStep.Still), steps[2]);
        Assert.Equal(3, steps[3].Surroundings.XPx, 0.05);
    }

    [Fact]
    public void SkyOverGroundInBothScenes_IsStillACut()
    {
        var steps = Follow(WithSky(Scene(0)), WithSky(OtherScene(0)));

        Assert.True(steps[1].Cut);
    }

    [Theory]
    [InlineData(45)]
    [InlineData(-70)]
    public void FastPan_IsNoCutAndIsFollowed(double pan)
    {
        var steps = Follow(Scene(0), Scene(pan / 2), Scene(pan * 1.5));

        Assert.DoesNotContain(steps, s => s.Cut);
        Assert.Equal(pan, steps[2].Surroundings.XPx, 0.1);
    }

    [Fact]
    public void WhipPanBlurredPastFollowing_IsNoCut()
    {
        var steps = Follow(Scene(0), Blurred(60, 110), Blurred(170, 110));

        Assert.DoesNotContain(steps, s => s.Cut);
    }

    [Fact]
    public void Flash_IsNoCut()
    {
        var steps = Follow(Scene(0), (x, y) => 60 + Scene(0)(x, y), Scene(0));

        Assert.DoesNotContain(steps, s => s.Cut);
    }

    [Fact]
    public void BlackThenPicture_IsACut()
    {
        var steps = Follow((_, _) => 0, Scene(0));

        Assert.True(steps[1].Cut);
    }

    private static Func<double, double, double> Scene(double pan) => (x, y) => 120 + Fine.At(x - pan, y) + Coarse.At(x - pan, y);

    private static Func<double, double, double> OtherScene(double pan) => (x, y) => 120 + Fine.At(x - pan + 999, y) + Elsewhere.At(x - pan, y);

    private static Func<double, double, double> WithSky(Func<double, double, double> scene) => (x, y) => y < 120 ? 230 : (scene(x, y) * 0.7) + 20;

    private static Func<double, double, double> Blurred(double pan, double length) => (x, y) =>
    {
        var sum = 0.0;
        for (var i = 0; i < 8; i++) sum += Scene(pan + (length * ((i / 8.0) - 0.5)))(x, y);
        return sum / 8;
    };

    private static List<FlowStep> Follow(params Func<double, double, double>[] pictures)
    {
        var flow = new PatchFlow(new FlowSettings());
        var steps = new List<FlowStep>();
        foreach (var picture in pictures)
        {
            using var frame = Pictures.Paint(steps.Count, Width, Height, picture);
            steps.Add(flow.Next(frame, FlowHints.None));
        }

        return steps;
    }
}
