using System.Collections.Concurrent;
using GaitSeat.Pipeline.Queue;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;
using Microsoft.Extensions.Logging.Abstractions;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A real PostgreSQL that is killed under a worker and comes back.</summary>
public sealed class LostDatabaseTests : IDisposable
{
    private const int Clips = 40;
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-lostdb-").FullName;
    private readonly ConcurrentQueue<string> _begun = new();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task DatabaseThatDies_IsAPause_AndWhenItIsBackEachClipIsDoneOnce()
    {
        if (!PostgresServer.IsInstalled) Assert.Skip(PostgresServer.Missing);
        await using var server = await PostgresServer.StartAsync();
        var clips = Directory.CreateDirectory(Path.Combine(_folder, "clips")).FullName;
        for (var i = 0; i < Clips; i++) await File.WriteAllTextAsync(Path.Combine(clips, $"c{i:00}.mp4"), $"clip {i}");
        var dataset = Path.Combine(_folder, "dataset");
        using var host = Open(clips, dataset, server.Connection);
        using var stop = new CancellationTokenSource();
        var run = Task.Run(() => host.RunAsync(stop.Token));
        await UntilAsync(() => _begun.Count >= 5, run);

        await server.KillAsync();
        await UntilAsync(() => host.Metrics.Paused is not null, run);
        Assert.Contains("the queue's database does not answer", host.Metrics.Paused, StringComparison.Ordinal);
        Assert.InRange(Dataset.Open(dataset).FilesOf("clips").Count, 4, Clips - 1);

        await server.ResumeAsync();
        await UntilAsync(() => host.Metrics.Waiting == 0, run);
        Assert.Null(host.Metrics.Paused);
        await stop.CancelAsync();
        await run;

        Assert.Equal(Clips, Dataset.Open(dataset).Clips().Select(c => c.ClipKey).Distinct().Count());
        Assert.Equal(Clips, _begun.Count);
        Assert.Equal(Clips, _begun.Distinct().Count());
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("Host=127.0.0.1;Port=1;Username=x;Password=secret;Timeout=2")]
    [InlineData("Host=127.0.0.1;Port=notaport")]
    public void ConnectionThatCannotBeUsed_SaysWhatIsAllowed_AndNotThePassword(string connection)
    {
        var error = Assert.Throws<SeasonException>(() => QueueStorage.PostgreSql(connection, new()));

        Assert.Contains("the queue cannot be opened", error.Message, StringComparison.Ordinal);
        Assert.Contains("Host=db;Database=gaitseat", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", error.Message, StringComparison.Ordinal);
    }

    private WatchHost Open(string clips, string dataset, string connection)
    {
        var pipeline = new PipelineSettings
        {
            Watch = new()
            {
                ScanSeconds = 0.5, SettleSeconds = 0, StopSeconds = 2, PutOffMinutes = 0, Storage = new() { FreeMinimumMb = 0 },
                Queue = new() { PollSeconds = 0.2, InvisibilitySeconds = 3 },
            },
        };
        var parts = new WatchParts(
            work => new LockedClip(work, dataset), (_, _) => Task.FromResult<double?>(1), NullLogger.Instance, "m", "0", TimeProvider.System);
        return WatchHost.Open(new(clips, dataset, "season", connection, pipeline), new StubStage(TimeSpan.FromMilliseconds(100), _begun.Enqueue, _ => { }), parts);
    }

    private static async Task UntilAsync(Func<bool> holds, Task run)
    {
        var held = false;
        for (var i = 0; i < 3600 && !run.IsCompleted && !(held = holds()); i++) await Task.Delay(50);
        if (run.IsFaulted) await run;
        Assert.True(held, "it did not come to that within three minutes");
    }
}
