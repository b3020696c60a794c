using GaitSeat.Model;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

public sealed class NothingToFollowTests
{
    private static readonly FlowHints RiderInTheMiddle = new(new BoxPx(280, 60, 60, 160), null, null);

    [Fact]
    public void FlatPicture_StepsAreMissing()
    {
        var step = Second((_, _) => 90, (_, _) => 92);

        Assert.False(step.Cut);
        AssertMissing(step.Trunk);
        AssertMissing(step.Surroundings);
    }

    [Fact]
    public void NoiseUnrelatedBetweenFrames_StepsAreMissing()
    {
        var step = Second((x, y) => 100 + Noise(x, y, 1), (x, y) => 100 + Noise(x, y, 2));

        Assert.False(step.Cut);
        AssertMissing(step.Trunk);
        AssertMissing(step.Surroundings);
    }

    [Fact]
    public void NoRiderKnown_TrunkIsMissingAndSurroundingsAreNot()
    {
        var texture = new Texture(6, 6, 90);

        var step = Second((x, y) => 120 + texture.At(x, y), (x, y) => 120 + texture.At(x - 1, y), FlowHints.None);

        AssertMissing(step.Trunk);
        Assert.Equal(1, step.Surroundings.XPx, 0.03);
    }

    [Fact]
    public void RiderOutsideThePicture_TrunkIsMissing()
    {
        var texture = new Texture(6, 6, 90);

        var step = Second((x, y) => 120 + texture.At(x, y), (x, y) => 120 + texture.At(x - 1, y), new FlowHints(new BoxPx(-400, 60, 60, 160), null, null));

        AssertMissing(step.Trunk);
        Assert.False(step.Surroundings.IsMissing);
    }

    [Fact]
    public void PictureSmallerThanAWindow_StepsAreMissing()
    {
        var flow = new PatchFlow(new FlowSettings());
        using var first = Pictures.Paint(0, 12, 9, (x, y) => (x * 37) % 200);
        using var second = Pictures.Paint(1, 12, 9, (x, y) => (x * 37) % 200);
        flow.Next(first, RiderInTheMiddle);

        AssertMissing(flow.Next(second, RiderInTheMiddle).Surroundings);
    }

    [Fact]
    public void SizeChangesBetweenFrames_IsRefusedWithBothSizes()
    {
        var flow = new PatchFlow(new FlowSettings());
        using var first = Pictures.Paint(0, 320, 180, (_, _) => 0);
        using var second = Pictures.Paint(1, 180, 320, (_, _) => 0);
        flow.Next(first, FlowHints.None);

        var thrown = Assert.Throws<ArgumentException>(() => flow.Next(second, FlowHints.None));

        Assert.Contains("180x320", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("320x180", thrown.Message, StringComparison.Ordinal);
    }

    /// <summary>-40..40, without any link between neighbours or seeds (the mixing step of MurmurHash3).</summary>
    private static double Noise(double x, double y, uint seed)
    {
        var h = unchecked((((uint)x * 73856093u) ^ ((uint)y * 19349663u)) + (seed * 83492791u));
        h = unchecked((h ^ (h >> 16)) * 0x85ebca6bu);
        h = unchecked((h ^ (h >> 13)) * 0xc2b2ae35u);
        return ((h ^ (h >> 16)) % 81) - 40.0;
    }

    private static FlowStep Second(Func<double, double, double> before, Func<double, double, double> after, FlowHints? hints = null)
    {
        var flow = new PatchFlow(new FlowSettings());
        using var first = Pictures.Paint(0, 640, 360, before);
        using var second = Pictures.Paint(1, 640, 360, after);
        flow.Next(first, hints ?? RiderInTheMiddle);
        return flow.Next(second, hints ?? RiderInTheMiddle);
    }

    private static void AssertMissing(MotionStep step)
    {
        Assert.True(step.IsMissing, $"a motion was made up: {step}");
        Assert.True(double.IsNaN(step.YPx) && double.IsNaN(step.RotationRad) && double.IsNaN(step.Zoom) && double.IsNaN(step.ResidualPx));
    }
}
