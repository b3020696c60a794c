using System.Threading.Channels;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>No FFmpeg outlives its reader, and no clip needs more memory for being longer.</summary>
public sealed class ProcessTests(MadeClips clips)
{
    private Task<string> LongAsync() => clips.ByFfmpegAsync("long.mp4", $"{Barcode.Source(60, 10_800)} {Clips.X264}");

    private async Task<ClipInfo> LongClipAsync() => await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(await LongAsync(), CancellationToken.None);

    /// <summary>Processes whose command line names the file, also dead ones nobody has waited for.</summary>
    private static int Running(string path) => Ids(path).Length;

    private static int[] Ids(string path)
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("Command lines of processes are looked up in /proc.");
        var name = Path.GetFileName(path);
        return [.. Directory.GetDirectories("/proc").Where(folder => int.TryParse(Path.GetFileName(folder), out _) && Names(folder)).Select(folder => int.Parse(Path.GetFileName(folder), null))];

        bool Names(string folder)
        {
            try
            {
                var zombieOfOurs = File.ReadAllText(Path.Combine(folder, "stat")) is var stat
                    && stat.Contains(") Z ", StringComparison.Ordinal) && stat.Contains("(ffmpeg)", StringComparison.Ordinal)
                    && stat[(stat.LastIndexOf(')') + 4)..].StartsWith($"{Environment.ProcessId} ", StringComparison.Ordinal);
                return zombieOfOurs || File.ReadAllText(Path.Combine(folder, "cmdline")).Contains(name, StringComparison.Ordinal);
            }
            catch (IOException)
            {
                return false;
            }
        }
    }

    /// <summary>The frames so far would pass for a clip that ends there.</summary>
    [Fact]
    public async Task FfmpegKilledFromOutside_IsNotTakenForTheEndOfTheClip()
    {
        var (clip, path) = await OwnCopyAsync();
        var seen = 0;
        await Assert.ThrowsAsync<ToolKilledException>(async () =>
        {
            await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), CancellationToken.None))
            {
                frame.Dispose();
                if (++seen != 5) continue;
                var ids = Ids(path);
                Assert.NotEmpty(ids);
                using var kill = System.Diagnostics.Process.Start("kill", ["-9", .. ids.Select(id => $"{id}")]);
                await kill.WaitForExitAsync();
            }
        });
        Assert.InRange(seen, 5, 10_799);
        Assert.Equal(0, Running(path));
    }

    private async Task<(ClipInfo Clip, string Path)> OwnCopyAsync()
    {
        var path = clips.NewPath($"{Guid.NewGuid():N}.mp4");
        File.Copy(await LongAsync(), path);
        return (await LongClipAsync() with { Path = path }, path);
    }

    [Fact]
    public async Task LoopLeft_FfmpegEnds()
    {
        var (clip, path) = await OwnCopyAsync();
        await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), CancellationToken.None))
        {
            using (frame)
            {
                Assert.Equal(1, Running(path));
                break;
            }
        }

        Assert.Equal(0, Running(path));
    }

    [Fact]
    public async Task Cancelled_ThrowsAndFfmpegEnds()
    {
        var (clip, path) = await OwnCopyAsync();
        using var cancel = new CancellationTokenSource();
        var seen = 0;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), cancel.Token))
            {
                using (frame)
                {
                    if (++seen == 5) await cancel.CancelAsync();
                }
            }
        });
        Assert.InRange(seen, 5, 6);
        Assert.Equal(0, Running(path));
    }

    [Fact]
    public async Task CallerThrows_FfmpegEnds()
    {
        var (clip, path) = await OwnCopyAsync();
        await Assert.ThrowsAsync<InvalidTimeZoneException>(async () =>
        {
            await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), CancellationToken.None))
            {
                frame.Dispose();
                throw new InvalidTimeZoneException("any");
            }
        });
        Assert.Equal(0, Running(path));
    }

    [Fact]
    public async Task ThreeMinutes_TakeNoMoreMemoryThanAFewSeconds()
    {
        var clip = await LongClipAsync();
        long early = 0, late = 0;
        var read = 0;
        await foreach (var frame in new FrameReader(clips.Tools).ReadAsync(clip, new(), CancellationToken.None))
        {
            frame.Dispose();
            read++;
            if (read == 600) early = GC.GetTotalMemory(forceFullCollection: true);
            if (read == 10_700) late = GC.GetTotalMemory(forceFullCollection: true);
        }

        Assert.Equal(10_800, read);

        // Other tests run beside this one and come and go; ten thousand frames of 9 kB kept would be over 90 MB.
        Assert.True(late - early < 32_000_000, $"The heap grew by {late - early} bytes.");
    }

    [Fact]
    public async Task SlowConsumer_DecoderWaits()
    {
        // A stream of frames that counts what is taken from it.
        using var stream = new CountingStream(await clips.RunAsync("-f", "lavfi", "-i", "color=red:s=320x240:r=25,trim=end_frame=100,format=rgb24", "-c:v", "rawvideo", "-f", "nut", "-"));
        var ahead = Channel.CreateBounded<Frame>(3);
        using var stop = new CancellationTokenSource();
        var pump = new FramePump(320, 240, null).RunAsync(stream, ahead.Writer, stop.Token);
        while (ahead.Reader.Count < 3) await Task.Delay(1);
        await Task.Delay(50);
        Assert.InRange(stream.Taken, 3 * 230_400, 4 * 230_400 + 2 * 65_536);

        var received = 0;
        await foreach (var frame in ahead.Reader.ReadAllAsync())
        {
            frame.Dispose();
            received++;
        }

        await pump;
        Assert.Equal(100, received);
    }

    [Fact]
    public void ManyMessages_OnlyEndsAreKept()
    {
        var messages = new ToolMessages();
        for (var i = 0; i < 100_000; i++) messages.Add($"[h264 @ 0x{i:x}] error {i}");
        Assert.Equal(100_000, messages.Count);
        Assert.Equal(40, messages.Lines().Count);
        Assert.Equal("error 99999", messages.LastLine());
        Assert.True(messages.Mention("ERROR 3"));
    }

    private sealed class CountingStream(byte[] bytes) : MemoryStream(bytes)
    {
        public long Taken => Position;
    }
}
