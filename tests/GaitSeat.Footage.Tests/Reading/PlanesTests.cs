using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>Frames in planes: what was coded, without a conversion where none is needed, and limited range whatever the clip has.</summary>
public sealed class PlanesTests(MadeClips clips)
{
    private const string Source = "-f lavfi -i testsrc2=s=320x180:r=25:d=0.4";

    [Fact]
    public async Task Planes_AreTheDecodersOwn()
    {
        var path = await clips.ByFfmpegAsync("planes.mp4", $"{Source} -c:v libx264 -preset ultrafast -pix_fmt yuv420p");
        var raw = await clips.RunAsync("-i", path, "-frames:v", "1", "-f", "rawvideo", "-pix_fmt", "yuv420p", "-");
        var (planes, _) = await FirstAsync(path);
        using (planes) Assert.True(planes.Memory.Span.SequenceEqual(raw));
    }

    [Theory]
    [InlineData("bt601.mp4", "-c:v libx264 -preset ultrafast -qp 5 -pix_fmt yuv420p", 0.299)]
    [InlineData("bt709.mp4", "-vf scale=out_color_matrix=bt709 -c:v libx264 -preset ultrafast -qp 5 -pix_fmt yuv420p -colorspace bt709", 0.2126)]
    [InlineData("full.avi", "-c:v mjpeg -q:v 2 -pix_fmt yuvj420p", 0.299)]
    [InlineData("ten.mov", "-c:v prores_ks -pix_fmt yuv422p10le", 0.299)]
    public async Task Colours_AreThoseOfTheRgbFrame(string name, string coding, float red)
    {
        var path = await clips.ByFfmpegAsync(name, $"{Source} {coding}");
        var (planes, rgb) = await FirstAsync(path);
        using (planes)
        using (rgb)
        {
            Assert.Equal(red, planes.Colours!.Value.Red);
            double sum = 0;
            var counted = 0;
            for (var y = 0; y < rgb.HeightPx; y++)
            {
                for (var x = 0; x < rgb.WidthPx; x++)
                {
                    var at = ((y / 2) * (rgb.WidthPx / 2)) + (x / 2);
                    var (r, b) = RedAndBlue(planes.Colours.Value, planes.Brightness[(y * rgb.WidthPx) + x], planes.BlueDifference[at], planes.RedDifference[at]);
                    sum += Math.Abs(r - rgb.Rgb[((y * rgb.WidthPx) + x) * 3]) + Math.Abs(b - rgb.Rgb[(((y * rgb.WidthPx) + x) * 3) + 2]);
                    counted += 2;
                }
            }

            // Another matrix or range would be off by ten and more; edges of strong colours differ by how half planes are spread.
            Assert.InRange(sum / counted, 0, 3);
        }
    }

    private static (double Red, double Blue) RedAndBlue(ColourMatrix m, byte luma, byte blue, byte red)
    {
        var y = (luma - 16) * 255 / 219.0;
        return (Math.Clamp(y + (2 * (1 - m.Red) * (red - 128) * 255 / 224.0), 0, 255), Math.Clamp(y + (2 * (1 - m.Blue) * (blue - 128) * 255 / 224.0), 0, 255));
    }

    private async Task<(Frame Planes, Frame Rgb)> FirstAsync(string path)
    {
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        return (await ReadOneAsync(clip, FrameColours.Planes), await ReadOneAsync(clip, FrameColours.Rgb));
    }

    private async Task<Frame> ReadOneAsync(ClipInfo clip, FrameColours colours)
    {
        await foreach (var frame in new FrameReader(clips.Tools, colours).ReadAsync(clip, new(), CancellationToken.None)) return frame;
        throw new InvalidOperationException("No frame.");
    }
}
