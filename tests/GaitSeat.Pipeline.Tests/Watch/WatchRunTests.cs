using GaitSeat.Pipeline.Queue;
using GaitSeat.Pipeline.Watch;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>The worker's round against a queue that only keeps what it is offered.</summary>
public sealed class WatchRunTests : IDisposable
{
    private readonly Bench _bench = new(new() { SettleSeconds = 30 });
    private readonly FakeJobs _jobs = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task Clip_IsQueued_WhenItStoppedGrowing_AndOnlyInsideTheWindow()
    {
        var run = Run("23:00-06:00");
        _bench.Put("a.mp4", "a");
        await run.StepAsync(default);
        await AfterAsync(run, 60);
        Assert.Equal((false, 0, 1), (_jobs.IsOpen, _jobs.Offered.Count, _bench.Metrics.Waiting));

        await AfterAsync(run, 3600);
        Assert.Equal((true, 1), (_jobs.IsOpen, _jobs.Offered.Count));

        _bench.Put("b.mp4", "b");
        await AfterAsync(run, 10);
        Assert.DoesNotContain(_jobs.Offered, t => t.File == "b.mp4");
        await AfterAsync(run, 30);
        Assert.Contains(_jobs.Offered, t => t.File == "b.mp4");
    }

    [Fact]
    public async Task WindowThatCloses_StopsTheQueue_WithItsGrace_AndWritesTheSummary()
    {
        var run = Run("21:00-23:00");
        var ticket = _bench.Put("a.mp4", "a");
        await run.StepAsync(default);
        await AfterAsync(run, 30);
        await _bench.RunAsync(ticket);
        Assert.False(Directory.Exists(Summaries));

        await AfterAsync(run, 3600);

        Assert.Equal((false, TimeSpan.FromMinutes(20)), (_jobs.IsOpen, _jobs.Grace));
        var text = await File.ReadAllTextAsync(Path.Combine(Summaries, "2026-11-24.md"));
        Assert.Contains("made\\_for\\_a\\_test", text, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Summaries, "2026-11-24.html")));
    }

    [Fact]
    public async Task FinishedSeason_IsNothingToDo_AlsoForAnotherWorker()
    {
        foreach (var name in new[] { "a.mp4", "b.mp4" }) await _bench.RunAsync(_bench.Put(name, name));
        var run = Run(null);

        await run.StepAsync(default);
        await AfterAsync(run, 31);

        Assert.Equal((0, 0), (_jobs.Offered.Count, _bench.Metrics.Waiting));
    }

    [Fact]
    public async Task TablesOfTheWholeRun_AreLookedAt_AtTheStart_AfterTheLastClip_AndOnceMore()
    {
        var looks = 0;
        var run = Run(null, _ => Task.FromResult<IReadOnlyList<string>>([$"look {++looks}"]));
        await run.StepAsync(default);
        await run.StepAsync(default);
        Assert.Equal(1, looks);

        await _bench.RunAsync(_bench.Put("a.mp4", "a"));
        await run.StepAsync(default);
        await run.StepAsync(default);
        await run.StepAsync(default);

        Assert.Equal(3, looks);
        Assert.Single(Directory.GetFiles(Summaries, "*.md"));
    }

    [Fact]
    public async Task StoppedWhileTheTablesAreMade_WritesTheSummaryAllTheSame()
    {
        using var stop = new CancellationTokenSource();
        await _bench.RunAsync(_bench.Put("a.mp4", "a"));
        var run = Run(null, async ct =>
        {
            await stop.CancelAsync();
            ct.ThrowIfCancellationRequested();
            return [];
        });

        await run.RunAsync(stop.Token);

        Assert.Single(Directory.GetFiles(Summaries, "*.md"));
    }

    /// <summary>The dataset is the ledger: rows that were taken away are made again, though this worker remembers having made them.</summary>
    [Fact]
    public async Task RowsTakenAway_AreMadeAgain_InTheNextWindow()
    {
        var run = Run("21:00-23:00");
        await _bench.RunAsync(_bench.Put("a.mp4", "a"));
        await run.StepAsync(default);
        await AfterAsync(run, 31);
        Assert.Empty(_jobs.Offered);
        foreach (var file in _bench.Dataset.FilesOf("clips")) File.Delete(file);

        await AfterAsync(run, 3600);
        await AfterAsync(run, 22 * 3600);

        Assert.Single(_jobs.Offered);
    }

    [Fact]
    public async Task StorageThatIsGone_IsAPause_AndNoError()
    {
        var run = Run(null);
        Directory.Move(_bench.Clips, _bench.Clips + "-away");
        await run.StepAsync(default);
        Assert.Contains("is gone", _bench.Metrics.Paused!, StringComparison.Ordinal);

        Directory.Move(_bench.Clips + "-away", _bench.Clips);
        await run.StepAsync(default);
        Assert.Null(_bench.Metrics.Paused);
    }

    [Fact]
    public async Task QueueWhoseDatabaseIsGone_IsAPause_AndGoesOnWhenItIsBack()
    {
        var run = Run(null);
        _bench.Put("a.mp4", "a");
        _jobs.Trouble = new QueueGoneException("no answer", new TimeoutException());
        await run.StepAsync(default);
        await AfterAsync(run, 31);
        Assert.Contains("the queue's database does not answer: no answer", _bench.Metrics.Paused!, StringComparison.Ordinal);
        Assert.Equal((0, 1), (_jobs.Offered.Count, _bench.Metrics.Waiting));

        _jobs.Trouble = null;
        await AfterAsync(run, 10);

        Assert.Null(_bench.Metrics.Paused);
        Assert.Single(_jobs.Offered);
    }

    /// <summary>A clock set wrong and put right again (time server, battery): the window follows the wall clock, what counts seconds does not.</summary>
    [Fact]
    public async Task ClockThatJumps_MovesTheWindow_ButNeitherTheWaitNorThePutOff()
    {
        var run = Run("21:00-23:00");
        await run.StepAsync(default);
        Assert.True(_jobs.IsOpen);
        var growing = _bench.Put("a.mp4", "a");
        await run.StepAsync(default);

        _bench.Time.Jumped = TimeSpan.FromHours(5);
        await run.StepAsync(default);
        Assert.Equal((false, 0), (_jobs.IsOpen, _jobs.Offered.Count));

        _bench.Time.Jumped = TimeSpan.Zero;
        await run.StepAsync(default);
        Assert.Equal((true, 0), (_jobs.IsOpen, _jobs.Offered.Count));
        await AfterAsync(run, 30);
        Assert.Equal(growing, Assert.Single(_jobs.Offered));

        _bench.Pending.PutOff(growing);
        _bench.Time.Jumped = TimeSpan.FromDays(-400);
        Assert.Empty(_bench.Pending.Due([growing]));
        _bench.Time.Advance(TimeSpan.FromMinutes(_bench.Settings.PutOffMinutes));
        Assert.Single(_bench.Pending.Due([growing]));
    }

    [Fact]
    public async Task Stop_ClosesTheQueueAtOnce_AndWritesTheSummary()
    {
        var run = Run(null);
        await run.StepAsync(default);
        await _bench.RunAsync(_bench.Put("a.mp4", "a"));
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();

        await run.RunAsync(stop.Token);

        Assert.Equal((false, TimeSpan.Zero), (_jobs.IsOpen, _jobs.Grace));
        Assert.Equal(2, Directory.GetFiles(Summaries).Length);
    }

    private string Summaries => Path.Combine(_bench.Desk.Folder, "summaries");

    private WatchRun Run(string? window, Func<CancellationToken, Task<IReadOnlyList<string>>>? sessions = null) => new(new(
        _bench.Clips, _bench.Settings, WorkWindow.Parse(window, null, TimeZoneInfo.Utc), _bench.Sheet, _bench.Known, _bench.Pending, _jobs, _bench.Breaker,
        _bench.Writer(), sessions ?? (_ => Task.FromResult<IReadOnlyList<string>>([])), _bench.Voice, _bench.Metrics, _bench.Time));

    private Task AfterAsync(WatchRun run, double seconds)
    {
        _bench.Time.Advance(TimeSpan.FromSeconds(seconds));
        return run.StepAsync(default);
    }

    private sealed class FakeJobs : ISeasonJobs
    {
        public bool IsOpen { get; private set; }

        public TimeSpan? Grace { get; private set; }

        public List<ClipTicket> Offered { get; } = [];

        public Exception? Trouble { get; set; }

        public void Open() => IsOpen = true;

        public void Check()
        {
            if (Trouble is { } trouble) throw trouble;
        }

        public Task CloseAsync(TimeSpan grace)
        {
            (IsOpen, Grace) = (false, grace);
            return Task.CompletedTask;
        }

        public IReadOnlyList<ClipTicket> Offer(IReadOnlyList<ClipTicket> clips)
        {
            var fresh = clips.Where(c => !Offered.Contains(c)).ToList();
            Offered.AddRange(fresh);
            return fresh;
        }
    }
}
