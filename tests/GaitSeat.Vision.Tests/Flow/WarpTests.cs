using CsCheck;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>A textured picture moved by a known amount: the motion comes back. Nothing in it but surroundings.</summary>
public sealed class WarpTests
{
    private const int Width = 640;
    private const int Height = 360;

    private static readonly Texture Fine = new(1, 4, 60);
    private static readonly Texture Coarse = new(2, 17, 120);

    [Theory]
    [InlineData(0.3, -0.7)]
    [InlineData(5.25, 3.5)]
    [InlineData(-19.6, 0.4)]
    [InlineData(38, -12)]
    [InlineData(0.05, 0.05)]
    public void PictureShifted_ShiftIsRecovered(double dx, double dy)
    {
        var step = Follow(dx, dy, 0, 1);

        Assert.Equal(dx, step.XPx, 0.03);
        Assert.Equal(dy, step.YPx, 0.03);
        Assert.Equal(0, step.RotationRad, 2e-4);
        Assert.Equal(1, step.Zoom, 2e-4);
        Assert.InRange(step.ResidualPx, 0, 0.1);
    }

    [Theory]
    [InlineData(0.01, 1)]
    [InlineData(-0.03, 1)]
    [InlineData(0, 1.01)]
    [InlineData(0.02, 0.98)]
    public void PictureTurnedAndZoomed_BothAreRecovered(double rotation, double zoom)
    {
        var step = Follow(2.5, -1.5, rotation, zoom);

        Assert.Equal(2.5, step.XPx, 0.05);
        Assert.Equal(-1.5, step.YPx, 0.05);
        Assert.Equal(rotation, step.RotationRad, 3e-4);
        Assert.Equal(zoom, step.Zoom, 3e-4);
    }

    [Fact]
    public void SamePictureTwice_MotionIsExactlyNone()
    {
        var step = Follow(0, 0, 0, 1);

        Assert.Equal(0, step.XPx, 1e-6);
        Assert.Equal(0, step.YPx, 1e-6);
        Assert.Equal(0, step.RotationRad, 1e-9);
        Assert.Equal(1, step.Zoom, 1e-9);
    }

    /// <summary>A fast pan is 40 px a frame at 1280 px, 20 px here.</summary>
    [Fact]
    public void AnyShiftUpToTwiceAFastPan_IsRecovered() =>
        Gen.Select(Gen.Double[-40, 40], Gen.Double[-20, 20]).Sample(
            (dx, dy) =>
            {
                var step = Follow(dx, dy, 0, 1);
                return Math.Abs(step.XPx - dx) < 0.05 && Math.Abs(step.YPx - dy) < 0.05;
            },
            seed: "0N0XIzNsQ0O2",
            iter: 8,
            threads: 1);

    [Fact]
    public void PictureWiderThanTheWorkingWidth_MotionIsInPxOfTheGivenPicture()
    {
        var step = Follow(6.5, -3.25, 0, 1, new FlowSettings { WorkingWidthPx = 320 });

        Assert.Equal(6.5, step.XPx, 0.08);
        Assert.Equal(-3.25, step.YPx, 0.08);
    }

    [Fact]
    public void ExposureChangesWithTheMotion_MotionIsRecovered()
    {
        var flow = new PatchFlow(new FlowSettings());
        using var first = Pictures.Paint(0, Width, Height, Scene);
        using var second = Pictures.Paint(1, Width, Height, (x, y) => 18 + (1.06 * Scene(x - 4.5, y + 2.5)));
        flow.Next(first, FlowHints.None);

        var step = flow.Next(second, FlowHints.None);

        Assert.False(step.Cut);
        Assert.Equal(4.5, step.Surroundings.XPx, 0.1);
        Assert.Equal(-2.5, step.Surroundings.YPx, 0.1);
    }

    private static double Scene(double x, double y) => 120 + Fine.At(x, y) + Coarse.At(x, y);

    /// <summary>Follows one step about the middle of the picture, where motions are told without a rider.</summary>
    private static MotionStep Follow(double dx, double dy, double rotation, double zoom, FlowSettings? settings = null)
    {
        var flow = new PatchFlow(settings ?? new FlowSettings());
        var (cos, sin) = (Math.Cos(rotation) / zoom, Math.Sin(rotation) / zoom);
        using var first = Pictures.Paint(0, Width, Height, Scene);
        using var second = Pictures.Paint(1, Width, Height, (x, y) =>
        {
            var (fromX, fromY) = (x - (Width / 2) - dx, y - (Height / 2) - dy);
            return Scene((Width / 2) + (cos * fromX) + (sin * fromY), (Height / 2) - (sin * fromX) + (cos * fromY));
        });
        Assert.Equal(new FlowStep(false, MotionStep.Still, MotionStep.Still), flow.Next(first, FlowHints.None));
        return flow.Next(second, FlowHints.None).Surroundings;
    }
}
