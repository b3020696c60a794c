namespace GaitSeat.Footage.Tests;

public sealed class FfmpegToolsTests(MadeClips clips)
{
    [Fact]
    public void Installed_IsFoundWithItsVersion()
    {
        Assert.True(File.Exists(clips.Tools.FfmpegPath));
        Assert.True(File.Exists(clips.Tools.FfprobePath));
        Assert.NotEmpty(clips.Tools.Version);
    }

    [Fact]
    public void FolderWithout_SaysWhereAndTheRemedy()
    {
        var folder = Path.GetDirectoryName(clips.NewPath("x"))!;
        var error = Assert.Throws<FfmpegNotFoundException>(() => FfmpegTools.Locate(folder));
        Assert.Contains(folder, error.Message, StringComparison.Ordinal);
        Assert.Contains("Remedy", error.Message, StringComparison.Ordinal);
        Assert.Contains(FfmpegTools.FolderVariable, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ffmpeg version 4.4.2-0ubuntu0.22.04.1 Copyright", "4.4.2")]
    [InlineData("hello", "not FFmpeg")]
    public void OtherProgramUnderThatName_IsRefused(string says, string message)
    {
        var error = Assert.Throws<FfmpegNotFoundException>(() => FfmpegTools.Locate(FakeTools(says)));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ffmpeg version 7.1 Copyright (c) 2000-2024", "7.1")]
    [InlineData("ffmpeg version n6.0-12-gabc Copyright", "n6.0-12-gabc")]
    [InlineData("ffmpeg version N-112345-gdeadbeef Copyright", "N-112345-gdeadbeef")]
    [InlineData("ffmpeg version 8 Copyright", "8")]
    public void NewerOrDevelopmentBuild_IsTaken(string says, string version) => Assert.Equal(version, FfmpegTools.Locate(FakeTools(says)).Version);

    private string FakeTools(string says)
    {
        if (OperatingSystem.IsWindows()) Assert.Skip("The stand-in is a shell script.");
        var folder = Path.GetDirectoryName(clips.NewPath("x"))!;
        foreach (var name in (string[])["ffmpeg", "ffprobe"])
        {
            var path = Path.Combine(folder, name);
            File.WriteAllText(path, $"#!/bin/sh\necho '{says}'\n");
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        return folder;
    }
}
