using GaitSeat.Pipeline.Watch;
using Hangfire;

namespace GaitSeat.Pipeline.Queue;

/// <summary>The job as Hangfire keeps it: a method's name and the ticket's parts. What it does is given by the worker that runs it.</summary>
/// <param name="work">Does the clip.</param>
public sealed class QueuedClip(Func<ClipTicket, Task> work)
{
    /// <summary>Hangfire's own retries are off: what can pass is tried again by our named policies, and what was lost is found again in the folder.</summary>
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public Task RunAsync(string file, long bytes, long modifiedTicksUtc) => work(new(file, bytes, modifiedTicksUtc));
}
