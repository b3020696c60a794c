using GaitSeat.Pipeline.Watch;

namespace GaitSeat.Pipeline.Queue;

/// <summary>Clips that wait for a worker.</summary>
public interface ISeasonJobs
{
    /// <summary>Begins to work on what waits; does nothing when it has begun.</summary>
    void Open();

    /// <summary>Takes no further clip, lets those under way go on for a while and then stops them.</summary>
    Task CloseAsync(TimeSpan grace);

    /// <summary>Asks the queue for a sign of life.</summary>
    /// <exception cref="System.Data.Common.DbException">Its database does not answer.</exception>
    void Check();

    /// <summary>Puts the clips in that neither wait nor are being done.</summary>
    /// <returns>Those that were put in.</returns>
    IReadOnlyList<ClipTicket> Offer(IReadOnlyList<ClipTicket> clips);
}
