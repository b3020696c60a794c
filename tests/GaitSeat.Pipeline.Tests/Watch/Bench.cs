using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;
using Microsoft.Extensions.Logging.Abstractions;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A clip's job with everything real but the measuring step, the room on the disk and the clock.</summary>
internal sealed class Bench : IDisposable, IClipWorker
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-watch-").FullName;
    private readonly WorkWindow _window = WorkWindow.Parse(null, null, TimeZoneInfo.Utc);
    private readonly ClipWork _work;

    /// <param name="clips">Null for a folder of its own, and so with the others.</param>
    /// <param name="freeBytesOf">Null for as much as <see cref="FreeBytes"/> says.</param>
    public Bench(WatchSettings? settings = null, string? clips = null, string? dataset = null, string? desk = null, Func<string, long>? freeBytesOf = null)
    {
        Settings = settings ?? new();
        Clips = Directory.CreateDirectory(clips ?? Path.Combine(_folder, "clips")).FullName;
        Dataset = Dataset.Open(dataset ?? Path.Combine(_folder, "dataset"));
        _work = new(new StubStage(TimeSpan.Zero, _ => { }, _ => { }), Dataset, tracks: false, "0");
        Desk = WorkerDesk.Claim(desk ?? Dataset.Folder, "m");
        Journal = new(Desk);
        Metrics = new(Time);
        Voice = new(NullLogger.Instance, Metrics, Journal, _window, Time);
        Sheet = new(Clips, ForgottenList.Read(Dataset.Folder), Time, Voice.Says);
        Known = new(Desk, ForgottenList.Read(Dataset.Folder));
        Pending = new(Known, _work.IsDone, Time, TimeSpan.FromMinutes(Settings.PutOffMinutes));
        Breaker = new(new(Clips, Dataset.Folder, Settings.Storage.FreeMinimumMb, freeBytesOf ?? (_ => FreeBytes)), Settings.Storage, Voice);
        Job = new(new(
            Clips, Settings, Desk, Sheet, Known, Pending, _work, this, new(Settings, Breaker, Voice, Time), Breaker, Voice,
            (_, _) => Task.FromResult<double?>(10), key => CrashCount.Of(Desk, key, new('a', 64), new('b', 64), Time), Time));
    }

    public WatchSettings Settings { get; }

    public string Clips { get; }

    public Dataset Dataset { get; }

    public WorkerDesk Desk { get; }

    public NightJournal Journal { get; }

    public WatchMetrics Metrics { get; }

    public WatchVoice Voice { get; }

    public SheetKeeper Sheet { get; }

    public KnownClips Known { get; }

    public PendingClips Pending { get; }

    public StorageBreaker Breaker { get; }

    public ClipJob Job { get; }

    public JumpingTime Time { get; } = new(new DateTimeOffset(2026, 11, 24, 22, 0, 0, TimeSpan.Zero));

    public long FreeBytes { get; set; } = long.MaxValue;

    /// <summary>How often the measuring step was asked.</summary>
    public int Calls { get; private set; }

    /// <summary>What goes wrong in the n-th call (from 1); null for nothing.</summary>
    public Func<int, CancellationToken, Task> Happens { get; set; } = (_, _) => Task.CompletedTask;

    public IReadOnlyList<NightEntry> Entries => Journal.Read(_window.NightOf(Time.GetUtcNow()));

    public async Task<ClipReport> DoAsync(KeyedClip clip, Session? session, IProgress<int> progress, CancellationToken ct)
    {
        await Happens(++Calls, ct);
        progress.Report(25);
        return ClipReport.Of(await _work.DoAsync(clip, session, progress, ct));
    }

    public ClipTicket Put(string name, string content)
    {
        File.WriteAllText(Path.Combine(Clips, name), content);
        return ClipTicket.Of(new(Path.Combine(Clips, name)));
    }

    /// <summary>Lets the clock run, a step at a time, until the job is over.</summary>
    public async Task RunAsync(ClipTicket ticket, double stepSeconds = 1, Action? each = null)
    {
        var job = Task.Run(() => Job.RunAsync(ticket, CancellationToken.None));
        for (var i = 0; i < 20_000 && !job.IsCompleted; i++)
        {
            Time.Advance(TimeSpan.FromSeconds(stepSeconds));
            each?.Invoke();
            await Task.WhenAny(job, Task.Delay(1));
        }

        Assert.True(job.IsCompleted, "the job did not end");
        await job;
    }

    public NightWriter Writer() => new(Desk, Journal, _window, "season", Time);

    public void Dispose()
    {
        Desk.Dispose();
        Metrics.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
