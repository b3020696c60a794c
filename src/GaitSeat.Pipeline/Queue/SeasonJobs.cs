using GaitSeat.Pipeline.Watch;
using Hangfire;
using Hangfire.Common;
using Hangfire.PostgreSql;
using Hangfire.States;
using Hangfire.Storage;

namespace GaitSeat.Pipeline.Queue;

/// <summary>A season's queue in Hangfire, in memory or on PostgreSQL: the same code for one worker and many.</summary>
/// <param name="storage">See <see cref="QueueStorage"/>.</param>
/// <param name="name">See <see cref="QueueStorage.NameOf"/>.</param>
/// <param name="worker">Name of this worker, for the dashboard.</param>
/// <param name="work">Does one clip; must stop soon when its token says so.</param>
public sealed class SeasonJobs(JobStorage storage, string name, string worker, WatchSettings settings, TimeProvider time, Func<ClipTicket, CancellationToken, Task> work)
    : ISeasonJobs, IDisposable
{
    /// <summary>A clip that is known to wait is asked for again only after this time: with thousands waiting, asking at each scan would load the database for nothing.</summary>
    private static readonly TimeSpan _recheck = TimeSpan.FromSeconds(60);

    private static readonly TimeSpan _lockPatience = TimeSpan.FromSeconds(30);
    private readonly Dictionary<string, long> _waiting = new(StringComparer.Ordinal);
    private BackgroundJobServer? _server;
    private CancellationTokenSource _stop = new();
    private int _running;

    private string JobsByClip => name + ":jobs";

    public void Open()
    {
        if (_server is not null) return;
        _stop = new();
        _server = new(
            new BackgroundJobServerOptions
            {
                ServerName = worker,
                Queues = [name],
                WorkerCount = settings.ClipsAtOnce,
                Activator = new Maker(RunAsync),
                ShutdownTimeout = TimeSpan.FromSeconds(settings.StopSeconds),
            },
            storage);
    }

    public async Task CloseAsync(TimeSpan grace)
    {
        if (_server is not { } server) return;
        _server = null;
        server.SendStop();
        await IdleAsync(grace);
        await _stop.CancelAsync();
        // A clip's process gets its own time to stop; this is for what comes after it.
        await IdleAsync(TimeSpan.FromSeconds(2 * settings.StopSeconds));
        await Task.Run(server.Dispose);
        _stop.Dispose();
        _waiting.Clear();
    }

    /// <summary>The cheapest question Hangfire's storages know: one row by its key, which is not there.</summary>
    public void Check() => Ask(connection => connection.GetStateData("0"));

    public IReadOnlyList<ClipTicket> Offer(IReadOnlyList<ClipTicket> clips)
    {
        ArgumentNullException.ThrowIfNull(clips);
        var unsure = clips.Where(c => !_waiting.TryGetValue(Field(c), out var at) || time.GetElapsedTime(at) >= _recheck).ToList();
        if (unsure.Count == 0) return [];
        return Ask(connection => Put(unsure, connection));
    }

    private List<ClipTicket> Put(List<ClipTicket> unsure, IStorageConnection connection)
    {
        using var alone = connection.AcquireDistributedLock(name + ":offer", _lockPatience);
        var jobs = connection.GetAllEntriesFromHash(JobsByClip) ?? [];
        var put = unsure.Where(c => !(jobs.TryGetValue(Field(c), out var job) && Waits(connection, job))).ToList();
        var client = new BackgroundJobClient(storage);
        foreach (var clip in put)
        {
            var job = client.Create(Job.FromExpression<QueuedClip>(q => q.RunAsync(clip.File, clip.Bytes, clip.ModifiedTicksUtc)), new EnqueuedState(name));
            connection.SetRangeInHash(JobsByClip, [new(Field(clip), job)]);
        }

        foreach (var clip in unsure) _waiting[Field(clip)] = time.GetTimestamp();
        return put;
    }

    public void Dispose()
    {
        _server?.Dispose();
        _stop.Dispose();
        (storage as IDisposable)?.Dispose();
    }

    private async Task RunAsync(ClipTicket ticket)
    {
        Interlocked.Increment(ref _running);
        try
        {
            await work(ticket, _stop.Token);
        }
        finally
        {
            Interlocked.Decrement(ref _running);
        }
    }

    private async Task IdleAsync(TimeSpan patience)
    {
        const int LookMilliseconds = 50;
        var since = time.GetTimestamp();
        while (Volatile.Read(ref _running) > 0 && time.GetElapsedTime(since) < patience) await Task.Delay(TimeSpan.FromMilliseconds(LookMilliseconds), time);
    }

    /// <summary>A database that goes in the middle of a question shows as anything from a socket's error to Hangfire's own; that another worker puts clips in just now is no such thing.</summary>
    private T Ask<T>(Func<IStorageConnection, T> question)
    {
        try
        {
            using var connection = storage.GetConnection();
            return question(connection);
        }
        catch (Exception e) when (storage is PostgreSqlStorage && e is not DistributedLockTimeoutException)
        {
            throw new QueueGoneException(e.GetBaseException().Message, e);
        }
    }

    private static bool Waits(IStorageConnection connection, string job) =>
        connection.GetStateData(job)?.Name is { } state && (state == EnqueuedState.StateName || state == ProcessingState.StateName || state == ScheduledState.StateName);

    private static string Field(ClipTicket clip) => FormattableString.Invariant($"{clip.File}|{clip.Bytes}|{clip.ModifiedTicksUtc}");

    private sealed class Maker(Func<ClipTicket, Task> run) : JobActivator
    {
        public override object ActivateJob(Type jobType) => new QueuedClip(run);
    }
}
