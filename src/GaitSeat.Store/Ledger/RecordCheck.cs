namespace GaitSeat.Store;

/// <summary>What a record must hold before it is written.</summary>
internal static class RecordCheck
{
    /// <exception cref="ArgumentException">The record contradicts itself.</exception>
    internal static void Throw(ClipRecord record)
    {
        if (record.Session is { Consent: false } && record.Status != ClipStatus.NoConsent)
        {
            throw new ArgumentException($"Clip '{record.Provenance.ClipFile}' has no consent; its status must be {nameof(ClipStatus.NoConsent)}.", nameof(record));
        }

        if (record.Status == ClipStatus.SetAside != record.Reason is not null)
        {
            throw new ArgumentException($"Clip '{record.Provenance.ClipFile}': a reason goes with a clip set aside, and only with it.", nameof(record));
        }

        if (record is { Motion.Trace: var trace, Sightings: { } sightings } && trace.TimeSeconds.Length != sightings.Count)
        {
            throw new ArgumentException($"Clip '{record.Provenance.ClipFile}': {sightings.Count} frames sighted, {trace.TimeSeconds.Length} in the trace.", nameof(record));
        }
    }
}
