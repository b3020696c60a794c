using GaitSeat.Pipeline.Watch.Night;
using Microsoft.Extensions.Logging;

namespace GaitSeat.Pipeline.Watch;

/// <summary>Log, metrics and journal.</summary>
public sealed class WatchVoice(ILogger log, WatchMetrics metrics, NightJournal journal, WorkWindow window, TimeProvider time) : IWatchVoice
{
    private int _unsummed;

    /// <summary>Clips that ended since this was last read and set back.</summary>
    public int TakeUnsummed() => Interlocked.Exchange(ref _unsummed, 0);

    /// <summary>Clips that were taken and not summed after all.</summary>
    public void GiveBackUnsummed(int clips) => Interlocked.Add(ref _unsummed, clips);

    public void Says(string text) => log.LogInformation("{Text}", text);

    public void Queued(ClipTicket ticket)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        log.LogInformation("queued {Clip}, {Bytes} bytes", ticket.File, ticket.Bytes);
    }

    public void ClipBegins(string clipFile) => log.LogInformation("begins {Clip}", clipFile);

    public void Frames(int more) => metrics.AddFrames(more);

    public void Retries(string clipFile, string policy, string why)
    {
        metrics.AddRetry(policy);
        log.LogWarning("tries {Clip} again (policy {Policy}): {Why}", clipFile, policy, why);
    }

    public void ClipEnds(NightEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        metrics.AddClip(entry);
        journal.Add(window.NightOf(time.GetUtcNow()), entry);
        Interlocked.Increment(ref _unsummed);
        log.LogInformation(
            "ends {Clip}: {End} {Reason} {Detail}; {Frames} frames, {Strides} strides, {Flagged} findings, {Seconds:0.0} s, {Retries} retries",
            entry.ClipFile, entry.End, entry.Reason, entry.Detail, entry.Frames, entry.Strides, entry.Flags.Count, entry.Seconds, entry.Retries);
    }

    public void Paused(string why)
    {
        metrics.Paused = why;
        log.LogError("pauses: {Why}. Goes on by itself when that is over", why);
    }

    public void GoesOn(string why)
    {
        metrics.Paused = null;
        log.LogInformation("goes on: {Why}", why);
    }
}
