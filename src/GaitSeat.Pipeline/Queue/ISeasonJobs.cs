using GaitSeat.Pipeline.Watch;

namespace GaitSeat.Pipeline.Queue;

/// <summary>The queue's database does not answer. What is done stands in the dataset, so nothing is lost with it.</summary>
public sealed class QueueGoneException(string message, Exception inner) : Exception(message, inner);

/// <summary>Clips that wait for a worker.</summary>
public interface ISeasonJobs
{
    /// <summary>Begins to work on what waits; does nothing when it has begun.</summary>
    void Open();

    /// <summary>Takes no further clip, lets those under way go on for a while and then stops them.</summary>
    Task CloseAsync(TimeSpan grace);

    /// <summary>Asks the queue for a sign of life.</summary>
    /// <exception cref="QueueGoneException">Its database does not answer.</exception>
    void Check();

    /// <summary>Puts the clips in that neither wait nor are being done.</summary>
    /// <returns>Those that were put in.</returns>
    /// <exception cref="QueueGoneException">Its database does not answer; some may have been put in.</exception>
    IReadOnlyList<ClipTicket> Offer(IReadOnlyList<ClipTicket> clips);
}
