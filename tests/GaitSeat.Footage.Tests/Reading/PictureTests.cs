using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

public sealed class PictureTests(MadeClips clips)
{
    private async Task<(ClipInfo Clip, byte[] Rgb, int Width, int Height)> FirstAsync(string path, ReadSettings? settings = null)
    {
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, settings ?? new(), CancellationToken.None))
        {
            using (frame) return (clip, frame.Rgb.ToArray(), frame.WidthPx, frame.HeightPx);
        }

        throw new InvalidOperationException("No frame.");
    }

    [Theory]
    [InlineData(0, 64, 48, 16, 12)]
    [InlineData(90, 48, 64, 36, 16)]
    [InlineData(180, 64, 48, 48, 36)]
    [InlineData(270, 48, 64, 12, 48)]
    public async Task DisplayRotation_IsApplied(int degrees, int width, int height, int whiteX, int whiteY)
    {
        var (clip, rgb, w, h) = await FirstAsync(await clips.TurnedAsync(degrees));
        Assert.Equal((degrees, width, height), (clip.RotationDegrees, clip.WidthPx, clip.HeightPx));
        Assert.Equal((width, height), (w, h));
        for (var y = height / 4; y < height; y += height / 2)
        {
            for (var x = width / 4; x < width; x += width / 2)
                Assert.Equal(x == whiteX && y == whiteY, rgb[(y * w + x) * 3] > 127);
        }
    }

    [Theory]
    [InlineData(4, 3, 96, 54, 128, 54)]
    [InlineData(16, 15, 720, 576, 768, 576)]
    [InlineData(8, 9, 720, 480, 640, 480)]
    public async Task SampleAspect_GivesSquarePixels(int num, int den, int codedWidth, int codedHeight, int width, int height)
    {
        var path = await clips.ByFfmpegAsync($"sar{num}.mp4", $"-f lavfi -i color=black:s={codedWidth}x{codedHeight}:r=25:d=0.2,"
            + $"drawbox=x=0:y=0:w={codedWidth / 2}:h={codedHeight}:color=white:t=fill,setsar={num}/{den} {Clips.X264}");
        var (clip, rgb, w, h) = await FirstAsync(path);
        Assert.Equal((width, height), (clip.WidthPx, clip.HeightPx));
        Assert.Equal((width, height), (w, h));
        Assert.True(rgb[(width / 2 - 6) * 3] > 127);
        Assert.True(rgb[(width / 2 + 6) * 3] < 127);
    }

    [Theory]
    [InlineData(1920, 1080, 1280, 1280, 720)]
    [InlineData(1080, 1920, 1280, 720, 1280)]
    [InlineData(640, 360, 1280, 640, 360)]
    [InlineData(641, 361, 1280, 640, 360)]
    [InlineData(1280, 720, 1280, 1280, 720)]
    [InlineData(7680, 4320, 1280, 1280, 720)]
    [InlineData(3000, 2, 1280, 1280, 2)]
    [InlineData(1, 1, 1280, 2, 2)]
    public void AnalysisSize_FitsTheLongSideAndIsEven(int width, int height, int limit, int expectedWidth, int expectedHeight)
    {
        var clip = new ClipInfo("x", 1, width, height, 25, "h264", "yuv420p", 0, false, new("mov", 0, 1, 12800, 0, "", ColourMatrix.Bt601));
        Assert.Equal((expectedWidth, expectedHeight), FrameReader.AnalysisSize(clip, new ReadSettings { MaxSidePx = limit }));
    }

    [Fact]
    public async Task Pixels_AreThoseOfFfmpegsOwnRawOutput()
    {
        var path = await clips.ByFfmpegAsync("scene.mp4", "-f lavfi -i testsrc2=s=320x180:r=25:d=0.4 -c:v libx264 -preset ultrafast -pix_fmt yuv420p");
        var (_, rgb, _, _) = await FirstAsync(path);
        var raw = await clips.RunAsync("-i", path, "-frames:v", "1", "-vf", "scale=flags=bicubic,format=rgb24", "-f", "rawvideo", "-");
        Assert.Equal(raw, rgb);
    }

    [Fact]
    public async Task Interlaced_IsDeinterlacedFrameByFrame()
    {
        var path = await clips.InterlacedAsync();
        var raw = await clips.RunAsync("-i", path, "-vf", "format=rgb24", "-f", "rawvideo", "-");
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        Assert.True(clip.Interlaced);

        var report = new ReadReport();
        List<double> times = [];
        double comb = 0;
        await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), report, CancellationToken.None))
        {
            using (frame)
            {
                times.Add(frame.TimeSeconds);
                if (frame.Index == 10) comb = Comb(frame.Rgb, frame.WidthPx, frame.HeightPx);
            }
        }

        Assert.Equal(Enumerable.Range(0, 25).Select(n => n / 25.0), times);
        Assert.Contains(report.Remarks, r => r.StartsWith("Interlaced", StringComparison.Ordinal));
        var before = Comb(raw.AsSpan(10 * 320 * 64 * 3, 320 * 64 * 3), 320, 64);
        Assert.True(before > 3, $"The clip itself must be combed, its measure is {before}.");
        Assert.True(comb < before / 10, $"Comb {comb}, before {before}.");
    }

    /// <summary>Mean over the picture of how far a row stands out from the mean of the rows above and below.</summary>
    private static double Comb(ReadOnlySpan<byte> rgb, int width, int height)
    {
        double sum = 0;
        for (var y = 1; y < height - 1; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var at = (y * width + x) * 3;
                sum += Math.Abs(rgb[at] - (rgb[at - width * 3] + rgb[at + width * 3]) / 2.0);
            }
        }

        return sum / (width * (height - 2));
    }

    [Theory]
    [InlineData("hevc10.mp4", "libx265", "-preset ultrafast -x265-params log-level=none:qp=10 -pix_fmt yuv420p10le -tag:v hvc1", "hevc", "yuv420p10le")]
    [InlineData("vp9.webm", "libvpx-vp9", "-deadline realtime -cpu-used 8 -crf 10 -b:v 0 -pix_fmt yuv420p", "vp9", "yuv420p")]
    [InlineData("av1.mkv", "libaom-av1", "-cpu-used 8 -usage realtime -crf 10 -b:v 0 -pix_fmt yuv420p", "av1", "yuv420p")]
    [InlineData("prores.mov", "prores_ks", "-pix_fmt yuv422p10le", "prores", "yuv422p10le")]
    [InlineData("mjpeg.avi", "mjpeg", "-q:v 2 -pix_fmt yuvj420p", "mjpeg", "yuvj420p")]
    [InlineData("mpeg2.mpg", "mpeg2video", "-q:v 2 -pix_fmt yuv420p", "mpeg2video", "yuv420p")]
    public async Task OtherCodec_IsRead(string name, string encoder, string options, string codec, string pixelFormat)
    {
        await clips.NeedEncoderAsync(encoder);
        var path = await clips.ByFfmpegAsync(name, $"{Barcode.Source(25, 25)} -c:v {encoder} {options}");
        var reading = await Reading.OfAsync(clips, path);
        Assert.Equal((codec, pixelFormat), (reading.Clip.Codec, reading.Clip.PixelFormat));
        reading.ShowsInOrder(Enumerable.Range(0, 25));
        reading.TimesAre(Enumerable.Range(0, 25).Select(n => n / 25.0), 0.001);
    }

    [Fact]
    public async Task HighDynamicRange_IsReadAndSaid()
    {
        await clips.NeedEncoderAsync("libx265");
        var path = await clips.ByFfmpegAsync("hlg.mp4", $"{Barcode.Source(25, 5)} -c:v libx265 -preset ultrafast -x265-params log-level=none:qp=10:transfer=arib-std-b67 -pix_fmt yuv420p10le -color_trc arib-std-b67");
        var reading = await Reading.OfAsync(clips, path);
        reading.ShowsInOrder(Enumerable.Range(0, 5));
        Assert.Contains(reading.Report.Remarks, r => r.Contains("arib-std-b67", StringComparison.Ordinal));
    }

    [Fact]
    public async Task EightK_IsScaledDown()
    {
        var path = await clips.ByFfmpegAsync("8k.mp4", "-f lavfi -i color=white:s=7680x4320:r=25,trim=end_frame=2 -c:v libx264 -preset ultrafast -pix_fmt yuv420p");
        var (clip, rgb, w, h) = await FirstAsync(path);
        Assert.Equal((7680, 4320), (clip.WidthPx, clip.HeightPx));
        Assert.Equal((1280, 720), (w, h));
        Assert.True(rgb[0] > 250 && rgb[^1] > 250);
    }
}
