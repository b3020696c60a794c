using GaitSeat.Pipeline.Queue;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;

namespace GaitSeat.Pipeline.Watch;

/// <summary>
/// The worker's round: look through the folder, queue what stands still and is not done, open and close the queue with the window, write the summary in the morning.
/// All state is in folder and dataset; a worker that was killed goes on where it was.
/// </summary>
public sealed class WatchRun(WatchRunTools tools)
{
    private readonly SettledClips _settled = new(tools.Time, TimeSpan.FromSeconds(tools.Settings.SettleSeconds));
    private readonly List<string> _notes = [];
    private DateOnly? _night;
    private bool? _open;
    private int _waiting = -1;
    private bool _queueGone;

    /// <summary>Whether the tables of the whole run may be behind the clips.</summary>
    private bool _tablesDue = true;

    /// <summary>Goes round until stopped; then stops the clips under way and writes what was done.</summary>
    public async Task RunAsync(CancellationToken ct)
    {
        try
        {
            while (true)
            {
                await StepAsync(ct);
                await Task.Delay(TimeSpan.FromSeconds(tools.Settings.ScanSeconds), tools.Time, ct);
            }
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
            await tools.Queue.CloseAsync(TimeSpan.Zero);
            await SummariseAsync(CancellationToken.None);
        }
    }

    /// <summary>One round.</summary>
    public async Task StepAsync(CancellationToken ct)
    {
        await FollowWindowAsync(ct);
        if (!await tools.Breaker.CheckAsync(ct))
        {
            if (_notes.Count == 0 || _notes[^1] != tools.Breaker.Problem) _notes.Add(tools.Breaker.Problem!);
            return;
        }

        try
        {
            Scan();
            if (_queueGone) tools.Voice.GoesOn("the queue's database is back");
            _queueGone = false;
        }
        catch (QueueGoneException e)
        {
            // Clips under way go on: the dataset, not the queue, says what is done.
            if (!_queueGone) tools.Voice.Paused($"the queue's database does not answer: {e.Message}");
            _queueGone = true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or Hangfire.Storage.DistributedLockTimeoutException)
        {
            tools.Voice.Says($"this round came to nothing, the next may: {e.Message}");
        }

        if (_waiting == 0) await SummariseAsync(ct);
    }

    private async Task FollowWindowAsync(CancellationToken ct)
    {
        var now = tools.Time.GetUtcNow();
        var (open, night) = (tools.Window.IsOpen(now), tools.Window.NightOf(now));
        if (_night is not null && night != _night) await SummariseAsync(ct);
        _night = night;
        if (open == _open) return;
        var first = _open is null;
        _open = open;
        if (open)
        {
            tools.Voice.Says($"works now; window: {tools.Window}");
            tools.Pending.Forget();
            tools.Queue.Open();
        }
        else
        {
            tools.Voice.Says($"rests; the window {tools.Window} opens at {tools.Window.NextOpen(now):yyyy-MM-dd HH:mm zzz}");
            await tools.Queue.CloseAsync(TimeSpan.FromMinutes(tools.Settings.WindowGraceMinutes));
            if (!first) await SummariseAsync(ct);
        }
    }

    private void Scan()
    {
        tools.Known.Refresh();
        List<ClipTicket> present = [.. ClipFolder.Present(tools.ClipFolder).Select(ClipTicket.Of)];
        var settled = _settled.Observe(present).ToHashSet();
        var pending = tools.Pending.Of(present, tools.Sheet.Current());
        if (pending.Count == 0 && _waiting != 0) tools.Voice.Says($"nothing to do: all {present.Count} clips of the folder are done");
        tools.Metrics.Waiting = _waiting = pending.Count;
        tools.Queue.Check();
        if (_open is true)
            foreach (var ticket in tools.Queue.Offer(tools.Pending.Due([.. pending.Where(settled.Contains)]))) tools.Voice.Queued(ticket);
    }

    /// <summary>
    /// Tables of whole sessions, flags, and what the night came to; nothing where nothing was done since the last time. The tables are looked at once more in the round after, and at the start:
    /// a worker that was killed may have left them behind its clips, and another may have written what it knew before the last clip.
    /// </summary>
    private async Task SummariseAsync(CancellationToken ct)
    {
        if (_night is not { } night) return;
        var ended = tools.Voice.TakeUnsummed();
        if (ended == 0 && !_tablesDue) return;
        try
        {
            var lines = await tools.Sessions(ct);
            _tablesDue = ended > 0;
            if (ended == 0) return;
            foreach (var line in lines) tools.Voice.Says(line);
            tools.Voice.Says($"summary: {tools.Writer.Write(night, _waiting, _notes)}");
        }
        catch (OperationCanceledException)
        {
            // Stopped on the way to it: the end of the run writes it.
            tools.Voice.GiveBackUnsummed(ended);
            throw;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            tools.Voice.Says($"the summary could not be written: {e.Message}");
        }
    }
}

/// <summary>What the round works with.</summary>
/// <param name="Sessions">Makes the tables of whole sessions and the flags anew; gives lines for people.</param>
public sealed record WatchRunTools(
    string ClipFolder,
    WatchSettings Settings,
    WorkWindow Window,
    SheetKeeper Sheet,
    KnownClips Known,
    PendingClips Pending,
    ISeasonJobs Queue,
    StorageBreaker Breaker,
    NightWriter Writer,
    Func<CancellationToken, Task<IReadOnlyList<string>>> Sessions,
    WatchVoice Voice,
    WatchMetrics Metrics,
    TimeProvider Time);
