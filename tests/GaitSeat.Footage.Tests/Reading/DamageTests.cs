using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

public sealed class DamageTests(MadeClips clips)
{
    private Task<string> FrontAsync() => clips.ByFfmpegAsync("front.mp4", $"{Barcode.Source(30, 60)} {Clips.X264} -movflags +faststart");

    [Fact]
    public async Task PicturesCutOff_GoodFramesThenANote()
    {
        var path = await clips.ChangedAsync("short.mp4", FrontAsync, file =>
        {
            var pictures = Mp4Surgery.Find(file, "mdat");
            return file[..(pictures + (file.Length - pictures) / 2)];
        });
        var reading = await Reading.OfAsync(clips, path);
        Assert.InRange(reading.Times.Length, 15, 50);
        reading.ShowsInOrder(Enumerable.Range(0, reading.Times.Length));
        reading.TimesAre(Enumerable.Range(0, reading.Times.Length).Select(n => n / 30.0), 1e-9);
        var note = Assert.Single(reading.Report.LeftOut);
        Assert.Equal((LeftOutScope.Frame, "truncated", 60 - reading.Times.Length), (note.Scope, note.Reason, note.Count));
        Assert.Equal(reading.Times[^1], note.StartSeconds);
    }

    [Fact]
    public async Task MatroskaCutOff_GoodFramesThenANote()
    {
        var path = await clips.ChangedAsync("short.mkv", () => clips.ByFfmpegAsync("whole.mkv", $"{Barcode.Source(30, 60)} {Clips.X264}"), file => file[..(file.Length / 2)]);
        var reading = await Reading.OfAsync(clips, path);
        Assert.InRange(reading.Times.Length, 15, 50);
        Assert.Equal("truncated", Assert.Single(reading.Report.LeftOut).Reason);
    }

    [Fact]
    public async Task DamageInTheMiddle_ReadToTheEndWithANote()
    {
        var path = await clips.ChangedAsync("damaged.mp4", FrontAsync, file =>
        {
            var pictures = Mp4Surgery.Find(file, "mdat");
            new Random(7).NextBytes(file.AsSpan(pictures + (file.Length - pictures) / 3, 400));
            return file;
        });
        var reading = await Reading.OfAsync(clips, path);
        Assert.True(reading.Times[^1] > 1.9);
        var note = Assert.Single(reading.Report.LeftOut);
        Assert.Equal("damaged", note.Reason);
        Assert.True(note.Count > 0);
    }

    [Fact]
    public async Task FileGoneAfterProbing_IsSetAside()
    {
        var path = clips.NewPath("gone.mp4");
        File.Copy(await clips.PlainAsync(), path);
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        File.Delete(path);
        var refusal = await Assert.ThrowsAsync<ClipSetAsideException>(async () =>
        {
            await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), CancellationToken.None)) frame.Dispose();
        });
        Assert.Equal("path_not_a_file", refusal.Reason);
    }
}
