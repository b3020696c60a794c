using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>What is no clip is set aside under its word, with a sentence that names the file and what is allowed or to be done.</summary>
public sealed class SetAsideTests(MadeClips clips)
{
    private async Task IsSetAsideAsync(string reason, string path, params string[] said)
    {
        var probe = new ClipProbe(clips.Tools, new ProbeSettings());
        var refusal = await Assert.ThrowsAsync<ClipSetAsideException>(() => probe.ProbeAsync(path, CancellationToken.None));
        Assert.Equal(reason, refusal.Reason);
        Assert.Contains(path, refusal.Message, StringComparison.Ordinal);
        foreach (var word in said) Assert.Contains(word, refusal.Message, StringComparison.Ordinal);
    }

    private string Written(string name, byte[] bytes)
    {
        var path = clips.NewPath(name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    [Fact]
    public Task Folder_PathNotAFile() => IsSetAsideAsync("path_not_a_file", clips.Folder, "folder");

    [Fact]
    public Task Nothing_PathNotAFile() => IsSetAsideAsync("path_not_a_file", Path.Combine(clips.Folder, "none.mp4"), "does not exist");

    [Fact]
    public Task NoBytes_FileEmpty() => IsSetAsideAsync("file_empty", Written("empty.mp4", []), "copy it again");

    [Theory]
    [InlineData("Rising trot, left rein, 3 May.\n")]
    [InlineData("x")]
    [InlineData("#EXT is the largest size a box can have")]
    [InlineData("<html><body>404</body></html>")]
    public Task Text_NotAVideo(string text) => IsSetAsideAsync("not_a_video", Written("notes.mp4", Encoding.UTF8.GetBytes(text)), "allowed are MP4");

    [Fact]
    public Task Noise_NotAVideo()
    {
        var noise = new byte[100_000];
        new Random(4).NextBytes(noise);
        return IsSetAsideAsync("not_a_video", Written("noise.mp4", noise));
    }

    [Fact]
    public Task Subtitles_NotAVideo() =>
        IsSetAsideAsync("not_a_video", Written("subs.mp4", "WEBVTT\n\n00:00.000 --> 00:01.000\nhello\n"u8.ToArray()), "webvtt", "allowed are MP4");

    [Theory]
    [InlineData("sound.mp4", "-c:a aac")]
    [InlineData("sound.wav", "")]
    [InlineData("sound.mkv", "-c:a flac")]
    public async Task SoundOnly_NoVideoStream(string name, string options) =>
        await IsSetAsideAsync("no_video_stream", await clips.ByFfmpegAsync(name, $"-f lavfi -i sine=d=1 {options}"), "only sound");

    [Fact]
    public async Task SoundWithCoverPicture_NoVideoStream()
    {
        var picture = await clips.ByFfmpegAsync("coverpicture.png", "-f lavfi -i color=red:s=64x64 -frames:v 1");
        await IsSetAsideAsync("no_video_stream", await clips.ByFfmpegAsync("cover.mp4",
            $"-f lavfi -i sine=d=1 -i {picture} -map 0 -map 1 -c:a aac -c:v copy -disposition:v attached_pic"));
    }

    [Theory]
    [InlineData("png")]
    [InlineData("jpg")]
    [InlineData("gif")]
    [InlineData("bmp")]
    public async Task PictureRenamedMp4_StillImage(string kind)
    {
        var picture = await clips.ByFfmpegAsync($"picture.{kind}", "-f lavfi -i testsrc=s=64x48 -frames:v 1");
        await IsSetAsideAsync("still_image", Written($"{kind}.mp4", await File.ReadAllBytesAsync(picture)), "picture");
    }

    [Fact]
    public async Task OneFrame_TooShort() =>
        await IsSetAsideAsync("too_short", await clips.ByFfmpegAsync("one.mp4", $"{Barcode.Source(30, 1)} {Clips.X264}"), "1 frame", "at least 2");

    [Fact]
    public async Task StreamWithoutFrames_ZeroLength()
    {
        // The head of a fragmented file whose fragments never came.
        var path = await clips.ChangedAsync("head.mp4",
            () => clips.ByFfmpegAsync("fragments.mp4", $"{Barcode.Source(30, 30)} {Clips.X264} -movflags empty_moov+frag_keyframe"),
            file => file[..(Mp4Surgery.Find(file, "moof") - 4)]);
        await IsSetAsideAsync("zero_length", path);
    }

    [Fact]
    public async Task IndexAtTheEndCutOff_Truncated()
    {
        var path = await clips.ChangedAsync("cut.mp4", clips.PlainAsync, file => file[..(Mp4Surgery.Find(file, "mdat") + 500)]);
        await IsSetAsideAsync("truncated", path, "moov", "Copy it again");
    }

    [Fact]
    public async Task IndexItselfCutOff_Truncated()
    {
        var path = await clips.ChangedAsync("cutindex.mp4", clips.PlainAsync, file => file[..(Mp4Surgery.Find(file, "moov") + 150)]);
        await IsSetAsideAsync("truncated", path, "Copy it again");
    }

    [Fact]
    public async Task IndexInFrontAndNoPictures_Truncated()
    {
        var path = await clips.ChangedAsync("headonly.mp4",
            () => clips.ByFfmpegAsync("front.mp4", $"{Barcode.Source(30, 60)} {Clips.X264} -movflags +faststart"),
            file => file[..(Mp4Surgery.Find(file, "mdat") + 8)]);
        await IsSetAsideAsync("truncated", path, "Copy it again");
    }

    [Fact]
    public async Task EncryptedMp4_Encrypted() =>
        await IsSetAsideAsync("encrypted", await clips.ByFfmpegAsync("locked.mp4", $"{Barcode.Source(30, 30)} {Clips.X264} -encryption_scheme cenc-aes-ctr "
            + "-encryption_key 76a6c65c5ea762046bd749a2e632ccbb -encryption_kid a7e61c373e219033c21091fa607bf3b8"), "without protection");

    [Fact]
    public async Task CodecNobodyKnows_UnknownCodec()
    {
        var path = await clips.ChangedAsync("codec.mp4", clips.PlainAsync, file =>
        {
            Mp4Surgery.RenameCodec(file, "avc1\0\0\0\0\0\0\0\u0001", "zq7k");
            return file;
        });
        await IsSetAsideAsync("unknown_codec", path, "zq7k");
    }

    [Fact]
    public async Task WiderThanAllowed_TooLargePicture() =>
        await IsSetAsideAsync("too_large_picture", await clips.ByFfmpegAsync("wide.avi", "-f lavfi -i color=black:s=8224x32:r=25,trim=end_frame=3 -c:v mjpeg"), "8224 x 32", "8192");

    [Fact]
    public async Task NotAllowedToRead_Unreadable()
    {
        var path = Written("closed.mp4", await File.ReadAllBytesAsync(await clips.PlainAsync()));
        if (OperatingSystem.IsWindows()) return;
        File.SetUnixFileMode(path, UnixFileMode.None);
        if (CanOpen(path)) Assert.Skip("Permissions do not bind this user.");
        await IsSetAsideAsync("unreadable", path);
    }

    private static bool CanOpen(string path)
    {
        try
        {
            File.OpenRead(path).Dispose();
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }
}
