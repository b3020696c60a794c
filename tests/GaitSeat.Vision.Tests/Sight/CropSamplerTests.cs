using CsCheck;
using GaitSeat.Model;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class CropSamplerTests
{
    private static readonly InputFormat Plain = new(false, false, [1, 1, 1], [0, 0, 0], 0);

    private static Frame Made(int width, int height, Func<int, int, (byte R, byte G, byte B)> colour)
    {
        var frame = new Frame(0, 0, width, height);
        for (var y = 0; y < height; y++)
            for (var x = 0; x < width; x++)
                (frame.Rgb[(y * width + x) * 3], frame.Rgb[(y * width + x) * 3 + 1], frame.Rgb[(y * width + x) * 3 + 2]) = colour(x, y);
        return frame;
    }

    [Fact]
    public void CropOfItsOwnSize_GivesThePixelsBack()
    {
        using var frame = Made(32, 32, (x, y) => ((byte)(x * 7), (byte)(y * 5), (byte)(x ^ y)));
        var tensor = new float[3 * 32 * 32];
        CropSampler.Fill(frame, CropTransform.Letterbox(32, 32, 32), Plain, tensor);
        for (var i = 0; i < tensor.Length; i++) Assert.Equal(frame.Rgb[i], tensor[i], 3);
    }

    [Fact]
    public void BlueFirstPlanarWithGain_OrdersAndScalesEachPlane()
    {
        using var frame = Made(16, 16, (_, _) => (10, 20, 30));
        var tensor = new float[3 * 16 * 16];
        CropSampler.Fill(frame, CropTransform.Letterbox(16, 16, 16), new(true, true, [2, 3, 4], [1, 1, 1], 0), tensor);
        Assert.All(tensor[..256], v => Assert.Equal(61, v, 3));
        Assert.All(tensor[256..512], v => Assert.Equal(61, v, 3));
        Assert.All(tensor[512..], v => Assert.Equal(41, v, 3));
    }

    [Fact]
    public void FineStripes_ShrunkManyTimes_AverageToGrey()
    {
        using var frame = Made(400, 400, (x, _) => x % 2 == 0 ? ((byte)0, (byte)0, (byte)0) : ((byte)200, (byte)200, (byte)200));
        var tensor = new float[3 * 32 * 32];
        CropSampler.Fill(frame, CropTransform.Letterbox(400, 400, 32), Plain, tensor);
        Assert.All(tensor, v => Assert.InRange(v, 85, 115));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void MirroredCrop_IsTheCropMirrored(double angleRad)
    {
        using var frame = Made(64, 48, (x, y) => ((byte)(x * 3 + y), (byte)(y * 5), (byte)(x * y)));
        var crop = new CropTransform(30, 22, 25, angleRad, 24);
        float[] plain = new float[3 * 24 * 24], mirrored = new float[3 * 24 * 24];
        CropSampler.Fill(frame, crop, Plain, plain);
        CropSampler.Fill(frame, crop with { Mirrored = true }, Plain, mirrored);
        for (var row = 0; row < 24; row++)
            for (var column = 0; column < 24; column++)
                for (var c = 0; c < 3; c++)
                    Assert.Equal(plain[(row * 24 + column) * 3 + c], mirrored[(row * 24 + 23 - column) * 3 + c], 2);
    }

    [Fact]
    public void OutsideThePicture_HasTheGivenValue()
    {
        using var frame = Made(20, 20, (_, _) => (200, 200, 200));
        var tensor = new float[3 * 20 * 20];
        CropSampler.Fill(frame, new CropTransform(500, 500, 20, 0, 20), Plain with { Outside = 7 }, tensor);
        Assert.All(tensor, v => Assert.Equal(7, v, 3));
    }

    // A picture whose value is its own coordinate shows where each input pixel was taken from, half pixels included.
    [Fact]
    public void RampPicture_AnyCropInside_ReadsThePlaceThatTheTransformSays()
    {
        using var frame = Made(250, 250, (x, y) => ((byte)x, (byte)y, 0));
        Gen.Select(Gen.Double[110, 140], Gen.Double[110, 140], Gen.Double[20, 140], Gen.Double[-3, 3], Gen.Int[0, 31], Gen.Int[0, 31])
            .Sample((x, y, side, angle, column, row) =>
            {
                var crop = new CropTransform(x, y, side, angle, 32);
                var tensor = new float[3 * 32 * 32];
                CropSampler.Fill(frame, crop, Plain, tensor);
                var p = crop.ToPicture(column + 0.5, row + 0.5);
                var at = (row * 32 + column) * 3;
                return Math.Abs(tensor[at] + 0.5 - p.X) < 0.01 && Math.Abs(tensor[at + 1] + 0.5 - p.Y) < 0.01;
            }, iter: 60, seed: "0N0XIzNsQ0O2");
    }
}
