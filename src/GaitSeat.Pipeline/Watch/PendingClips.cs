using System.Collections.Concurrent;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Watch;

/// <summary>
/// Which clips of a folder are still to be done: derived from folder, sheet and dataset, never kept. What was found done is remembered until
/// <see cref="Forget"/>, so that looking at a finished season costs little.
/// </summary>
public sealed class PendingClips(KnownClips known, Func<string, Session?, bool> isDone, TimeProvider time, TimeSpan putOff)
{
    private readonly ConcurrentDictionary<ClipTicket, Session?> _done = new();
    private readonly ConcurrentDictionary<ClipTicket, long> _putOff = new();

    public IReadOnlyList<ClipTicket> Of(IReadOnlyList<ClipTicket> settled, SeasonSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(settled);
        ArgumentNullException.ThrowIfNull(sheet);
        return [.. settled.AsParallel().AsOrdered().Where(t => !IsDone(t, sheet.RowOf(t.File)))];
    }

    /// <summary>Without those that were put off a moment ago.</summary>
    public IReadOnlyList<ClipTicket> Due(IReadOnlyList<ClipTicket> pending)
    {
        ArgumentNullException.ThrowIfNull(pending);
        return [.. pending.Where(t => !_putOff.TryGetValue(t, out var at) || time.GetElapsedTime(at) >= putOff)];
    }

    /// <summary>A clip is done under a row of the sheet: measured, set aside, or erased for want of consent.</summary>
    public void Finished(ClipTicket ticket, Session? session) => _done[ticket] = session;

    public void PutOff(ClipTicket ticket) => _putOff[ticket] = time.GetTimestamp();

    /// <summary>Looks everything up in the dataset again: somebody may have taken files away.</summary>
    public void Forget() => _done.Clear();

    private bool IsDone(ClipTicket ticket, Session? session)
    {
        if (_done.TryGetValue(ticket, out var under) && under == session) return true;
        // Consent taken back is acted on, not looked up: rows of another pipeline may be there.
        if (session is { Consent: false } || known.KeyOf(ticket) is not { } key || !isDone(key, session)) return false;
        _done[ticket] = session;
        return true;
    }
}
