using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Tests.Pictures;

public sealed class OverlayMakerTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("overlay").FullName;
    private readonly FfmpegTools _tools = FfmpegTools.Locate();

    /// <summary>Sightings at 640 x 360, pictures read at 320 x 180: the marks must be drawn at half their place, and the stills be of the instants asked for.</summary>
    [Fact]
    public async Task ClipReadSmaller_VideoAndStillsWithMarksInPlace()
    {
        var clip = await MakeClipAsync();
        var made = await Maker().MakeAsync(clip, new() { MaxSidePx = 320 }, Sightings(), Motion(Scenes.Strides), _folder, "ride", new() { ShowStrip = false }, null, default);

        Assert.Equal(Path.Combine(_folder, "ride-overlay.mp4"), made.VideoPath);
        var video = await new ClipProbe(_tools, new()).ProbeAsync(made.VideoPath, default);
        Assert.Equal((320, 180, "h264"), (video.WidthPx, video.HeightPx, video.Codec));
        Assert.Equal(Scenes.Frames / Scenes.RateHz, video.DurationSeconds, 0.05);
        using var sit = SKBitmap.Decode(made.SitStillPath);
        using var top = SKBitmap.Decode(made.TopStillPath);
        Assert.Equal((320, 180), (sit.Width, sit.Height));

        // The hip, orange, at half of (305, 170); the clip itself is grey.
        foreach (var still in (SKBitmap[])[sit, top])
        {
            var hip = still.GetPixel(152, 85);
            Assert.True(hip.Red > 180 && hip.Blue < 110, $"hip is {hip}");
            Assert.InRange(still.GetPixel(40, 40).Red, 120, 136);
        }
    }

    [Fact]
    public async Task NoStrides_VideoWithoutStills()
    {
        var clip = await MakeClipAsync();
        var made = await Maker().MakeAsync(clip, new() { MaxSidePx = 320 }, Sightings(), Motion([]), _folder, "ride", new(), null, default);
        Assert.Null(made.SitStillPath);
        Assert.Null(made.TopStillPath);
        Assert.True(File.Exists(made.VideoPath));
    }

    /// <summary>A helper in the right half for the first second, in the pixels of the sightings; after the rider's own measured time too.</summary>
    [Fact]
    public async Task OtherPerson_HeadIsGoneFromTheVideoWhileTheyAreThere()
    {
        var clip = await MakeClipAsync(Chequers);
        var helper = new BoxPx(440, 100, 80, 240);
        var made = await Maker().MakeAsync(clip, new() { MaxSidePx = 320 }, Sightings(), Motion([]), _folder, "ride", new() { ShowStrip = false },
            t => t < 1 ? [helper] : [], default);

        var video = await new ClipProbe(_tools, new()).ProbeAsync(made.VideoPath, default);
        // Half size: the top of the box, well inside the blurred part, and the body below it.
        BoxPx head = new(222, 52, 36, 24), body = new(222, 110, 36, 40);
        await foreach (var frame in new FrameReader(_tools).ReadAsync(video, new(), default))
        {
            using (frame)
            {
                if (frame.TimeSeconds < 0.9) Assert.InRange(Differences.Variance(frame, head), 0, 60);
                if (frame.TimeSeconds > 1.1) Assert.InRange(Differences.Variance(frame, head), 1500, 20000);
                Assert.InRange(Differences.Variance(frame, body), 1500, 20000);
            }
        }
    }

    // Squares of 16 px: at half size four to the side of a head and more.
    private static byte Chequers(int x, int y) => (byte)(((x / 16) + (y / 16)) % 2 == 0 ? 40 : 200);

    [Fact]
    public async Task Cancelled_NoVideoLeft()
    {
        var clip = await MakeClipAsync();
        using var cancel = new CancellationTokenSource();
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            Maker().MakeAsync(clip, new() { MaxSidePx = 320 }, Sightings(), Motion(Scenes.Strides), _folder, "ride", new(), null, cancel.Token));
        Assert.Equal([clip.Path], Directory.GetFiles(_folder));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private OverlayMaker Maker() => new(new FrameReader(_tools), _tools);

    private async Task<ClipInfo> MakeClipAsync(Func<int, int, byte>? picture = null)
    {
        var path = Path.Combine(_folder, "clip.mp4");
        await using (var encoder = new ClipEncoder(_tools, path, 640, 360, Scenes.RateHz, new() { Preset = EncodePreset.UltraFast }))
        {
            var grey = new byte[640 * 360 * 3];
            for (var i = 0; i < grey.Length; i++) grey[i] = picture?.Invoke(i / 3 % 640, i / 3 / 640) ?? 128;
            for (var i = 0; i < Scenes.Frames; i++) await encoder.WriteAsync(grey, default);
            await encoder.FinishAsync();
        }

        return await new ClipProbe(_tools, new()).ProbeAsync(path, default);
    }

    private static ClipMotion Motion(Stride[] strides) => new([], strides, [], Scenes.Trace());

    private static Sightings Sightings()
    {
        var n = Scenes.Frames;
        var trace = Scenes.Trace();
        var still = new PatchMotion(new double[n], new double[n], new double[n], new double[n], new int[n], new double[n]);
        return new()
        {
            WidthPx = 640, HeightPx = 360, TimeSeconds = trace.TimeSeconds, Rider = [.. Enumerable.Repeat<BoxPx?>(Scenes.Rider, n)], Horse = new BoxPx?[n],
            Facing = [.. Enumerable.Repeat(Facing.Right, n)], Reason = new FrameReason[n], CutBefore = new bool[n],
            Points = trace.Points, Trunk = still, Surroundings = still,
        };
    }
}
