using GaitSeat.Model;
using GaitSeat.Vision.Flow;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

/// <summary>Pictures in planes of brightness and colour difference are seen as the same pictures in RGB are.</summary>
public sealed class PlanesTests
{
    private const int Side = 64;
    private static readonly InputFormat _plain = new(false, false, [1, 1, 1], [0, 0, 0], 90);

    public static TheoryData<string> Spaces => ["bt601", "bt709", "bt2020nc"];

    [Theory]
    [MemberData(nameof(Spaces))]
    public void Crop_IsTheOneOfTheRgbPicture(string space)
    {
        using var rgb = new Frame(0, 0, Side, Side);
        using var planes = new Frame(0, 0, Side, Side, ColourMatrix.Named(space));
        Paint(rgb, planes);
        foreach (var crop in new CropTransform[] { CropTransform.Letterbox(Side, Side, 32), new(30, 40, 40, 0.4, 48), new(60, 60, 30, -0.2, 24), new(32, 32, 60, 1, 40) { Mirrored = true } })
        {
            float[] expected = new float[3 * crop.InputPx * crop.InputPx], actual = new float[expected.Length];
            CropSampler.Fill(rgb, crop, _plain, expected);
            CropSampler.Fill(planes, crop, _plain, actual);
            // Two pixels share a colour difference, and every value is rounded twice.
            for (var i = 0; i < expected.Length; i++) Assert.InRange(actual[i] - expected[i], -6, 6);
            Assert.InRange(expected.Zip(actual, (e, a) => Math.Abs(e - a)).Average(), 0, 1.5);
        }
    }

    [Fact]
    public void White_Black_AndOutside_AreExact()
    {
        using var frame = new Frame(0, 0, 4, 4, ColourMatrix.Bt709);
        frame.Brightness.Fill(235);
        frame.Brightness[0] = 16;
        frame.BlueDifference.Fill(128);
        frame.RedDifference.Fill(128);
        var tensor = new float[3 * 8 * 8];
        CropSampler.Fill(frame, new(4, 4, 8, 0, 8), _plain, tensor);
        Assert.Equal(0, tensor[0], 3);
        Assert.Equal(255, tensor[3], 3);
        Assert.Equal(90, tensor[^1], 3);
    }

    [Theory]
    [InlineData(64)]
    [InlineData(32)]
    public void Grey_IsTheOneOfTheRgbPicture(int workingWidthPx)
    {
        using var rgb = new Frame(0, 0, Side, Side);
        using var planes = new Frame(0, 0, Side, Side, ColourMatrix.Bt601);
        Paint(rgb, planes);
        var reducer = new GreyReducer(Side, Side, workingWidthPx);
        GreyPicture expected = new(reducer.Width, reducer.Height), actual = new(reducer.Width, reducer.Height);
        reducer.Reduce(rgb, expected);
        reducer.Reduce(planes, actual);
        for (var i = 0; i < reducer.Width * reducer.Height; i++) Assert.InRange(actual.Pixels[i] - expected.Pixels[i], -1.1, 1.1);
    }

    [Fact]
    public void Planes_AreNotReadAsRgb()
    {
        using var rgb = new Frame(0, 0, 3, 3);
        using var planes = new Frame(0, 0, 4, 4, ColourMatrix.Bt601);
        Assert.Throws<InvalidOperationException>(() => planes.Rgb.Length);
        Assert.Throws<InvalidOperationException>(() => rgb.Brightness.Length);
        Assert.Throws<ArgumentException>(() => new Frame(0, 0, 3, 4, ColourMatrix.Bt601));
    }

    /// <summary>The same slow change of colours twice; to planes by the definition: Y by shares, Cb and Cr from the distance to blue and red (ITU-R BT.601-7, 2.5.2 and 2.5.3).</summary>
    private static void Paint(Frame rgb, Frame planes)
    {
        var m = planes.Colours!.Value;
        for (var y = 0; y < Side; y++)
        {
            for (var x = 0; x < Side; x++)
            {
                var (r, g, b) = (40 + (2.5 * x), 200 - (2 * y), 60 + x + y);
                (rgb.Rgb[((y * Side) + x) * 3], rgb.Rgb[(((y * Side) + x) * 3) + 1], rgb.Rgb[(((y * Side) + x) * 3) + 2]) = ((byte)Math.Round(r), (byte)g, (byte)b);
                var luma = (m.Red * r) + (m.Green * g) + (m.Blue * b);
                planes.Brightness[(y * Side) + x] = (byte)Math.Round(16 + (219 * luma / 255));
                var at = (y / 2 * (Side / 2)) + (x / 2);
                planes.BlueDifference[at] = (byte)Math.Round(128 + (224 * (b - luma) / (2 * (1 - m.Blue)) / 255));
                planes.RedDifference[at] = (byte)Math.Round(128 + (224 * (r - luma) / (2 * (1 - m.Red)) / 255));
            }
        }
    }
}
