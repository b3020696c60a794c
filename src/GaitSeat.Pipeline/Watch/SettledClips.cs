namespace GaitSeat.Pipeline.Watch;

/// <summary>Tells the clips that stopped growing: those whose size and time have been the same for a while, by our clock and not the file's.</summary>
public sealed class SettledClips(TimeProvider time, TimeSpan settle)
{
    private readonly Dictionary<string, (ClipTicket Ticket, long Since)> _seen = new(StringComparer.Ordinal);

    /// <param name="present">All clips of the folder as they are now.</param>
    /// <returns>Those that have stood still long enough. With a wait of 0 s that is all of them.</returns>
    public IReadOnlyList<ClipTicket> Observe(IReadOnlyList<ClipTicket> present)
    {
        ArgumentNullException.ThrowIfNull(present);
        var now = time.GetTimestamp();
        var names = present.Select(p => p.File).ToHashSet(StringComparer.Ordinal);
        foreach (var gone in _seen.Keys.Where(k => !names.Contains(k)).ToList()) _seen.Remove(gone);
        foreach (var ticket in present)
            if (!_seen.TryGetValue(ticket.File, out var before) || before.Ticket != ticket) _seen[ticket.File] = (ticket, now);
        return [.. present.Where(p => time.GetElapsedTime(_seen[p.File].Since, now) >= settle)];
    }
}
