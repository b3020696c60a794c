using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

public sealed class ClipInfoTests(MadeClips clips)
{
    private Task<ClipInfo> ProbeAsync(string path) => new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);

    [Fact]
    public async Task PlainClip_IsDescribed()
    {
        var path = await clips.PlainAsync();
        Assert.Equal(new(path, 1, 64, 48, 30, "h264", "yuv420p", 0, false, new("mov,mp4,m4a,3gp,3g2,mj2", 0, 1, 15360, 0, "", ColourMatrix.Bt601)), await ProbeAsync(path));
    }

    [Fact]
    public async Task VariableRate_GivesTheMean()
    {
        var clip = await ProbeAsync(await clips.VariableAsync());
        var seconds = (double)Clips.VariableTicks(Clips.VariableFrames - 1) / Clips.VariableTicksPerSecond;
        Assert.InRange(clip.DurationSeconds, seconds, seconds + 0.1);
        Assert.Equal(Clips.VariableFrames / clip.DurationSeconds, clip.AverageFrameRateHz, 0.02 * clip.AverageFrameRateHz);
    }

    [Theory]
    [InlineData("matroska")]
    [InlineData("webm")]
    public async Task RecordingWithoutLength_IsCounted(string format)
    {
        await clips.NeedEncoderAsync("libvpx-vp9");
        var path = await clips.OnceAsync($"live.{format}", async p => await File.WriteAllBytesAsync(p, await clips.RunAsync(
            [.. Barcode.Source(25, 50).Split(' '), "-c:v", "libvpx-vp9", "-deadline", "realtime", "-cpu-used", "8", "-f", format, "pipe:1"])));
        var clip = await ProbeAsync(path);
        Assert.Equal(2, clip.DurationSeconds, 0.001);
        Assert.Equal(25, clip.AverageFrameRateHz, 0.1);
    }

    [Fact]
    public async Task TrimmedWithoutEncoding_BeginsAtTheTrim()
    {
        // The cut falls within a group of frames: the file keeps the group from its key frame on and hides what comes before the cut.
        var source = await clips.ByFfmpegAsync("group.mp4", $"{Barcode.Source(30, 90)} {Clips.X264} -g 90");
        var path = await clips.ByFfmpegAsync("trimmed.mp4", $"-ss 1 -i {source} -c copy");
        var reading = await Reading.OfAsync(clips, path);
        reading.ShowsInOrder(Enumerable.Range(30, 60));
        reading.TimesAre(Enumerable.Range(0, 60).Select(n => n / 30.0), 1e-9);
    }

    [Fact]
    public async Task CoverPictureBesideTheVideo_VideoIsTaken()
    {
        var picture = await clips.ByFfmpegAsync("smallpicture.png", "-f lavfi -i color=red:s=32x32 -frames:v 1");
        var path = await clips.ByFfmpegAsync("withcover.mp4", $"-i {picture} -i {await clips.PlainAsync()} -map 0 -map 1 -c copy -disposition:v:0 attached_pic");
        var reading = await Reading.OfAsync(clips, path);
        Assert.Equal("h264", reading.Clip.Codec);
        reading.ShowsInOrder(Enumerable.Range(0, 30));
    }

    [Fact]
    public async Task Cancelled_Throws()
    {
        using var cancelled = new CancellationTokenSource();
        await cancelled.CancelAsync();
        var path = await clips.PlainAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, cancelled.Token));
    }
}
