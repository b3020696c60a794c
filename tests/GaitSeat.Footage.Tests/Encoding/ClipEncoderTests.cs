using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

public sealed class ClipEncoderTests(MadeClips clips)
{
    private const int Width = 64;
    private const int Height = 48;

    /// <summary>Frame n: the upper half red, the lower left blue, the lower right as bright as n says.</summary>
    private static byte[] Picture(int n)
    {
        var rgb = new byte[Width * Height * 3];
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var (r, g, b) = y < Height / 2 ? (200, 30, 30) : x < Width / 2 ? (30, 30, 200) : (8 * n, 8 * n, 8 * n);
                var at = (y * Width + x) * 3;
                (rgb[at], rgb[at + 1], rgb[at + 2]) = ((byte)r, (byte)g, (byte)b);
            }
        }

        return rgb;
    }

    private async Task<string> EncodeAsync(string path, double rateHz, double[]? times = null)
    {
        await using var encoder = new ClipEncoder(clips.Tools, path, Width, Height, rateHz, new EncodeSettings { Crf = 10 });
        for (var n = 0; n < 30; n++)
        {
            if (times is null) await encoder.WriteAsync(Picture(n), CancellationToken.None);
            else await encoder.WriteAsync(Picture(n), times[n], CancellationToken.None);
        }

        Assert.False(File.Exists(path));
        await encoder.FinishAsync();
        return path;
    }

    private async Task<double[]> ReadBackAsync(string path)
    {
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        Assert.Equal(("h264", "yuv420p", Width, Height), (clip.Codec, clip.PixelFormat, clip.WidthPx, clip.HeightPx));
        List<double> times = [];
        await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new ReadSettings { MaxRateHz = 1000 }, CancellationToken.None))
        {
            using (frame)
            {
                times.Add(frame.TimeSeconds);
                var expected = Picture(frame.Index);
                foreach (var (x, y) in new[] { (16, 12), (48, 12), (16, 36), (48, 36) })
                {
                    for (var c = 0; c < 3; c++)
                    {
                        var at = (y * Width + x) * 3 + c;
                        Assert.InRange(frame.Rgb[at], expected[at] - 8, expected[at] + 8);
                    }
                }
            }
        }

        return [.. times];
    }

    [Theory]
    [InlineData(25)]
    [InlineData(30)]
    [InlineData(60)]
    [InlineData(240)]
    [InlineData(30000 / 1001.0)]
    public async Task ConstantRate_PicturesAndTimesSurvive(double rateHz)
    {
        var path = await EncodeAsync(clips.NewPath("made.mp4"), rateHz);
        var times = await ReadBackAsync(path);
        Assert.Equal(30, times.Length);
        for (var n = 0; n < 30; n++) Assert.Equal(n / rateHz, times[n], 1e-9);
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        Assert.Equal(rateHz, clip.AverageFrameRateHz, 0.01);
        Assert.Equal(30 / rateHz, clip.DurationSeconds, 0.001);
    }

    [Fact]
    public async Task OwnTimes_SurviveToTheTick()
    {
        var wanted = Enumerable.Range(0, 30).Select(n => n * 0.04 + n * n % 7 * 0.003).ToArray();
        var times = await ReadBackAsync(await EncodeAsync(clips.NewPath("own.mp4"), 25, wanted));
        for (var n = 0; n < 30; n++) Assert.Equal(wanted[n], times[n], 0.5 / ClipEncoder.TicksPerSecond + 1e-9);
    }

    [Fact]
    public async Task SameFrames_SameBytes()
    {
        var one = await File.ReadAllBytesAsync(await EncodeAsync(clips.NewPath("a.mp4"), 30));
        var other = await File.ReadAllBytesAsync(await EncodeAsync(clips.NewPath("b.mp4"), 30));
        Assert.Equal(one, other);
    }

    [Fact]
    public async Task File_HasItsIndexInFrontAndNoMetadata()
    {
        var file = await File.ReadAllBytesAsync(await EncodeAsync(clips.NewPath("clean.mp4"), 30));
        Assert.True(Mp4Surgery.Find(file, "moov") < Mp4Surgery.Find(file, "mdat"));
        var text = Encoding.Latin1.GetString(file);
        foreach (var trace in (string[])["x264", "Lavf", "Lavc", "options:"]) Assert.DoesNotContain(trace, text, StringComparison.Ordinal);
        Assert.Equal(8, file[Mp4Surgery.Find(file, "ilst") - 1]); // the list of tags is there and empty
        var created = file.AsSpan(Mp4Surgery.Find(file, "mvhd") + 8, 8).ToArray();
        Assert.All(created, b => Assert.Equal(0, b));
    }

    [Fact]
    public async Task NotFinished_LeavesNothing()
    {
        var path = clips.NewPath("half.mp4");
        await using (var encoder = new ClipEncoder(clips.Tools, path, Width, Height, 30)) await encoder.WriteAsync(Picture(0), CancellationToken.None);
        Assert.Empty(Directory.GetFileSystemEntries(Path.GetDirectoryName(path)!));
    }

    [Fact]
    public async Task FolderMissing_SaysSo()
    {
        var path = Path.Combine(clips.Folder, "no such folder", "x.mp4");
        var failure = await Assert.ThrowsAsync<IOException>(() => EncodeAsync(path, 30));
        Assert.Contains(path, failure.Message, StringComparison.Ordinal);
        Assert.Contains("No such file or directory", failure.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(63, 48, 30)]
    [InlineData(64, 47, 30)]
    [InlineData(0, 48, 30)]
    [InlineData(64, 48, 0)]
    [InlineData(64, 48, double.NaN)]
    public void SizeOrRateOutOfRange_IsRefused(int width, int height, double rateHz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ClipEncoder(clips.Tools, clips.NewPath("x.mp4"), width, height, rateHz));

    [Fact]
    public async Task WrongLengthOrTimeStandingStill_IsRefused()
    {
        await using var encoder = new ClipEncoder(clips.Tools, clips.NewPath("x.mp4"), Width, Height, 30);
        await Assert.ThrowsAsync<ArgumentException>(async () => await encoder.WriteAsync(new byte[5], CancellationToken.None));
        await encoder.WriteAsync(Picture(0), 1, CancellationToken.None);
        await Assert.ThrowsAsync<ArgumentException>(async () => await encoder.WriteAsync(Picture(1), 1, CancellationToken.None));
    }
}
