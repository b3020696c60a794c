using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch.Children;

/// <summary>
/// A clip done under a lock of its own, held by the very process that measures: when that dies the lock goes with it, not sooner and not later, so no two processes
/// do the same clip, whichever queue handed it out twice.
/// </summary>
public sealed class LockedClip(ClipWork work, string datasetFolder) : IClipWorker
{
    public async Task<ClipReport> DoAsync(KeyedClip clip, Session? session, IProgress<int> progress, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clip);
        var locks = Directory.CreateDirectory(Path.Combine(datasetFolder, "worker", "locks")).FullName;
        using var held = FileLock.TryTake(Path.Combine(locks, ClipKey.InName(clip.Key) + ".lock")) ?? throw new ClipElsewhereException($"{clip.File}: another worker has it in hand");
        return ClipReport.Of(await work.DoAsync(clip, session, progress, ct));
    }
}
