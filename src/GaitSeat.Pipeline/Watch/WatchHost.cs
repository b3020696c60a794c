using GaitSeat.Pipeline.Flags;
using GaitSeat.Pipeline.Queue;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Store;
using Hangfire;
using Microsoft.Extensions.Logging;

namespace GaitSeat.Pipeline.Watch;

/// <summary>Puts a worker together.</summary>
public sealed class WatchHost : IDisposable
{
    private readonly WatchRun _run;
    private readonly SeasonJobs _queue;
    private readonly WorkerDesk _desk;

    private WatchHost(WatchRun run, SeasonJobs queue, WorkerDesk desk, WatchMetrics metrics, JobStorage storage) =>
        (_run, _queue, _desk, Metrics, Storage) = (run, queue, desk, metrics, storage);

    public WatchMetrics Metrics { get; }

    /// <summary>Hangfire's storage, for its dashboard.</summary>
    public JobStorage Storage { get; }

    public string Name => _desk.Name;

    /// <exception cref="SeasonException">A folder, the sheet, the window or the queue cannot be used.</exception>
    public static WatchHost Open(WatchRequest request, IClipStage stage, WatchParts parts)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(stage);
        ArgumentNullException.ThrowIfNull(parts);
        var (settings, time) = (request.Pipeline.Watch, parts.Time);
        var clips = Path.GetFullPath(request.ClipFolder);
        if (!Directory.Exists(clips)) throw new SeasonException($"there is no folder '{clips}'");
        var window = WorkWindow.Parse(settings.Window, settings.TimeZone, time.LocalTimeZone);
        var dataset = SeasonRun.OpenDataset(request.DatasetFolder);
        dataset.CleanLeftovers();
        var storage = request.Queue is { } connection ? QueueStorage.PostgreSql(connection, settings.Queue) : QueueStorage.InMemory();
        var desk = WorkerDesk.Claim(dataset.Folder, parts.Machine);
        var (metrics, journal) = (new WatchMetrics(time), new NightJournal(desk));
        var voice = new WatchVoice(parts.Log, metrics, journal, window, time);
        var forgotten = ForgottenList.Read(dataset.Folder);
        var sheet = new SheetKeeper(clips, forgotten, time, voice.Says, read => KeepConsents(dataset, read, voice));
        sheet.Current();
        var breaker = new StorageBreaker(new(clips, dataset.Folder, settings.Storage.FreeMinimumMb, Policies.Storage.FreeBytesOf), settings.Storage, voice);
        var work = new ClipWork(stage, dataset, request.Pipeline.Output.Tracks, parts.SoftwareVersion);
        var known = new KnownClips(desk, forgotten);
        var pending = new PendingClips(known, work.IsDone, time, TimeSpan.FromMinutes(settings.PutOffMinutes));
        var job = new ClipJob(new(
            clips, settings, desk, sheet, known, pending, work, parts.Worker(work), new(settings, breaker, voice, time), breaker, voice, parts.LengthOf,
            key => CrashCount.Of(desk, key, stage.PipelineHash, stage.ModelHash, time), time));
        var queue = new SeasonJobs(storage, QueueStorage.NameOf(request.Season, stage.PipelineHash, stage.ModelHash), desk.Name, settings, time, job.RunAsync);
        var run = new WatchRun(new(
            clips, settings, window, sheet, known, pending, queue, breaker, new(desk, journal, window, request.Season, time),
            async ct =>
            [
                .. await SessionPass.NotesAsync(request.Pipeline.Motion.Session, parts.SoftwareVersion, dataset, stage, ct),
                .. await FlagPass.NotesAsync(request.Pipeline, parts.SoftwareVersion, dataset, stage, ct),
            ], voice, metrics, time));
        return new(run, queue, desk, metrics, storage);
    }

    /// <summary>Works until stopped.</summary>
    public Task RunAsync(CancellationToken ct) => _run.RunAsync(ct);

    public void Dispose()
    {
        _queue.Dispose();
        _desk.Dispose();
        Metrics.Dispose();
    }

    /// <summary>A record that cannot be written ends no night; what was recorded before holds.</summary>
    private static void KeepConsents(Dataset dataset, SeasonSheet sheet, WatchVoice voice)
    {
        try
        {
            ConsentRecord.Read(dataset.Folder).Keep(sheet.Rows);
        }
        catch (DatasetException e)
        {
            voice.Says(e.Message);
        }
    }
}

/// <summary>What a worker is asked to do.</summary>
/// <param name="Season">Name under which machines that share a queue know the season.</param>
/// <param name="Queue">PostgreSQL connection string; null for a queue in memory.</param>
public sealed record WatchRequest(string ClipFolder, string DatasetFolder, string Season, string? Queue, PipelineSettings Pipeline);

/// <summary>What a worker is made of that tests replace.</summary>
/// <param name="Worker">Makes what does a clip.</param>
/// <param name="LengthOf">Length of a clip, s; null where it does not tell.</param>
/// <param name="Machine">Name of this machine.</param>
public sealed record WatchParts(
    Func<ClipWork, IClipWorker> Worker,
    Func<string, CancellationToken, Task<double?>> LengthOf,
    ILogger Log,
    string Machine,
    string SoftwareVersion,
    TimeProvider Time);
