using GaitSeat.Pipeline.Watch.Night;

namespace GaitSeat.Pipeline.Watch;

/// <summary>Whoever is told what the worker does: log, metrics, journal of the night.</summary>
public interface IWatchVoice
{
    void Says(string text);

    void Queued(ClipTicket ticket);

    void ClipBegins(string clipFile);

    /// <param name="more">Frames followed since the last report.</param>
    void Frames(int more);

    /// <param name="policy">Name of the policy that tries again.</param>
    void Retries(string clipFile, string policy, string why);

    void ClipEnds(NightEntry entry);

    /// <summary>The storage or the queue's database is gone; no clip is begun until <see cref="GoesOn"/>.</summary>
    void Paused(string why);

    /// <param name="why">What is back.</param>
    void GoesOn(string why);
}
