using CsCheck;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class CropTransformTests
{
    private static readonly Gen<CropTransform> AnyCrop =
        Gen.Select(Gen.Double[-500, 2500], Gen.Double[-500, 2500], Gen.Double[20, 2000], Gen.Double[-Math.PI, Math.PI], Gen.Int[32, 512], Gen.Bool)
            .Select((x, y, side, angle, input, mirrored) => new CropTransform(x, y, side, angle, input, mirrored));

    [Fact]
    public void PictureToInputAndBack_IsTheSamePoint() =>
        Gen.Select(AnyCrop, Gen.Double[-100, 2000], Gen.Double[-100, 2000]).Sample((crop, x, y) =>
        {
            var input = crop.ToInput(x, y);
            var back = crop.ToPicture(input.X, input.Y);
            return Math.Abs(back.X - x) < 1e-6 && Math.Abs(back.Y - y) < 1e-6;
        }, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void AnyCrop_KeepsProportions() =>
        Gen.Select(AnyCrop, Gen.Double[0, 256], Gen.Double[0, 256], Gen.Double[0, 256], Gen.Double[0, 256]).Sample((crop, a, b, c, d) =>
        {
            var inPicture = crop.ToPicture(a, b).DistanceTo(crop.ToPicture(c, d));
            return Math.Abs(inPicture - crop.Scale * Math.Sqrt((a - c) * (a - c) + (b - d) * (b - d))) < 1e-6;
        }, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Letterbox_WidePicture_CentresItBetweenBars()
    {
        var crop = CropTransform.Letterbox(1280, 720, 416);
        var topLeft = crop.ToInput(0, 0);
        var lowRight = crop.ToInput(1280, 720);
        Assert.Equal(0, topLeft.X, 9);
        Assert.Equal(416, lowRight.X, 9);
        Assert.Equal((416 - 720 * 416 / 1280.0) / 2, topLeft.Y, 9);
        Assert.Equal(416 - topLeft.Y, lowRight.Y, 9);
    }

    [Fact]
    public void QuarterTurn_PutsUpOfTheInputToTheRight()
    {
        var crop = new CropTransform(100, 100, 256, Math.PI / 2, 256);
        var up = crop.ToPicture(128, 28);
        Assert.Equal(200, up.X, 9);
        Assert.Equal(100, up.Y, 9);
    }

    [Fact]
    public void Mirrored_TurnsLeftAndRightOfTheSquareRoundItsMiddle() =>
        Gen.Select(AnyCrop, Gen.Double[0, 256], Gen.Double[0, 256]).Sample((crop, u, v) =>
            crop.ToPicture(u, v).DistanceTo((crop with { Mirrored = !crop.Mirrored }).ToPicture(crop.InputPx - u, v)) < 1e-6, seed: "0N0XIzNsQ0O2");
}
