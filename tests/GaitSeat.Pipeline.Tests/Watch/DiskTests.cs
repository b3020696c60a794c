using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Pipeline.Worker;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>Disks that are really full or read-only.</summary>
public sealed class DiskTests
{
    [Fact]
    public async Task FullDisk_IsAPause_AndWithRoomAgainTheClipIsDone()
    {
        using var disk = SmallDisk.Mount(4);
        using var bench = OnDisk(disk);
        var ticket = bench.Put("a.mp4", "a");
        var ballast = "";
        bench.Happens = (n, _) =>
        {
            if (n == 1) ballast = disk.Fill();
            return Task.CompletedTask;
        };
        var (steps, paused) = (0, "");

        await bench.RunAsync(ticket, stepSeconds: 10, each: () =>
        {
            paused = bench.Metrics.Paused ?? paused;
            if (++steps == 100) File.Delete(ballast);
        });

        Assert.Contains("No space left on device", paused, StringComparison.Ordinal);
        AssertDone(bench);
        Assert.Null(bench.Metrics.Paused);
    }

    [Fact]
    public async Task DatasetThatTurnsReadOnly_IsAPause_AndWritableAgainTheClipIsDone()
    {
        using var disk = SmallDisk.Mount(4);
        // Linux refuses to make a file system read-only on which a file is open for writing, so the worker's own folder is elsewhere.
        using var desk = new TemporaryDesk();
        using var bench = OnDisk(disk, desk.Folder);
        var ticket = bench.Put("a.mp4", "a");
        bench.Happens = (n, _) =>
        {
            if (n == 1) disk.SetReadOnly(true);
            return Task.CompletedTask;
        };
        var (steps, paused) = (0, "");

        await bench.RunAsync(ticket, stepSeconds: 10, each: () =>
        {
            paused = bench.Metrics.Paused ?? paused;
            if (++steps == 100) disk.SetReadOnly(false);
        });

        Assert.Contains("Read-only file system", paused, StringComparison.Ordinal);
        AssertDone(bench);
    }

    /// <summary>Cards and shares are often mounted read-only; the worker writes nothing among the clips.</summary>
    [Fact]
    public async Task ReadOnlyClips_AreDoneLikeOthers()
    {
        using var disk = SmallDisk.Mount(1);
        using var bench = new Bench(clips: disk.Folder);
        var ticket = bench.Put("a.mp4", "a");
        disk.SetReadOnly(true);

        await bench.RunAsync(ticket);

        AssertDone(bench);
    }

    private static Bench OnDisk(SmallDisk disk, string? desk = null) =>
        new(new() { Storage = new() { FreeMinimumMb = 0 } }, dataset: Path.Combine(disk.Folder, "dataset"), desk: desk, freeBytesOf: Storage.FreeBytesOf);

    private static void AssertDone(Bench bench)
    {
        Assert.Equal((NightEnd.SetAside, 0), (Assert.Single(bench.Entries).End, bench.Entries[0].Retries));
        Assert.Equal(StubStage.Reason, Assert.Single(bench.Dataset.Clips()).Reason);
        Assert.Empty(Directory.EnumerateFiles(bench.Dataset.Folder, "*.tmp", SearchOption.AllDirectories));
    }

    private sealed class TemporaryDesk : IDisposable
    {
        public string Folder { get; } = Directory.CreateTempSubdirectory("gaitseat-desk-").FullName;

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
