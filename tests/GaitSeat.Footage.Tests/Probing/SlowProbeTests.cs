using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>A look that takes too long: the file is at fault only where the tool computed all the while.</summary>
public sealed class SlowProbeTests(MadeClips clips)
{
    [Fact]
    public async Task ToolWaits_CanPass()
    {
        var error = await Assert.ThrowsAsync<IOException>(() => ProbeWithAsync("exec sleep 60"));
        Assert.Contains("waiting", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ToolComputesAllTheTime_SetAside()
    {
        // On a busy machine even a loop may get little of a processor: that is what the other test is about, so it is tried again.
        for (var attempt = 0; attempt < 20; attempt++)
        {
            var error = await Record.ExceptionAsync(() => ProbeWithAsync("while :; do :; done"));
            if (error is IOException) continue;
            Assert.Equal("unreadable", Assert.IsType<ClipSetAsideException>(error).Reason);
            return;
        }

        Assert.Fail("never set aside");
    }

    /// <summary>A stand-in for ffprobe.</summary>
    private async Task ProbeWithAsync(string shell)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        var tool = clips.NewPath("ffprobe.sh");
        await File.WriteAllTextAsync(tool, $"#!/bin/sh\n{shell}\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(tool, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var probe = new ClipProbe(clips.Tools with { FfprobePath = tool }, new ProbeSettings { TimeoutSeconds = 1 });
        await probe.ProbeAsync(await clips.PlainAsync(), CancellationToken.None);
    }
}
