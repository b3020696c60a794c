using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>A file that holds no pictures but names other files is refused, whatever it is called; nothing it names is opened.</summary>
public sealed class PointsElsewhereTests(MadeClips clips)
{
    private Task<ClipSetAsideException> RefusalAsync(string path) => Assert.ThrowsAsync<ClipSetAsideException>(
        () => new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None));

    [Theory]
    [InlineData("#EXTM3U\n#EXTINF:1,\n{0}\n#EXT-X-ENDLIST\n")]
    [InlineData("\uFEFF#EXTM3U\n#EXTINF:1,\nhttp://127.0.0.1:9/a.ts\n")]
    [InlineData("ffconcat version 1.0\nfile '{0}'\n")]
    [InlineData("file '{0}'\n")]
    [InlineData("v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=video 5004 RTP/AVP 96\na=rtpmap:96 H264/90000\n")]
    [InlineData("<?xml version=\"1.0\"?>\n<MPD xmlns=\"urn:mpeg:dash:schema:mpd:2011\" type=\"static\"><Period></Period></MPD>")]
    [InlineData("[playlist]\nFile1={0}\n")]
    [InlineData("<ASX version=\"3.0\"><Entry><Ref href=\"{0}\"/></Entry></ASX>")]
    [InlineData("[Reference]\nRef1=http://127.0.0.1:9/a\n")]
    public async Task PlaylistUnderAnyName_PointsElsewhere(string text)
    {
        var content = Encoding.UTF8.GetBytes(text.Replace("{0}", await clips.PlainAsync(), StringComparison.Ordinal));
        foreach (var name in (string[])["list.m3u8", "list.mp4", "list.txt"])
        {
            var path = clips.NewPath(name);
            await File.WriteAllBytesAsync(path, content);
            var refusal = await RefusalAsync(path);
            Assert.Equal("points_elsewhere", refusal.Reason);
            Assert.Contains("give the video files themselves", refusal.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Mp4WithExternalData_PointsElsewhere()
    {
        var other = await clips.PlainAsync();
        var path = await clips.ChangedAsync("reference.mp4", clips.PlainAsync, file => Mp4Surgery.PointTo(file, other));

        // With the option that we leave off, FFmpeg does go there: the file is a real reference.
        await clips.RunAsync("-enable_drefs", "1", "-use_absolute_path", "1", "-i", path, "-frames:v", "1", "-f", "null", "-");
        var refusal = await RefusalAsync(path);
        Assert.Equal("points_elsewhere", refusal.Reason);
    }

    [Fact]
    public async Task PlaylistPastOurOwnCheck_FfmpegOpensNothing()
    {
        // The first-bytes check left out on purpose: the format list alone must hold.
        var path = clips.NewPath("list.m3u8");
        await File.WriteAllTextAsync(path, $"#EXTM3U\n#EXT-X-TARGETDURATION:1\n#EXTINF:1,\n{await clips.PlainAsync()}\n#EXT-X-ENDLIST\n");
        var command = new ProbeCommand(clips.Tools, TimeSpan.FromSeconds(60));
        var (answer, stream) = await command.LookAsync(path, 2, CancellationToken.None);
        Assert.Null(stream);
        var judge = new ProbeJudge(command, new PacketScan(clips.Tools), new ProbeSettings());
        var refusal = await Assert.ThrowsAsync<ClipSetAsideException>(() => judge.CheckAsync(path, answer, stream, CancellationToken.None));
        Assert.Equal("points_elsewhere", refusal.Reason);
        Assert.Contains("hls", refusal.Message, StringComparison.Ordinal);
    }
}
