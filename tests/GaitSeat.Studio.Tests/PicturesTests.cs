using GaitSeat.Footage;
using GaitSeat.Model;

namespace GaitSeat.Studio.Tests;

public sealed class PicturesTests : IDisposable
{
    private static readonly ClipScript Small = new() { Seed = 4, WidthPx = 480, HeightPx = 270, RiderHeightPx = 110, DurationSeconds = 0.4, FrameRateHz = 25 };
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-studio-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(Gait.RisingTrot, CameraWork.Pan, Facing.Left, 0.1)]
    [InlineData(Gait.Canter, CameraWork.Static, Facing.Right, 0)]
    public void SameScript_GivesTheSameBytes(Gait gait, CameraWork camera, Facing facing, double zoom)
    {
        var script = Small with { Gait = gait, Camera = camera, Facing = facing, ZoomChange = zoom };
        Assert.Equal(Draw(script, 3), Draw(script, 3));
    }

    [Fact]
    public void AnotherSeedOrFrame_GivesOtherBytes()
    {
        var drawn = Draw(Small, 3);
        Assert.NotEqual(drawn, Draw(Small, 4));
        Assert.NotEqual(drawn, Draw(Small with { Seed = 5 }, 3));
    }

    [Theory]
    [InlineData(Facing.Left)]
    [InlineData(Facing.Right)]
    public void EveryPoint_LiesOnItsPart(Facing facing)
    {
        // Colours that occur nowhere else tell the part; flat enough to survive shading.
        var look = new Look { Jacket = "#ff00ff", Breeches = "#00ff00", Boots = "#0000ff", Helmet = "#ff0000", Skin = "#00ffff" };
        var script = Small with { WidthPx = 1280, HeightPx = 720, RiderHeightPx = 300, Facing = facing, NoiseSd = 0, Look = look };
        var rgb = Draw(script, 4);
        var row = TruthOfARideTests.TruthOf(script).FrameRows[4];
        AssertColour(rgb, row["shoulder"].Px, r: true, g: false, b: true);
        AssertColour(rgb, row["elbow"].Px, r: true, g: false, b: true);
        AssertColour(rgb, row["knee"].Px, r: false, g: true, b: false);
        AssertColour(rgb, row["ankle"].Px, r: false, g: false, b: true);
    }

    [Fact]
    public async Task Clip_HasTheFramesOfTheScriptAndItsTruthBeside()
    {
        var tools = FfmpegTools.Locate();
        var made = await new StudioRenderer(tools).RenderAsync(Small, _folder, "small", CancellationToken.None);
        Assert.True(new FileInfo(made.ClipPath).Length > 1000);
        Assert.Equal(10, made.Truth.Frames);
        Assert.Equal(made.Truth.Strides, TruthFile.Read(made.TruthPath).Strides);
    }

    [Fact]
    public void ColourThatIsNone_IsRefused() =>
        Assert.Contains("#rrggbb", Assert.Throws<ArgumentException>(() => Draw(Small with { Look = new Look { Coat = "brown" } }, 0)).Message, StringComparison.Ordinal);

    private static byte[] Draw(ClipScript script, int frame)
    {
        var ride = new Ride(script);
        var stage = new Stage(ride);
        var maker = new FrameMaker(ride, stage, new StudioCamera(ride, stage));
        var rgb = new byte[maker.FrameBytes];
        maker.Draw(frame, new Shutter(), rgb);
        return rgb;
    }

    private static void AssertColour(byte[] rgb, PointPx at, bool r, bool g, bool b)
    {
        var i = 3 * ((int)at.Y * 1280 + (int)at.X);
        var brightest = Math.Max(rgb[i], Math.Max(rgb[i + 1], rgb[i + 2]));
        bool[] strong = [rgb[i] > 0.6 * brightest, rgb[i + 1] > 0.6 * brightest, rgb[i + 2] > 0.6 * brightest];
        Assert.Equal<bool>([r, g, b], strong);
    }
}
